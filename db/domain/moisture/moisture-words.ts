import { type Manner, massWithin, numberInWords } from '../amounts/in-words.ts'
import { MILLIGRAMS_PER } from '../amounts/mass.ts'
import { assertNever } from '../shared/assert-never.ts'
import type { BreakClass } from './break-check.ts'
import { type Drying, type DryingPlan, GEL_TAKES_UP } from './drying.ts'
import { FREEZES_SAFELY_TO, freezingAdvice } from './fit-for-freezing.ts'

/** Moisture as measured or as a span, percent of fresh weight. */
export interface MoistureFound {
  readonly percent: number
  readonly low: number
  readonly high: number
}

/** '7.2 %', or the span where the figure is coarse. */
export function moistureInWords({ percent, low, high }: MoistureFound): string {
  const one = `${Math.round(10 * percent) / 10}`
  return high - low < 0.05
    ? `${one} %`
    : `about ${one} %, between ${Math.floor(10 * low + 1e-9) / 10} and ${atMost(high)} %`
}

/** Rounded up to a tenth, so that it never reads as the limit that it is above. */
function atMost(percent: number): number {
  return Math.ceil(10 * percent - 1e-9) / 10
}

/** What a check in the hand showed. */
export function breakInWords(gives: BreakClass): string {
  switch (gives) {
    case 'breaks':
      return 'snaps or shatters'
    case 'bends':
      return 'bends or flattens'
    case 'soft':
      return 'takes a thumbnail'
    default:
      return assertNever(gives, 'A class has no words yet')
  }
}

/** Why seed should not be frozen yet, by the highest that its last measurement leaves possible; null: not measured. */
export function freezingCautions(highestPercent: number | null): string[] {
  const advice = freezingAdvice(highestPercent)
  switch (advice) {
    case 'dry-enough':
      return []
    case 'too-moist':
      return [
        `Too moist to freeze: it may hold up to ${atMost(highestPercent ?? 0)} % water. Frost can kill it: dry it to ${FREEZES_SAFELY_TO} % or less first.`,
      ]
    case 'not-known':
      return [`Measure its moisture first: frost can kill seed above about ${FREEZES_SAFELY_TO} %.`]
    default:
      return assertNever(advice, 'An advice has no words yet')
  }
}

/** The same of many lots at once: how many of them to measure or dry first; empty where none. */
export function freezingCautionOfMany(cautioned: number, lots: number): string {
  if (cautioned === 0) return ''
  const all = lots === 1 ? 'The lot is' : `All ${lots} are`
  const some = cautioned === 1 ? `1 of the ${lots} is` : `${cautioned} of the ${lots} are`
  return `${cautioned === lots ? all : some} too moist to freeze or not measured yet. Frost can kill seed above about ${FREEZES_SAFELY_TO} %.`
}

/**
 * How seed is frozen so that the insects in it die.
 *
 * Seed growers give pulses five days in a freezer; a trade of organic chickpeas gave bulk bins 30 days at -18 °C (Johnson and
 * Valero 2003, Journal of Economic Entomology 96:1952, whose summary was seen), and a pallet of flour took 5 to 11 days to
 * grow cold at its middle (Flinn et al. 2015, Journal of Stored Products Research 63:42, abstract seen). Two weeks for small
 * packets is ours, on the cautious side.
 */
export const FREEZING_AGAINST_INSECTS = `Freeze at −18 °C or colder for two weeks, in small packets in a sealed container. Only seed dried to about 5 to ${FREEZES_SAFELY_TO} % moisture, and never seed that dies when dried. Let it warm up closed for a day before you open it.`

/** Seed so moist heats and moulds when it is closed in. Common practice, no source. */
const SEALS_SAFELY_TO = 10

/** What a moisture means for storing seed. */
export function moistureAdvice({ high }: MoistureFound): string[] {
  if (high <= FREEZES_SAFELY_TO) return ['Dry enough for an airtight jar and for the freezer.']
  const sealing =
    high > SEALS_SAFELY_TO
      ? [`Do not close it in airtight above about ${SEALS_SAFELY_TO} % (common practice): it can go mouldy.`]
      : []
  return [...sealing, ...freezingCautions(high)]
}

/** Who dries by the masses told ends at most so far from the goal, points of moisture. Our own choice. */
const DRIES_WITHIN = 0.1

/** At which mass to stop drying, each mass told finely enough to end within {@link DRIES_WITHIN} of the goal. */
export function dryingInWords(plan: DryingPlan | null, { from, to }: Drying, manner: Manner): string {
  const percent = (of: number) => `${numberInWords(of, manner, 2)} %`
  if (plan === null) return `At ${percent(from)} it is as dry as ${percent(to)} already.`
  const grams = (of: number, tolerance: number) =>
    massWithin(of * MILLIGRAMS_PER.g, tolerance * MILLIGRAMS_PER.g, manner)
  const tolerance = (DRIES_WITHIN * plan.stopAt) / (100 - to + DRIES_WITHIN)
  return `Stop when the seed weighs ${grams(plan.stopAt, tolerance)}: ${grams(plan.water, tolerance)} of water must go, for which ${grams(plan.gel, tolerance / GEL_TAKES_UP)} of fresh drying gel will do.`
}

/** What the figures of a drying plan rest on. */
export const DRYING_ASSUMPTIONS: readonly string[] = [
  'Only water leaves: weigh the same bag, without what it is dried in.',
  `Fresh gel is assumed to take up ${100 * GEL_TAKES_UP} % of its own weight while still drying (common practice, no source). Change or renew it when it is spent.`,
  'Dry at 35 °C at most, never in an oven or full sun (common practice).',
]

/** The usual cautions on drying gel. */
export const GEL_CAUTIONS: readonly string[] = [
  'Gel with a colour that shows when it is spent may hold a harmful dye: blue gel usually holds cobalt chloride. Read its safety sheet, keep it in a bag away from seed to be eaten, children and animals, do not breathe its dust, and throw it away as your local rules say. Plain white gel is safer.',
]
