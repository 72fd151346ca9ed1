/** Where places are compared. */
export const COMPARE = '/storage/compare'

/** The address of a place's card. */
export function placeAddress(placeId: number): string {
  return `/storage/place/${placeId}`
}
