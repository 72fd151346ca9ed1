import { FREEZING_AGAINST_INSECTS, GEL_CAUTIONS } from '../moisture/moisture-words.ts'
import { assertNever } from '../shared/assert-never.ts'

/** What a round looks for, in the order in which it is looked at. */
export const INSPECTIONS = ['pests', 'seals', 'gel', 'dampness', 'reading'] as const
export type Inspection = (typeof INSPECTIONS)[number]

/** What decides what is looked at in a place. */
export interface Stop {
  /** Whether it is a freezer or stands in one. */
  readonly freezes: boolean
  /** Whether it is a fridge or stands in one. */
  readonly chills: boolean
  /** Whether lots lie there in anything airtight. */
  readonly closedIn: boolean
}

/**
 * What there is to look at in a place. Common practice, no source: insects and mice do not live in frost, a door or a
 * lid can only leak where there is one, and drying gel is of use in closed jars only.
 */
export function looksFor({ freezes, chills, closedIn }: Stop): Inspection[] {
  const wanted: Record<Inspection, boolean> = {
    pests: !freezes,
    seals: freezes || chills || closedIn,
    gel: closedIn,
    dampness: true,
    reading: true,
  }
  return INSPECTIONS.filter((look) => wanted[look])
}

/** The name of a look: 'drying gel'. */
export function inspectionName(look: Inspection): string {
  switch (look) {
    case 'pests':
      return 'pests'
    case 'seals':
      return 'seals'
    case 'gel':
      return 'drying gel'
    case 'dampness':
      return 'dampness'
    case 'reading':
      return 'reading'
    default:
      return assertNever(look, 'A look has no name yet')
  }
}

/** What to look for. Common practice, no source. */
export function inspectionInWords(look: Inspection): string {
  switch (look) {
    case 'pests':
      return 'Insects, holes or dust in the seed, webs, droppings, gnawed bags.'
    case 'seals':
      return 'Lids, gaskets and doors close all round; no bag is open or torn.'
    case 'gel':
      return 'The drying gel is not spent; spent gel is changed.'
    case 'dampness':
      return 'Mould, a musty smell, wet spots; ice or rime where it is cold.'
    case 'reading':
      return 'What the thermometer and the hygrometer say.'
    default:
      return assertNever(look, 'A look has no words yet')
  }
}

/** What to mind on a round, as far as there is anything of the kind to look at. Common practice, no source. */
export function roundCautions(looks: readonly Inspection[]): string[] {
  return [
    ...(looks.includes('gel') ? GEL_CAUTIONS : []),
    ...(looks.includes('pests')
      ? [
          'Keep seed with insects apart at once, closed in, so that they do not spread. Frost kills them, but it kills moist seed too.',
          FREEZING_AGAINST_INSECTS,
          'Do not spray stored seed.',
          'Droppings of mice can carry disease: wear gloves and a mask, wet them before wiping, and follow your local health advice.',
        ]
      : []),
    ...(looks.includes('seals')
      ? ['Let a cold jar warm up closed before it is opened, or water settles on the seed.']
      : []),
  ]
}
