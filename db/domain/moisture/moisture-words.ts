import { type Message, message } from '../../messages/message.ts'
import { MILLIGRAMS_PER } from '../amounts/mass.ts'
import { type Drying, type DryingPlan, GEL_TAKES_UP } from './drying.ts'
import { FREEZES_SAFELY_TO, freezingAdvice } from './fit-for-freezing.ts'

/** Moisture as measured or as a span, percent of fresh weight. */
export interface MoistureFound {
  readonly percent: number
  readonly low: number
  readonly high: number
}

/** '7.2 % moisture', or the span where the figure is coarse. */
export function moistureInWords({ percent, low, high }: MoistureFound): Message {
  const one = Math.round(10 * percent) / 10
  return high - low < 0.05
    ? message('storage.moisture', { percent: one })
    : message('storage.moisture-span', {
        percent: one,
        low: Math.floor(10 * low + 1e-9) / 10,
        high: atMost(high),
      })
}

/** Rounded up to a tenth, so that it never reads as the limit that it is above. */
function atMost(percent: number): number {
  return Math.ceil(10 * percent - 1e-9) / 10
}

/** Why seed should not be frozen yet, by the highest that its last measurement leaves possible; null: not measured. */
export function freezingCaution(highestPercent: number | null): Message | null {
  const limit = FREEZES_SAFELY_TO
  switch (freezingAdvice(highestPercent)) {
    case 'dry-enough':
      return null
    case 'too-moist':
      return message('storage.too-moist-to-freeze', { percent: atMost(highestPercent ?? 0), limit })
    case 'not-known':
      return message('storage.measure-before-freezing', { limit })
  }
}

/** The same of many lots at once: how many of them to measure or dry first; null where none. */
export function freezingCautionOfMany(cautioned: number, lots: number): Message | null {
  const limit = FREEZES_SAFELY_TO
  if (cautioned === 0) return null
  return cautioned === lots
    ? message('storage.all-too-moist-to-freeze', { lots, limit })
    : message('storage.some-too-moist-to-freeze', { cautioned, lots, limit })
}

/**
 * How seed is frozen so that the insects in it die.
 *
 * Seed growers give pulses five days in a freezer; a trade of organic chickpeas gave bulk bins 30 days at -18 °C (Johnson and
 * Valero 2003, Journal of Economic Entomology 96:1952, whose summary was seen), and a pallet of flour took 5 to 11 days to
 * grow cold at its middle (Flinn et al. 2015, Journal of Stored Products Research 63:42, abstract seen). Two weeks for small
 * packets is ours, on the cautious side.
 */
export const FREEZING_AGAINST_INSECTS = message('storage.freezing-against-insects', {
  limit: FREEZES_SAFELY_TO,
})

/** Seed so moist heats and moulds when it is closed in. Common practice, no source. */
const SEALS_SAFELY_TO = 10

/** What a moisture means for storing seed. */
export function moistureAdvice({ high }: MoistureFound): Message[] {
  const caution = freezingCaution(high)
  if (caution === null) return [message('storage.dry-enough')]
  const sealing = high > SEALS_SAFELY_TO ? [message('storage.do-not-seal', { limit: SEALS_SAFELY_TO })] : []
  return [...sealing, caution]
}

/** Who dries by the masses told ends at most so far from the goal, points of moisture. Our own choice. */
const DRIES_WITHIN = 0.1

/** At which mass to stop drying, each mass told finely enough to end within {@link DRIES_WITHIN} of the goal. */
export function dryingInWords(plan: DryingPlan | null, { from, to }: Drying): Message {
  if (plan === null) return message('storage.dry-already', { from, to })
  const within = ((DRIES_WITHIN * plan.stopAt) / (100 - to + DRIES_WITHIN)) * MILLIGRAMS_PER.g
  const mass = (grams: number, tolerance = within) => ({
    mg: grams * MILLIGRAMS_PER.g,
    within: tolerance,
  })
  return message('storage.stop-drying', {
    left: mass(plan.stopAt),
    water: mass(plan.water),
    gel: mass(plan.gel, within / GEL_TAKES_UP),
  })
}

/** What the figures of a drying plan rest on. */
export const DRYING_ASSUMPTIONS: readonly Message[] = [
  message('storage.drying-same-bag'),
  message('storage.drying-gel', { part: { part: GEL_TAKES_UP } }),
  message('storage.drying-warmth'),
]

/** The usual cautions on drying gel. */
export const GEL_CAUTIONS: readonly Message[] = [message('storage.gel-caution')]
