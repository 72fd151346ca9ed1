import { type Message, message } from '../../messages/message.ts'
import type { Breeding, PopulationGoal } from '../needs/population-goal.ts'

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

/** Which of a crop's distances a grade asks for: the strict one for conservation, else that for a garden. */
export function isolationKind(grade: PopulationGoal): keyof IsolationFigures {
  return grade === 'conservation' ? 'strict' : 'home'
}

/**
 * Metres to keep between two varieties that cross, in round figures: guides differ tenfold, and many of theirs are feet or
 * miles converted, so that 244 m promises what nobody knows.
 */
export function isolationDistance(
  figures: IsolationFigures,
  breeding: Breeding,
  grade: PopulationGoal,
): number {
  const kind = isolationKind(grade)
  const metres = figures[kind] ?? WITHOUT_FIGURES[breeding][kind]
  const step = metres < 5 ? 0.5 : metres < 20 ? 1 : metres < 100 ? 5 : 50
  return step * Math.round(metres / step)
}

/** Where a distance comes from, and how much it promises. `source` is what the crop table names; null: it has no figure. */
export function whyIsolation(source: string | Message | null): Message {
  return source === null
    ? message('season.distance-no-source')
    : message('season.distance-source', { source })
}

/** What is not known of how a crop crosses, and what is done without it; '' where nothing is missing. */
export function unknownToPlan(
  { crop, species, ...figures }: IsolationFigures & { readonly species: string; readonly crop: string },
  breeding: Breeding,
  grade: PopulationGoal,
): Message | '' {
  if (figures[isolationKind(grade)] !== null)
    return species === '' ? message('season.unknown-species', { crop }) : ''
  return species === ''
    ? message('season.unknown-both', { breeding, crop })
    : message('season.unknown-distance', { breeding })
}
