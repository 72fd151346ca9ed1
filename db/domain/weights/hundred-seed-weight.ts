import { type Milligrams, milligrams } from '../amounts/mass.ts'
import { type SeedCount, seedCount } from '../amounts/seed-count.ts'
import { studentQuantile } from './student.ts'

/** The weight of one hundred seeds of a crop nobody has figures for: that of a middling seed, marked as a guess. */
export const WEIGHT_WITHOUT_FIGURES = 1_000_000 as HundredSeedWeight

/** Doubt of a count that somebody guessed: a quarter. Common practice, no source. */
export const DOUBT_OF_A_GUESS = 0.25

/** The mass of one hundred seeds in whole micrograms, above zero. Ties count to mass in the ledger. */
export type HundredSeedWeight = number & { readonly __brand: 'HundredSeedWeight' }

const MICROGRAMS_PER_MILLIGRAM = 1_000
const SEEDS_PER_HUNDRED = 100

/** Makes a {@link HundredSeedWeight} from micrograms. Throws RangeError unless it is a whole number above zero. */
export function hundredSeedWeight(micrograms: number): HundredSeedWeight {
  if (!Number.isSafeInteger(micrograms) || micrograms <= 0) {
    throw new RangeError(`Not a hundred-seed weight in micrograms: ${micrograms}`)
  }
  return micrograms as HundredSeedWeight
}

/** The mass of one weighed portion and how many seeds were counted into it. */
export interface WeighedSample {
  readonly seeds: SeedCount
  readonly mass: Milligrams
}

/** What a set of weighed samples says about the weight of one hundred seeds. */
export interface WeightStatistics {
  readonly hundredSeedWeight: HundredSeedWeight
  readonly replicates: number
  readonly seedsCounted: SeedCount
  /** Standard deviation of the replicates' hundred-seed weights, micrograms; null for a single sample. */
  readonly standardDeviation: number | null
  /** Coefficient of variation, percent of the mean; null for a single sample. */
  readonly coefficientOfVariation: number | null
}

/**
 * Mean, standard deviation (n - 1) and coefficient of variation of the replicates' hundred-seed weights.
 *
 * With replicates of unequal size the mean is total mass over total seeds, so that every seed counts once.
 * Throws RangeError when there is no sample, or a sample without seeds or mass.
 */
export function weightStatistics(samples: readonly WeighedSample[]): WeightStatistics {
  if (samples.length === 0) throw new RangeError('A hundred-seed weight needs at least one weighed sample')
  const perHundred = samples.map((sample) => microgramsPerHundred(sample))
  const seeds = samples.reduce((sum, sample) => sum + sample.seeds, 0)
  const mass = samples.reduce((sum, sample) => sum + sample.mass, 0)
  const mean = hundredSeedWeight(
    Math.round(microgramsPerHundred({ seeds: seedCount(seeds), mass: milligrams(mass) })),
  )
  const spread = samples.length > 1 ? sampleStandardDeviation(perHundred) : null
  return {
    hundredSeedWeight: mean,
    replicates: samples.length,
    seedsCounted: seedCount(seeds),
    standardDeviation: spread,
    coefficientOfVariation: spread === null ? null : (100 * spread) / mean,
  }
}

function microgramsPerHundred(sample: WeighedSample): number {
  if (sample.seeds === 0 || sample.mass === 0) {
    throw new RangeError('A weighed sample needs at least one seed and some mass')
  }
  return (sample.mass * MICROGRAMS_PER_MILLIGRAM * SEEDS_PER_HUNDRED) / sample.seeds
}

function sampleStandardDeviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return Math.sqrt(squares / (values.length - 1))
}

/**
 * The largest coefficient of variation, in percent, at which eight replicates of one hundred seeds stand.
 *
 * ISTA Rules, chapter 10 (from memory): 4.0, or 6.0 for chaffy grass seed. Above it, weigh eight more.
 */
export const LARGEST_COEFFICIENT_OF_VARIATION = { ordinary: 4.0, chaffy: 6.0 } as const

export type SeedSurface = keyof typeof LARGEST_COEFFICIENT_OF_VARIATION

/**
 * Whether replicates agree well enough; 'not-judged' when fewer than two were weighed.
 *
 * Portions of fewer than one hundred seeds vary more by chance alone, so the limit is widened by the square root of
 * 100 / seeds in a portion (statistics of means; common practice, no source).
 */
export function judgeReplicates(
  statistics: WeightStatistics,
  surface: SeedSurface,
): 'agree' | 'weigh-again' | 'not-judged' {
  if (statistics.coefficientOfVariation === null) return 'not-judged'
  const seedsInEach = statistics.seedsCounted / statistics.replicates
  const widened = Math.sqrt(Math.max(1, SEEDS_PER_HUNDRED / seedsInEach))
  return statistics.coefficientOfVariation <= LARGEST_COEFFICIENT_OF_VARIATION[surface] * widened
    ? 'agree'
    : 'weigh-again'
}

/** Whether a hundred-seed weight lies outside a crop's plausible band (grams); a warning to look again, not a limit. */
export function looksMisweighed(
  weight: HundredSeedWeight,
  plausibleGrams: readonly [low: number, high: number] | null,
): boolean {
  if (plausibleGrams === null) return false
  const grams = gramsPerHundred(weight)
  return grams < plausibleGrams[0] || grams > plausibleGrams[1]
}

/** The weight of one hundred seeds in grams. */
export function gramsPerHundred(weight: HundredSeedWeight): number {
  return weight / 1_000_000
}

/** A hundred-seed weight from grams, to the nearest microgram. Throws RangeError unless it is above zero. */
export function hundredSeedWeightFromGrams(grams: number): HundredSeedWeight {
  return hundredSeedWeight(Math.round(grams * 1_000_000))
}

/** Seeds in a mass: 100 x mass / hundred-seed weight, to the nearest whole seed. */
export function countFromMass(mass: Milligrams, weight: HundredSeedWeight): SeedCount {
  return seedCount(Math.round((mass * MICROGRAMS_PER_MILLIGRAM * SEEDS_PER_HUNDRED) / weight))
}

/** Mass of a count: count x hundred-seed weight / 100, to the nearest milligram. */
export function massFromCount(count: SeedCount, weight: HundredSeedWeight): Milligrams {
  return milligrams(Math.round((count * weight) / (MICROGRAMS_PER_MILLIGRAM * SEEDS_PER_HUNDRED)))
}

/** Seed that is poured together with other seed: what there is of it, and the relative doubt of its count. */
export interface MergedSeed {
  readonly count: SeedCount
  readonly mass: Milligrams
  readonly doubt: number
}

/**
 * The hundred-seed weight of seed poured together: all its mass over all its seeds, so that weighing it finds the seeds that
 * the book has. Null where either is nothing.
 *
 * The doubts are added up seed by seed, as they stand: a cautious sum that no order of pouring changes.
 */
export function pooledWeight(
  parts: readonly MergedSeed[],
): { readonly weight: HundredSeedWeight; readonly doubt: number } | null {
  const sum = (of: (part: MergedSeed) => number) => parts.reduce((total, part) => total + of(part), 0)
  const count = sum((part) => part.count)
  const mass = sum((part) => part.mass)
  if (count === 0 || mass === 0) return null
  return {
    weight: hundredSeedWeight(
      Math.max(1, Math.round((mass * MICROGRAMS_PER_MILLIGRAM * SEEDS_PER_HUNDRED) / count)),
    ),
    doubt: sum((part) => part.count * part.doubt) / count,
  }
}

/** How a hundred-seed weight was come by; it decides how far a derived number is to be trusted. A guess: nobody knows. */
export type WeightBasis = 'measured' | 'crop-default' | 'guess'

/** What is known of the samples behind a measured weight; not looked at for a crop default. */
export interface SampleFacts {
  readonly replicates: number
  readonly seedsCounted: number
  /** Percent; null for a single sample. */
  readonly coefficientOfVariation: number | null
}

/** No weighing is trusted closer than one part in a hundred: scales and counting slip too. Common practice, no source. */
const LEAST_DOUBT = 0.01
const MOST_DOUBT = 0.9

/**
 * The relative doubt (one part in one) of a number derived through a hundred-seed weight, about 95 %.
 *
 * One sample: the coefficient of variation is not known, so the 4 % limit for replicates of one hundred is scaled to the
 * seeds counted. Replicates: Student's t times the standard error of their mean, and never less than one sample of all their
 * seeds would leave, as a few may agree by chance. Crop default: half the plausible band.
 * Both fall-backs are common practice, no source. Never below 0.01 nor above 0.9, which a guess always has.
 */
export function relativeDoubt(
  basis: WeightBasis,
  weight: HundredSeedWeight,
  sample: SampleFacts,
  plausibleGrams: readonly [low: number, high: number] | null,
): number {
  if (basis === 'guess') return MOST_DOUBT
  const doubt = basis === 'crop-default' ? doubtOfDefault(weight, plausibleGrams) : doubtOfSample(sample)
  return Math.min(MOST_DOUBT, Math.max(LEAST_DOUBT, doubt))
}

function doubtOfDefault(
  weight: HundredSeedWeight,
  plausibleGrams: readonly [low: number, high: number] | null,
): number {
  if (plausibleGrams === null) return 0.5
  return (plausibleGrams[1] - plausibleGrams[0]) / 2 / gramsPerHundred(weight)
}

function doubtOfSample(sample: SampleFacts): number {
  const { replicates, seedsCounted, coefficientOfVariation } = sample
  const limit = LARGEST_COEFFICIENT_OF_VARIATION.ordinary / 100
  const ofOneSample = 2 * limit * Math.sqrt(SEEDS_PER_HUNDRED / Math.max(1, seedsCounted))
  if (coefficientOfVariation === null || replicates < 2) return ofOneSample
  const standardError = coefficientOfVariation / 100 / Math.sqrt(replicates)
  return Math.max(ofOneSample, studentQuantile(replicates - 1) * standardError)
}
