/** The word for what is counted, one and many. */
export interface CountedUnit {
  readonly one: CountedUnitName
  readonly many: string
}

/** What of a crop is weighed, sown and scored as one: of beet a cluster of seeds, of coriander a fruit of two, of garlic a clove. */
export const COUNTED_UNITS = ['seed', 'cluster', 'fruit', 'clove', 'bulb', 'tuber'] as const
export type CountedUnitName = (typeof COUNTED_UNITS)[number]

/** What is counted when a crop's seed is counted, by the crop table's word for one. */
export function countedUnit(one: CountedUnitName): CountedUnit {
  return { one, many: `${one}s` }
}
