import { viabilityBand } from './band.ts'
import { learn, type PlacedTest, type Posterior } from './learner.ts'
import type { ViabilityPrior } from './prior.ts'

/** What a lot's tests said together. */
export interface Learnt<T extends PlacedTest> {
  readonly posterior: Posterior
  /** Tests that count, and those set aside as dormancy: seed cannot come alive again, so a later test knew better. */
  readonly used: readonly T[]
  readonly setAside: readonly T[]
  /** Whether the tests that count fit no one curve, so that each says less. */
  readonly disagree: boolean
}

/** Standard errors by which a later test must be better before the earlier one is set aside; 1 in 100 by chance. */
const CLEARLY_BETTER = 2.326

/**
 * Learns from a lot's tests, in order of age, and deals with those that cannot be taken as they stand.
 *
 * Fewer sprouted than clearly did later: dormant then, set aside. Further apart than chance allows (1 in 100): all are
 * taken, at the weight that would make them fit, so that the band is wide.
 */
export function learnFromTests<T extends PlacedTest>(prior: ViabilityPrior, tests: readonly T[]): Learnt<T> {
  const setAside = tests.filter((test) =>
    tests.some((later) => later.lost > test.lost && clearlyBetter(later, test)),
  )
  const used = tests.filter((test) => !setAside.includes(test))
  const posterior = learn(prior, used)
  if (used.length < 2) return { posterior, used, setAside, disagree: false }
  const spread = used.reduce((sum, test) => sum + squaredMiss(posterior, test), 0)
  if (spread <= chiSquare99(used.length)) return { posterior, used, setAside, disagree: false }
  return { posterior: learn(prior, used, used.length / spread), used, setAside, disagree: true }
}

function clearlyBetter(later: PlacedTest, earlier: PlacedTest): boolean {
  const pooled = (later.sprouted + earlier.sprouted) / (later.tested + earlier.tested)
  const variance = pooled * (1 - pooled) * (1 / later.tested + 1 / earlier.tested)
  const better = later.sprouted / later.tested - earlier.sprouted / earlier.tested
  return better > 0 && better > CLEARLY_BETTER * Math.sqrt(variance)
}

function squaredMiss(posterior: Posterior, { lost, tested, sprouted }: PlacedTest): number {
  const { middle } = viabilityBand(posterior, lost)
  const part = Math.min(Math.max(middle, 0.5 / tested), 1 - 0.5 / tested)
  return (sprouted - tested * part) ** 2 / (tested * part * (1 - part))
}

/** What chance exceeds once in a hundred, by Wilson and Hilferty's cube (1931, from memory). */
function chiSquare99(degrees: number): number {
  const step = 2 / (9 * degrees)
  return degrees * (1 - step + CLEARLY_BETTER * Math.sqrt(step)) ** 3
}
