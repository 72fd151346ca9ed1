/** The word for what is counted, one and many. */
export interface CountedUnit {
  readonly one: string
  readonly many: string
}

const SEEDS: CountedUnit = { one: 'seed', many: 'seeds' }

/**
 * Crops whose counted unit is not one seed: beet and chard clusters, coriander fruits.
 *
 * What is weighed and sown is the whole cluster or fruit, and a germination test scores one seedling for each (common
 * practice; as in the federal testing rules, 7 CFR 201.56, from memory).
 */
const NOT_ONE_SEED: Readonly<Record<string, CountedUnit>> = {
  beet: { one: 'cluster', many: 'clusters' },
  chard: { one: 'cluster', many: 'clusters' },
  coriander: { one: 'fruit', many: 'fruits' },
}

/** What is counted when a crop's seed is counted. */
export function countedUnit(cropId: string): CountedUnit {
  return NOT_ONE_SEED[cropId] ?? SEEDS
}
