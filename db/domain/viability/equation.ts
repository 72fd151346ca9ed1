import { type Message, message } from '../../messages/message.ts'
import { nearestEquilibrium } from '../moisture/equilibrium.ts'
import { LOWEST_WORKING_PERCENT, type ViabilityConstants } from './constants.ts'
import { within } from './span.ts'

/** Where seed lies: its moisture, percent of fresh weight, and degrees C. */
export interface Keeping {
  readonly moisture: number
  readonly celsius: number
}

/**
 * Days in which viability falls by one normal equivalent deviate: 10 ^ (KE - CW log10 m - CH t - CQ t^2).
 *
 * Ellis and Roberts 1980, Ann. Bot. 45:13-30 (form seen). The bare formula: {@link paceOf} knows its limits. Throws
 * RangeError unless moisture is above 0.
 */
export function sigmaDays(
  { ke, cw, ch, cq }: Pick<ViabilityConstants, 'ke' | 'cw' | 'ch' | 'cq'>,
  { moisture, celsius }: Keeping,
): number {
  if (!(moisture > 0)) throw new RangeError(`Not a moisture: ${moisture}`)
  return 10 ** (ke - cw * Math.log10(moisture) - ch * celsius - cq * celsius * celsius)
}

/** The temperature at which a set's fitted parabola turns, so that colder would seem worse: -CH / (2 CQ), degrees C. */
export function turningPoint({ ch, cq }: Pick<ViabilityConstants, 'ch' | 'cq'>): number {
  return -ch / (2 * cq)
}

/** Air in which drying stops helping: 10.6 % at 20 C, Ellis, Hong and Roberts 1989, Ann. Bot. 63:601-611 (abstract seen). */
const DRY_AIR = { humidity: 0.106, temperature: 20 } as const

/**
 * The moisture below which drying no longer lengthens life, percent of fresh weight.
 *
 * As published for the crop, else what seed of its oil holds in {@link DRY_AIR}, else 5 %. `oil` is a part of dry weight.
 */
export function lowestMoisture(set: ViabilityConstants | null, oil: number | null): number {
  if (set !== null && set.lowestPercent !== null) return set.lowestPercent
  return oil === null ? LOWEST_WORKING_PERCENT : nearestEquilibrium({ ...DRY_AIR, oil }).wetPercent
}

/** How a pace was come by where it was not simply inside what was fitted. */
export const PACE_REMARKS = [
  'drier-than-helps',
  'colder-than-known',
  'moister-than-fitted',
  'drier-than-fitted',
  'warmer-than-fitted',
  'colder-than-fitted',
  'frozen-unfitted',
] as const
export type PaceRemark = (typeof PACE_REMARKS)[number]

export type Pace =
  | { readonly kind: 'pace'; readonly sigmaDays: number; readonly remarks: readonly PaceRemark[] }
  | { readonly kind: 'refused'; readonly because: Message }

/** What the equation may be asked at all: judgement from the fitted ranges, see docs/sources. */
export const WORKING = { moistest: 25, coldest: -20, hottest: 90 } as const

/** The coldest that a set is asked about, degrees C: its turning point, or what was studied at all. */
export function coldestKnown(set: ViabilityConstants): number {
  return Math.max(WORKING.coldest, turningPoint(set))
}

/**
 * How fast seed ages, by the equation with its limits.
 *
 * Drier than the lower limit counts as the limit; colder than -20 C or the turning point counts as that. Outside what the
 * set was fitted on a remark says that this extrapolates. Above 25 % or 90 C it refuses.
 */
export function paceOf(set: ViabilityConstants, keeping: Keeping, oil: number | null): Pace {
  const beyond = refusal(keeping)
  if (beyond !== null) return { kind: 'refused', because: beyond }
  const lowest = lowestMoisture(set, oil)
  const coldest = coldestKnown(set)
  const moisture = Math.max(keeping.moisture, lowest)
  const celsius = Math.max(keeping.celsius, coldest)
  const remarks: PaceRemark[] = []
  if (keeping.moisture < lowest) remarks.push('drier-than-helps')
  if (keeping.celsius < coldest) remarks.push('colder-than-known')
  if (set.fittedPercent !== null) {
    if (moisture > set.fittedPercent.to) remarks.push('moister-than-fitted')
    if (moisture < set.fittedPercent.from) remarks.push('drier-than-fitted')
  }
  if (set.fittedCelsius !== null) {
    if (celsius > set.fittedCelsius.to) remarks.push('warmer-than-fitted')
    if (celsius < set.fittedCelsius.from) remarks.push('colder-than-fitted')
    if (celsius < Math.min(0, set.fittedCelsius.from)) remarks.push('frozen-unfitted')
  }
  return { kind: 'pace', sigmaDays: sigmaDays(set, { moisture, celsius }), remarks }
}

/** Why nothing is worked out for seed kept so, or null. */
export function refusal({ moisture, celsius }: Keeping): Message | null {
  if (!(moisture <= WORKING.moistest)) return message('forecast.too-moist', { moisture })
  if (!(celsius <= WORKING.hottest)) return message('forecast.too-hot', { celsius })
  return null
}

/** Harrington's rules hold so far: 0 to 50 C, 5 to 14 % (seen in three guides; 5 C and not 10 F is his metric wording). */
const RULE = { celsius: { from: 0, to: 50 }, percent: { from: 5, to: 14 } } as const
const DEGREES_THAT_HALVE = 5
const POINTS_THAT_HALVE = 1

/**
 * How many times longer seed lasts kept so than in another way, by rule of thumb: each 5 C cooler and each point of moisture
 * drier doubles its life. Beyond the rules' ranges the nearest inside is taken.
 */
export function ruleOfThumbGain(keeping: Keeping, than: Keeping): number {
  const cooler = within(than.celsius, RULE.celsius) - within(keeping.celsius, RULE.celsius)
  const drier = within(than.moisture, RULE.percent) - within(keeping.moisture, RULE.percent)
  return 2 ** (cooler / DEGREES_THAT_HALVE + drier / POINTS_THAT_HALVE)
}
