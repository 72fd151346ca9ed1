/** Where places are compared. */
export const COMPARE = '/storage/compare'

/** Where a place is added. */
export const NEW_PLACE = '/storage/new'

/** Where a round is walked. */
export const ROUND = '/storage/round'

/** Where the round sheet is printed. */
export const ROUND_SHEET = '/storage/round-sheet'

/** The address of a place's card. */
export function placeAddress(placeId: number): string {
  return `/storage/place/${placeId}`
}
