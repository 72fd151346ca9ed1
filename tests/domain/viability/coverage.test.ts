import { expect, test } from 'vitest'
import { crossingBand, type Threshold, viabilityBand } from '../../../db/domain/viability/band.ts'
import { normalBelow, normalQuantile } from '../../../db/domain/viability/normal.ts'
import { ODD_LOTS, type PriorFacts, priorOf } from '../../../db/domain/viability/prior.ts'
import { learnFromTests } from '../../../db/domain/viability/test-sense.ts'
import { seeded } from '../../bench/random.ts'

const absolute: Threshold = { part: 0.85, of: 'all-seeds' }
const ofStart: Threshold = { part: 0.85, of: 'the-start' }
const LOTS = 2_000

const measured: PriorFacts = {
  leastSold: 0.75,
  basis: 'constants-seen',
  keepingMeasured: true,
  extrapolates: 'nowhere',
  logPaceByYears: null,
}
const frozen: PriorFacts = { ...measured, extrapolates: 'into-the-cold' }
/** As wheat in a room that nobody measured: the years say a third of the pace that the constants do. */
const weighedIn: PriorFacts = { ...measured, keepingMeasured: false, logPaceByYears: Math.log(0.35) }
const alone: PriorFacts = { ...weighedIn, logPaceByYears: null }

/** Lots with a known truth, aged and tested by chance: how often in a hundred the 90 % bands hold it. */
function coverage(facts: PriorFacts, logPace: (normal: () => number, random: () => number) => number) {
  const prior = priorOf(facts)
  const random = seeded(20_261_127)
  const normal = () => normalQuantile(Math.min(Math.max(random(), 1e-9), 1 - 1e-9))
  const held = { viability: 0, absolute: 0, ofStart: 0 }
  for (let lot = 0; lot < LOTS; lot += 1) {
    const odd = random() < ODD_LOTS.share
    const start = odd
      ? prior.startMean - ODD_LOTS.lower + ODD_LOTS.sd * normal()
      : prior.startMean + prior.startSd * normal()
    const pace = Math.exp(logPace(normal, random))
    const now = 1.2 * random()
    const tests = Array.from({ length: Math.floor(5 * random()) }, () => {
      const lost = now * random()
      const tested = [10, 20, 50, 100, 200][Math.floor(5 * random())] as number
      const part = normalBelow(start - pace * lost)
      const sprouted = Array.from({ length: tested }, random).filter((chance) => chance < part).length
      return { lost, tested, sprouted }
    }).toSorted((one, other) => one.lost - other.lost)
    const { posterior } = learnFromTests(prior, tests)
    const holds = ({ low, high }: { low: number; high: number }, truth: number) =>
      truth >= low && truth <= high ? 1 : 0
    const crossed = (part: number) => Math.max(0, (start - normalQuantile(part)) / pace)
    held.viability += holds(viabilityBand(posterior, now), normalBelow(start - pace * now))
    held.absolute += holds(crossingBand(posterior, absolute), crossed(0.85))
    held.ofStart += holds(crossingBand(posterior, ofStart), crossed(0.85 * normalBelow(start)))
  }
  return {
    viability: (100 * held.viability) / LOTS,
    absolute: (100 * held.absolute) / LOTS,
    ofStart: (100 * held.ofStart) / LOTS,
  }
}

const byPrior = (facts: PriorFacts) => (normal: () => number) =>
  priorOf(facts).logPaceMean + priorOf(facts).logPaceSd * normal()

/** Of 2,000 the 90 % band must hold the truth in 87 to 93 of a hundred. */
test.each([
  ['of a measured climate', measured, byPrior(measured)],
  ['in a measured freezer', frozen, byPrior(frozen)],
  ['of an assumed room, with the years weighed in', weighedIn, byPrior(weighedIn)],
  [
    'of an assumed room, of which one half ages by the constants and the other by the years',
    weighedIn,
    (normal: () => number, random: () => number) =>
      random() < 0.5 ? byPrior(alone)(normal) : Math.log(0.35) + 0.6 * normal(),
  ],
] as const)('2,000 simulated lots %s: the band holds the truth as often as it says', (said, facts, pace) => {
  const held = coverage(facts, pace)
  console.log(
    `of ${LOTS} simulated lots ${said} the 90 % band held today's viability in ${held.viability} %, the crossing of 85 % in ${held.absolute} %, of 85 % of the start in ${held.ofStart} %`,
  )
  for (const percent of [held.viability, held.ofStart]) {
    expect(percent).toBeGreaterThanOrEqual(87)
    expect(percent).toBeLessThanOrEqual(93)
  }
  // Lots that start below the threshold crossed at 0, which a band from 0 always holds: never less than it says.
  expect(held.absolute).toBeGreaterThanOrEqual(87)
})
