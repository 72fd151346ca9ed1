/** The address of the season's notes, or of one grow-out's. */
export function seasonNotesAddress(growOutId?: number): string {
  return growOutId === undefined ? '/regrow/season' : `/regrow/season/${growOutId}`
}
