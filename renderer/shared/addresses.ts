/** The address of a lot's card. */
export function lotAddress(lotId: number): string {
  return `/shelf/lot/${lotId}`
}

/** The address of what hangs together with a lot. */
export function traceAddress(lotId: number): string {
  return `/trace/lot/${lotId}`
}

/** The address of a recall; without one, of all of them. */
export function recallAddress(recallId?: number): string {
  return recallId === undefined ? '/trace' : `/trace/recall/${recallId}`
}

/** The address of a stocktake of some lots, wherever they stand. */
export function stocktakeAddress(lotIds: readonly number[]): string {
  return `/stocktake/lots/${lotIds.join('-')}`
}

/** The lots that an address of {@link stocktakeAddress} carries. */
export function lotsOf(carried: string): readonly number[] {
  return carried.split('-').map(Number).filter(Number.isSafeInteger)
}

/** The address of a germination test's card. */
export function testAddress(testId: number): string {
  return `/germination/test/${testId}`
}

/** The address where a lot's next germination test is planned and begun. */
export function planAddress(lotId: number): string {
  return `/germination/lot/${lotId}`
}

/** The address of the shelf narrowed by letters. Encoded twice, since the router decodes once and not wholly. */
export function findAddress(text: string): string {
  return `/shelf/find/${encodeURIComponent(encodeURIComponent(text))}`
}

/** The letters that an address of {@link findAddress} carries, as the router passes them on. */
export function lettersOf(carried: string): string {
  try {
    return decodeURIComponent(carried)
  } catch {
    // Typed into the address by hand: taken as it stands.
    return carried
  }
}
