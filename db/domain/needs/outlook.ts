import { incompleteBeta } from '../germination/incomplete-beta.ts'
import { probability } from '../shared/probability.ts'
import { normalBelow, normalDensity, normalQuantile } from '../viability/normal.ts'

/** Seasons that the outlook goes ahead. */
export const SEASONS_AHEAD = 5

/** What is believed of the part of a lot's seed that is alive: its mean, 0 to 1, and standard deviation. */
export interface ViabilityBelief {
  readonly mean: number
  readonly deviation: number
}

/** A lot as the outlook sees it: the origin that it shares with parts of the same seed, its seeds, the relative doubt of their count (95 %), and what is believed alive. */
export interface LotOutlook {
  readonly origin: number
  readonly seeds: number
  readonly countDoubt: number
  readonly belief: ViabilityBelief
}

/** Living seeds expected on a day, with their standard deviation and the most that there can be. */
export interface LivingOutlook {
  readonly mean: number
  readonly deviation: number
  readonly most: number
}

/**
 * A belief, closed: its mean is a part, and its deviation no more than a part with that mean can have, the root of
 * mean (1 - mean).
 */
function believed(mean: number, deviation: number): ViabilityBelief {
  const part = probability(mean)
  return { mean: part, deviation: Math.min(deviation, Math.sqrt(part * (1 - part))) }
}

/** How far an assumed viability may be off, one standard deviation. Common practice, no source. */
const ASSUMED_DEVIATION = 0.15
/** Standard deviations in half of a 95 % band. */
const BAND = 1.96
/** Standard deviations in half of a forecast's band, from the 5th to the 95th part of a hundred. */
const FORECAST_BAND = 1.645
/** Years that the seed of a crop without a figure keeps. Common practice, no source. */
const STORAGE_YEARS_WITHOUT_FIGURE = 3
/** The odds that sound seed begins with: nine in ten alive. Common practice, no source. */
const SOUND_ODDS = 9
/** The pace of ageing may be off by so much of itself, one standard deviation. Common practice, no source. */
const PACE_DOUBT = 0.5
/** From this concentration on a belief counts as certain. */
const CERTAIN = 1e6
/** A part nearer than this to none or all is none or all. */
const NEARLY_NONE = 1e-12

/** What a germination test leaves to be believed: the mean and deviation of Beta(sprouted + 1, tested - sprouted + 1). */
export function beliefFromTest(sprouted: number, tested: number): ViabilityBelief {
  const mean = (sprouted + 1) / (tested + 2)
  return believed(mean, Math.sqrt((mean * (1 - mean)) / (tested + 3)))
}

/** What a forecast leaves to be believed: its middle, and the deviation of its band from the 5th to the 95th part. */
export function beliefFromBand(middle: number, [low, high]: readonly [number, number]): ViabilityBelief {
  return believed(middle, (high - low) / (2 * FORECAST_BAND))
}

/** What is believed of untested seed for which a viability is assumed. */
export function beliefFromAssumption(viability: number): ViabilityBelief {
  return believed(viability, ASSUMED_DEVIATION)
}

/**
 * What is believed after so many years more in store, for a crop whose seed keeps `storageYears`; null: not known.
 *
 * A rule of thumb for a lot without a forecast: the odds of being alive fall from nine to one in the years
 * that the crop's seed is said to keep (common practice, no source), and half of that fall is in doubt.
 * Throws RangeError for storage years of zero or less.
 */
export function aged(belief: ViabilityBelief, years: number, storageYears: number | null): ViabilityBelief {
  const keeps = storageYears ?? STORAGE_YEARS_WITHOUT_FIGURE
  if (!(keeps > 0)) throw new RangeError(`Seed does not keep ${keeps} years`)
  const { mean, deviation } = belief
  if (years <= 0 || mean <= 0 || mean >= 1) return belief
  const fall = (years / keeps) * Math.log(SOUND_ODDS)
  const odds = (mean / (1 - mean)) * Math.exp(-fall)
  const later = odds / (1 + odds)
  const steepness = later * (1 - later)
  const carried = deviation * (steepness / (mean * (1 - mean)))
  return believed(later, Math.hypot(carried, steepness * fall * PACE_DOUBT))
}

/**
 * What is believed after so many years more where a lot lies, by its forecast: so many normal equivalent deviates lost a year.
 *
 * Half of the loss is in doubt, as by the rule of thumb. Throws RangeError for a negative loss.
 */
export function agedByForecast(
  belief: ViabilityBelief,
  years: number,
  deviatesAYear: number,
): ViabilityBelief {
  if (!(deviatesAYear >= 0)) throw new RangeError(`Seed does not lose ${deviatesAYear} deviates a year`)
  const { mean, deviation } = belief
  if (years <= 0 || mean <= 0 || mean >= 1) return belief
  const now = normalQuantile(mean)
  const loss = years * deviatesAYear
  const steepness = normalDensity(now - loss)
  const carried = deviation * (steepness / normalDensity(now))
  return believed(normalBelow(now - loss), Math.hypot(carried, steepness * loss * PACE_DOUBT))
}

/**
 * Living seeds of several lots together.
 *
 * Three doubts add up: what part is alive, how many seeds there are, and that each seed is alive by chance. Lots of one
 * origin are alive to one part and its doubt is one; of different origins it is independent. Counts are taken to be off all
 * the same way, since parts were weighed together and what was never weighed goes by one weight of the crop; chance is each
 * seed's own. So no splitting changes the sum.
 */
export function livingOutlook(lots: readonly LotOutlook[]): LivingOutlook {
  const sum = (of: (lot: LotOutlook) => number, among = lots) =>
    among.reduce((total, lot) => total + of(lot), 0)
  const origins = [...Map.groupBy(lots, ({ origin }) => origin).values()]
  const ofParts = origins.map((parts) => sum(({ seeds, belief }) => seeds * belief.deviation, parts))
  const ofCounts = sum(({ seeds, belief, countDoubt }) => (seeds * belief.mean * countDoubt) / BAND)
  const ofChance = sum(({ seeds, belief }) => seeds * belief.mean * (1 - belief.mean))
  return {
    mean: sum(({ seeds, belief }) => seeds * belief.mean),
    deviation: Math.hypot(...ofParts, ofCounts, Math.sqrt(ofChance)),
    most: sum(({ seeds, countDoubt }) => seeds * (1 + countDoubt)),
  }
}

/**
 * The chance that fewer than `wanted` seeds are alive.
 *
 * The living part is taken as Beta distributed with the outlook's mean and deviation, from none to the most; for one
 * tested and counted lot that is the test's own posterior, widened by the chance of each seed.
 */
export function chanceOfFewerThan(wanted: number, outlook: LivingOutlook): number {
  const { mean, deviation, most } = outlook
  if (wanted <= 0) return 0
  if (most < wanted) return 1
  const part = mean / most
  const concentration = (part * (1 - part)) / (deviation / most) ** 2 - 1
  if (Math.min(part, 1 - part) < NEARLY_NONE || concentration > CERTAIN) return mean < wanted - 0.5 ? 1 : 0
  const kept = Math.max(concentration, 0.01)
  return incompleteBeta((wanted - 0.5) / most, part * kept, (1 - part) * kept)
}
