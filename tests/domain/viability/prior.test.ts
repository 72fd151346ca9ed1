import { expect, test } from 'vitest'
import { crossingBand, viabilityBand } from '../../../db/domain/viability/band.ts'
import { learn } from '../../../db/domain/viability/learner.ts'
import { moistureInAir, paceModelOf } from '../../../db/domain/viability/pace-model.ts'
import { extrapolatesBy, leastSold, type PriorFacts, priorOf } from '../../../db/domain/viability/prior.ts'
import crops from '../../../db/reference/crops.json' with { type: 'json' }
import { constantsOf } from '../../builders/crop-table.ts'

const facts: PriorFacts = {
  leastSold: 0.75,
  basis: 'constants-seen',
  keepingMeasured: false,
  extrapolates: 'nowhere',
  logPaceByYears: null,
}

const HALF = { part: 0.5, of: 'all-seeds' } as const
const withConstants = crops.filter(({ id }) => constantsOf(id) !== null)

/** The crop table's storage_years: extension lists, most of them seen; see /docs/sources. */
test.each(withConstants)(
  'untested $id in a room that nobody measured is half dead nearer to the years of the lists than by the constants alone',
  ({ id, oil_pct, storage_years, us_federal_min_germination_pct, us_state_min_germination_pct }) => {
    const oil = oil_pct === null ? null : ((oil_pct[0] ?? 0) + (oil_pct[1] ?? 0)) / 200
    const [low = 0, high = 0] = storage_years ?? []
    const least = leastSold(us_federal_min_germination_pct ?? us_state_min_germination_pct)
    const model = paceModelOf({
      cropId: id,
      constants: constantsOf(id),
      oil,
      years: [low, high],
      leastSold: least,
    })
    const pace = model?.pace({ celsius: 20, moisture: moistureInAir(oil) })
    if (model == null || pace?.kind !== 'pace') throw new Error(`No pace of ${id}`)
    const extrapolates = extrapolatesBy(pace.remarks)
    const half = (logPaceByYears: number | null) => {
      const own = priorOf({ ...facts, leastSold: least, basis: model.basis, extrapolates, logPaceByYears })
      const { low, middle, high } = crossingBand(learn(own, []), HALF)
      const years = (lost: number) => (lost * pace.sigmaDays) / 365.25
      return { low: years(low), middle: years(middle), high: years(high) }
    }
    const { low: soonest, middle, high: latest } = half(model.logPaceByYears)
    const off = (years: number) => Math.abs(Math.log(years / Math.sqrt(low * high)))
    expect(off(middle)).toBeLessThanOrEqual(off(half(null).middle) + 0.1)
    expect(middle).toBeGreaterThan(low / 2.5)
    expect(middle).toBeLessThanOrEqual(high)
    expect(soonest).toBeLessThan(low)
    expect(latest).toBeGreaterThan(high)
  },
)

test('the two sources are as sure together as either, and less where they are further apart', () => {
  const sd = (logPaceByYears: number | null) => priorOf({ ...facts, logPaceByYears }).logPaceSd
  expect(sd(Math.log(1.5))).toBeGreaterThan(0.6)
  expect(sd(Math.log(1.5))).toBeLessThan(sd(null))
  expect(sd(Math.log(0.5))).toBeGreaterThan(sd(Math.log(1.5)))
  expect(sd(Math.log(0.1))).toBeGreaterThan(sd(null))
})

test('by precision: the middle pace lies between the two, nearer to the surer one', () => {
  // 0.74 and 0.36 are the variances: 0.5 and 0.7 added as independent, and 0.6.
  const [byConstants, byYears] = [Math.log(1.5), Math.log(0.5)]
  const { logPaceMean } = priorOf({ ...facts, logPaceByYears: byYears })
  expect(logPaceMean).toBeCloseTo((byConstants / 0.74 + byYears / 0.36) / (1 / 0.74 + 1 / 0.36), 12)
})

test('a lot’s own tests soon say more than either source', () => {
  const tests = [
    { lost: 0.1, tested: 100, sprouted: 93 },
    { lost: 0.8, tested: 100, sprouted: 80 },
  ]
  const at = (logPaceByYears: number | null) =>
    viabilityBand(learn(priorOf({ ...facts, logPaceByYears }), tests), 0.8)
  const [alone, weighed] = [at(null), at(Math.log(0.3))]
  expect(Math.abs(alone.middle - weighed.middle)).toBeLessThan(0.02)
  expect(Math.abs(alone.low - weighed.low)).toBeLessThan(0.02)
})

test('a set from memory is trusted less than one that was seen', () => {
  const measured = { ...facts, keepingMeasured: true }
  const ratio =
    priorOf({ ...measured, basis: 'constants-from-memory' }).logPaceSd / priorOf(measured).logPaceSd
  expect(ratio).toBeGreaterThanOrEqual(1.5)
})

test('frozen seed is doubted more where its set was fitted on warmer seed only, than seed moister than that, and both more than seed within it', () => {
  expect(extrapolatesBy(['drier-than-helps'])).toBe('nowhere')
  expect(extrapolatesBy(['moister-than-fitted'])).toBe('somewhere')
  expect(extrapolatesBy(['colder-than-fitted'])).toBe('somewhere')
  expect(extrapolatesBy(['drier-than-fitted', 'colder-than-fitted', 'frozen-unfitted'])).toBe('into-the-cold')
  const sd = (extrapolates: PriorFacts['extrapolates']) => priorOf({ ...facts, extrapolates }).logPaceSd
  expect(sd('somewhere')).toBeGreaterThan(sd('nowhere'))
  expect(sd('into-the-cold')).toBeGreaterThan(sd('somewhere'))
})
