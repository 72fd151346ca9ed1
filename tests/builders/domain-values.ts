import fc from 'fast-check'
import type { Amount } from '../../db/domain/amounts/amount.ts'
import type { Manner } from '../../db/domain/amounts/in-words.ts'
import { type Milligrams, milligrams } from '../../db/domain/amounts/mass.ts'
import { seedCount } from '../../db/domain/amounts/seed-count.ts'
import { NOTHING_SAID } from '../../db/domain/keeping/keeping.ts'
import type { Balance } from '../../db/domain/ledger/movement.ts'
import type { LivingSeeds } from '../../db/domain/needs/living-seeds.ts'
import type { NeedFacts } from '../../db/domain/needs/need.ts'
import {
  type HundredSeedWeight,
  hundredSeedWeight,
  type WeighedSample,
} from '../../db/domain/weights/hundred-seed-weight.ts'

/** As a fresh collection writes. */
export const BRITISH: Manner = { locale: 'en-GB', massUnits: 'metric' }

export function weighed(mg: number): Amount {
  return { kind: 'mass', mass: milligrams(mg) }
}

export function counted(count: number): Amount {
  return { kind: 'count', count: seedCount(count), estimated: false }
}

export function guessed(count: number): Amount {
  return { kind: 'count', count: seedCount(count), estimated: true }
}

export function aBalance(count: number, mg: number): Balance {
  return { count: seedCount(count), mass: milligrams(mg) }
}

export function aSample(seeds: number, mg: number): WeighedSample {
  return { seeds: seedCount(seeds), mass: milligrams(mg) }
}

/** Facts of an accession that is well stocked, with what a test wants otherwise. */
export function needFacts(facts: Partial<NeedFacts> & { living?: LivingSeeds } = {}): NeedFacts {
  return {
    living: { about: 400, low: 350, high: 450, total: 500 },
    policy: { regrowings: 3, plants: 60, emergence: 0.8 },
    testedViability: null,
    threshold: 0.85,
    untested: 0,
    notCounted: 0,
    unit: 'seed',
    keeping: NOTHING_SAID,
    ...facts,
  }
}

/** Locales that differ in their marks: points, commas, spaces, narrow spaces, apostrophes, lakhs, none below 10,000, digits of their own. */
const LOCALES = ['en-GB', 'de-DE', 'fr-FR', 'sv-SE', 'de-CH', 'en-IN', 'es-ES', 'pl-PL', 'ar-EG', 'hi-IN']

export const anyManner: fc.Arbitrary<Manner> = fc.record({
  locale: fc.constantFrom(...LOCALES),
  massUnits: fc.constantFrom('metric', 'ounces'),
})

/** Masses up to the largest that one entry takes. */
export const anyMass: fc.Arbitrary<Milligrams> = fc.integer({ min: 1, max: 100_000_000 }).map(milligrams)

/** From dust-fine seed (0.01 g a hundred) to the heaviest bean (300 g a hundred). */
export const anyWeight: fc.Arbitrary<HundredSeedWeight> = fc
  .integer({ min: 10_000, max: 300_000_000 })
  .map(hundredSeedWeight)

/** Amounts of the size that a drawer holds, small ones often. */
export const anyAmount: fc.Arbitrary<Amount> = fc.oneof(
  fc.oneof(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 500_000 })).map(weighed),
  fc.oneof(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 20_000 })).map(counted),
  fc.integer({ min: 1, max: 2_000 }).map(guessed),
)
