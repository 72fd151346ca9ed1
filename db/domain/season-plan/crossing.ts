import type { Breeding, Grade } from '../needs/grade.ts'

/**
 * The plants that cross with one another: the species, so that beet and chard are one, the cabbages one, the squashes three.
 *
 * The first two words of the botanical name; what stands behind them in brackets is a form of it. The everyday name where
 * the botanical one is not known: what else it crosses with cannot be told then.
 */
export function crossingGroup({
  species,
  crop,
}: {
  readonly species: string
  readonly crop: string
}): string {
  if (species === '') return crop
  return species.split(' ').slice(0, 2).join(' ')
}

/** The crop table's distances between two varieties of one crossing group, metres; null where it has none. */
export interface IsolationFigures {
  readonly home: number | null
  readonly strict: number | null
}

/** Metres where the crop table has no figure. Common practice, no source; the low end of what guides ask. */
const WITHOUT_FIGURES: Readonly<Record<Breeding, { readonly home: number; readonly strict: number }>> = {
  selfer: { home: 6, strict: 15 },
  mixed: { home: 100, strict: 400 },
  outcrosser: { home: 250, strict: 800 },
}

/** Metres to keep between two varieties that cross: the strict distance for conservation, else the garden distance. */
export function isolationFor(figures: IsolationFigures, breeding: Breeding, grade: Grade): number {
  const which = grade === 'conservation' ? 'strict' : 'home'
  return figures[which] ?? WITHOUT_FIGURES[breeding][which]
}

/** What is not known of how a crop crosses, and what is done without it; '' where nothing is missing. */
export function unknownToPlan(
  crop: IsolationFigures & { readonly species: string; readonly crop: string },
  matingSystem: string | null,
): string {
  const nothing = crop.home === null && crop.strict === null && matingSystem === null
  return [
    nothing
      ? 'No distance is known for it: this one is usual for a plant that insects cross now and then.'
      : '',
    crop.species === '' ? `Only ${crop.crop} is kept away from it: its botanical name is not known.` : '',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
