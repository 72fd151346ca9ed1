/** What a regrowing is for, from the smallest population to the largest. */
export const POPULATION_GOALS = ['quality', 'maintenance', 'conservation'] as const
export type PopulationGoal = (typeof POPULATION_GOALS)[number]

/** How a crop's flowers are fertilised: by themselves, by both ways, by other plants. */
export const BREEDINGS = ['selfer', 'mixed', 'outcrosser'] as const
export type Breeding = (typeof BREEDINGS)[number]

/** The crop table's plants per regrowing, null where the table has no figure. */
export interface PopulationFigures {
  readonly matingSystem: string | null
  readonly plantsForSeed: number | null
  readonly plantsToMaintain: number | null
  readonly plantsToConserve: number | null
}

/**
 * Plants by breeding system where the crop table has no figure of its own.
 *
 * Conservation: 20 selfers and 100 outcrossers, as one of the guides behind the crop table has it (seen; the figure for
 * mixed crops lies between, common practice, no source). Quality and maintenance: common practice, no source.
 */
const PLANTS_BY_BREEDING: Readonly<Record<Breeding, Readonly<Record<PopulationGoal, number>>>> = {
  selfer: { quality: 1, maintenance: 10, conservation: 20 },
  mixed: { quality: 2, maintenance: 20, conservation: 50 },
  outcrosser: { quality: 5, maintenance: 50, conservation: 100 },
}

/** The breeding system that the crop table's words name; an unknown one counts as mixed. */
export function breedingOf(matingSystem: string | null): Breeding {
  if (matingSystem?.startsWith('selfer')) return 'selfer'
  return matingSystem?.startsWith('outcrosser') ? 'outcrosser' : 'mixed'
}

/**
 * Plants to grow in one regrowing of a crop at a grade.
 *
 * Quality: enough that the seed is sound. Maintenance: enough that the variety stays itself. Conservation: enough to
 * carry its rarer traits on. The crop table's figure comes first, then the breeding system's.
 */
export function plantsFor(figures: PopulationFigures, grade: PopulationGoal): number {
  const own = {
    quality: figures.plantsForSeed,
    maintenance: figures.plantsToMaintain,
    conservation: figures.plantsToConserve,
  }[grade]
  return own ?? PLANTS_BY_BREEDING[breedingOf(figures.matingSystem)][grade]
}
