import { DAYS_IN_YEAR } from '../dates/day-arithmetic.ts'
import type { PaceRemark } from './equation.ts'
import { normalQuantile } from './normal.ts'

/**
 * What is thought of a lot before its own tests: how alive it was at the start, as a normal equivalent deviate, and how many
 * times faster than computed it ages, as a natural logarithm. Independent; the pace is normal, the start is normal but for
 * {@link ODD_LOTS}.
 */
export interface ViabilityPrior {
  readonly startMean: number
  readonly startSd: number
  readonly logPaceMean: number
  readonly logPaceSd: number
}

/** What the pace of ageing is computed by. */
export type PaceBasis = 'constants-seen' | 'constants-from-memory' | 'rule-of-thumb'

/** Beyond what a set of constants was fitted on: nowhere, somewhere, or below 0 °C, which nobody watched long enough to fit. */
export type Extrapolates = 'nowhere' | 'somewhere' | 'into-the-cold'

/** What a prior is made from. */
export interface PriorFacts {
  /** The least part alive that the crop is usually let be sold with, 0 to 1. */
  readonly leastSold: number
  readonly basis: PaceBasis
  /** Whether moisture and climate were measured, or one of them is assumed. */
  readonly keepingMeasured: boolean
  /** Where the constants are used outside what they were fitted on. */
  readonly extrapolates: Extrapolates
  /**
   * The pace by the years that seed of the crop is said to keep, times the computed one, as a natural logarithm; null where
   * they do not speak of how the lot was kept, or the pace is computed by them anyway.
   */
  readonly logPaceByYears: number | null
}

/** One lot in ten is taken to start below the least that may be sold; lots differ by so much. Judgement, no source. */
const STARTS_BELOW = 0.1
const START_SD = 0.6
/**
 * The equation is known to promise too much: results of long storage were lower, often much lower (Solberg et al. 2020,
 * Front. Plant Sci. 11:1007, seen). No source gives a factor; half as fast again is judgement, with room on both sides.
 */
const OPTIMISM = 1.5
/** Standard deviations of the logarithm of the pace, added as independent: judgement, no source. */
const DOUBT: Readonly<Record<PaceBasis, number>> = {
  'constants-seen': 0.5,
  'constants-from-memory': 0.8,
  'rule-of-thumb': 0.8,
}
const DOUBT_OF_ASSUMED_KEEPING = 0.7
/**
 * Seed of 16 crops in permafrost went from 92 to 80 % in 30 years (medians; PMC7285074, seen), where the equation takes wheat
 * to 91 %. In the cold the doubt is so wide that the band of wheat just reaches what was seen; the size is judgement.
 */
const DOUBT_OF_EXTRAPOLATION: Readonly<Record<Extrapolates, number>> = {
  nowhere: 0,
  somewhere: 0.4,
  'into-the-cold': 1,
}
/** Lists of years differ by two to three times (lettuce 2 to 6, pepper 2 or 3 to 5), and none says what it means by keeping. */
const DOUBT_OF_YEARS = 0.6

/** The middle one of the least parts that 7 CFR 201.31 lists, for crops that no law of sale names. */
const USUALLY_LEAST_SOLD = 0.75

/** The least part alive that a crop is let be sold with, 0 to 1, from the law's percent; null: no law names it. */
export function leastSold(percent: number | null): number {
  return percent === null ? USUALLY_LEAST_SOLD : percent / 100
}

/** The prior of a lot; the same object for the same facts. Throws RangeError unless `leastSold` is above 0 and below 1. */
export function priorOf(facts: PriorFacts): ViabilityPrior {
  const key = `${facts.leastSold} ${facts.basis} ${facts.keepingMeasured} ${facts.extrapolates} ${facts.logPaceByYears}`
  const known = PRIORS.get(key) ?? makePrior(facts)
  PRIORS.set(key, known)
  return known
}

/** Where constants are used outside what they were fitted on, by what was remarked of the pace. */
export function extrapolatesBy(remarks: readonly PaceRemark[]): Extrapolates {
  if (remarks.includes('frozen-unfitted')) return 'into-the-cold'
  return remarks.some((remark) => remark.endsWith('-than-fitted')) ? 'somewhere' : 'nowhere'
}

/** Few facts, many lots. */
const PRIORS = new Map<string, ViabilityPrior>()

function makePrior({
  leastSold,
  basis,
  keepingMeasured,
  extrapolates,
  logPaceByYears,
}: PriorFacts): ViabilityPrior {
  const computed: LogPace = {
    mean: basis === 'rule-of-thumb' ? 0 : Math.log(OPTIMISM),
    sd: Math.hypot(
      DOUBT[basis],
      keepingMeasured ? 0 : DOUBT_OF_ASSUMED_KEEPING,
      DOUBT_OF_EXTRAPOLATION[extrapolates],
    ),
  }
  const { mean, sd } =
    logPaceByYears === null ? computed : pooled(computed, { mean: logPaceByYears, sd: DOUBT_OF_YEARS })
  return { startMean: meanStart(leastSold), startSd: START_SD, logPaceMean: mean, logPaceSd: sd }
}

interface LogPace {
  readonly mean: number
  readonly sd: number
}

/**
 * Two sources of the pace in one, each with the weight of its precision.
 *
 * The doubt is that of either being right, so it grows by what they are apart and never shrinks below that of the surer one:
 * neither knows how this lot was kept.
 */
function pooled(one: LogPace, other: LogPace): LogPace {
  const weight = other.sd ** 2 / (one.sd ** 2 + other.sd ** 2)
  const apart = one.mean - other.mean
  return {
    mean: weight * one.mean + (1 - weight) * other.mean,
    sd: Math.sqrt(weight * one.sd ** 2 + (1 - weight) * other.sd ** 2 + weight * (1 - weight) * apart ** 2),
  }
}

/** The start of the middle lot of a crop as a deviate, from the least part alive that it is let be sold with. */
export function meanStart(leastSold: number): number {
  return normalQuantile(leastSold) - normalQuantile(STARTS_BELOW) * START_SD
}

/** One lot in ten may have gone wrong in the field or in drying, and starts anywhere, mostly lower. Judgement, no source. */
export const ODD_LOTS = { share: 0.1, lower: 0.6, sd: 1.6 } as const

/** How likely a start is before any test, as a natural logarithm but for a constant. */
export function logPriorOfStart({ startMean, startSd }: ViabilityPrior, start: number): number {
  const usual = (start - startMean) / startSd
  const odd = (start - startMean + ODD_LOTS.lower) / ODD_LOTS.sd
  return Math.log(
    ((1 - ODD_LOTS.share) / startSd) * Math.exp(-0.5 * usual * usual) +
      (ODD_LOTS.share / ODD_LOTS.sd) * Math.exp(-0.5 * odd * odd),
  )
}

/**
 * Days in which viability falls by one deviate where only the years that seed keeps are known: half of it is taken to be
 * alive when they are over, in the middle of their range. Judgement: no list says what its years mean.
 */
export function sigmaFromYears([low, high]: readonly [number, number], startMean: number): number {
  return (Math.sqrt(low * high) * DAYS_IN_YEAR) / Math.max(0.5, startMean)
}
