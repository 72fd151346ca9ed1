/** The address of a waiting gift's card, or of the list. */
export function giftAddress(giftId?: number): string {
  return giftId === undefined ? '/take-in/waiting' : `/take-in/waiting/${giftId}`
}
