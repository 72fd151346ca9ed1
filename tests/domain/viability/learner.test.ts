import { describe, expect, test } from 'vitest'
import {
  chanceBelow,
  crossingBand,
  type Threshold,
  viabilityBand,
} from '../../../db/domain/viability/band.ts'
import { learn } from '../../../db/domain/viability/learner.ts'
import { normalBelow } from '../../../db/domain/viability/normal.ts'
import { priorOf } from '../../../db/domain/viability/prior.ts'
import { learnFromTests } from '../../../db/domain/viability/test-sense.ts'

const prior = priorOf({
  leastSold: 0.75,
  basis: 'constants-seen',
  keepingMeasured: true,
  extrapolates: 'nowhere',
  logPaceByYears: null,
})
const absolute: Threshold = { part: 0.85, of: 'all-seeds' }
const ofStart: Threshold = { part: 0.85, of: 'the-start' }

describe('what tests teach', () => {
  test('no test leaves what the crop says: a wide band round a good start', () => {
    const { posterior } = learnFromTests(prior, [])
    const { low, middle, high } = viabilityBand(posterior, 0)
    expect(middle).toBeCloseTo(normalBelow(prior.startMean), 1)
    expect(low).toBeLessThan(normalBelow(prior.startMean - 1.6 * prior.startSd))
    expect(high).toBeCloseTo(normalBelow(prior.startMean + 1.645 * prior.startSd), 2)
  })

  test('a test narrows the band round what sprouted, a larger one more', () => {
    const ofTest = (tested: number, sprouted: number) =>
      viabilityBand(learnFromTests(prior, [{ lost: 0.2, tested, sprouted }]).posterior, 0.2)
    const width = (band: { low: number; high: number }) => band.high - band.low
    expect(width(ofTest(20, 16))).toBeLessThan(width(viabilityBand(learnFromTests(prior, []).posterior, 0.2)))
    expect(width(ofTest(200, 160))).toBeLessThan(width(ofTest(20, 16)) / 2)
    expect(ofTest(200, 160).middle).toBeCloseTo(0.8, 1)
  })

  test('a lot that falls fast is known to age fast', () => {
    const slow = learnFromTests(prior, [
      { lost: 0, tested: 100, sprouted: 95 },
      { lost: 0.3, tested: 100, sprouted: 94 },
    ])
    const fast = learnFromTests(prior, [
      { lost: 0, tested: 100, sprouted: 95 },
      { lost: 0.3, tested: 100, sprouted: 75 },
    ])
    expect(crossingBand(fast.posterior, absolute).middle).toBeLessThan(
      crossingBand(slow.posterior, absolute).middle / 2,
    )
  })

  test('the earlier of rising tests is taken for dormancy and set aside', () => {
    const dormant = { lost: 0.1, tested: 100, sprouted: 40 }
    const awake = { lost: 0.2, tested: 100, sprouted: 92 }
    const learnt = learnFromTests(prior, [dormant, awake])
    expect(learnt.setAside).toEqual([dormant])
    expect(viabilityBand(learnt.posterior, 0.2)).toEqual(
      viabilityBand(learnFromTests(prior, [awake]).posterior, 0.2),
    )
  })

  test('tests that fit no curve leave a wide band and say that they disagree', () => {
    const learnt = learnFromTests(prior, [
      { lost: 0.1, tested: 100, sprouted: 95 },
      { lost: 0.101, tested: 100, sprouted: 30 },
    ])
    const { low, high } = viabilityBand(learnt.posterior, 0.101)
    expect(learnt.disagree).toBe(true)
    expect(high - low).toBeGreaterThan(0.15)
  })

  test.each([
    ['0.09:387 0.31:384 0.36:384 0.7:374 1.01:357 1.65:345', [0.819, 0.845, 0.87]],
    ['0.27:228 0.41:182 0.47:157 0.48:179 0.58:181 1.46:40', [0.078, 0.1, 0.126]],
  ])('large tests, %s of 400, leave the band that a plain grid of 500 by 300 does', (said, band) => {
    const tests = said.split(' ').map((each) => {
      const [lost = 0, sprouted = 0] = each.split(':').map(Number)
      return { lost, tested: 400, sprouted }
    })
    const { low, middle, high } = viabilityBand(learn(prior, tests), tests.at(-1)?.lost ?? 0)
    for (const [index, part] of [low, middle, high].entries())
      expect(Math.abs(part - (band[index] ?? 0))).toBeLessThan(0.005)
  })

  test('of two tests of one day neither is dormancy: they disagree, in either order', () => {
    const poor = { lost: 0.1, tested: 100, sprouted: 40 }
    const good = { lost: 0.1, tested: 100, sprouted: 92 }
    for (const tests of [
      [poor, good],
      [good, poor],
    ])
      expect(learnFromTests(prior, tests)).toMatchObject({ setAside: [], disagree: true })
  })

  test.each([
    [0, 0.01],
    [20, 0.9],
  ])('%s of 20 sprouted is taken as it is, without infinities', (sprouted, about) => {
    const { posterior } = learnFromTests(prior, [{ lost: 0.1, tested: 20, sprouted }])
    const { low, middle, high } = viabilityBand(posterior, 0.1)
    expect([low, middle, high].every((part) => part >= 0 && part <= 1)).toBe(true)
    if (sprouted === 0) expect(middle).toBeLessThan(0.1)
    else expect(middle).toBeGreaterThan(about)
    expect(Number.isFinite(crossingBand(posterior, absolute).high)).toBe(true)
  })

  test('a lot that was never good enough crossed at its start; by its own start it has not', () => {
    const { posterior } = learnFromTests(prior, [{ lost: 0, tested: 400, sprouted: 240 }])
    expect(crossingBand(posterior, absolute).high).toBe(0)
    expect(crossingBand(posterior, ofStart).low).toBeGreaterThan(0)
    expect(chanceBelow(posterior, absolute, 0)).toBeCloseTo(1, 6)
  })
})

test('the date of crossing is where half of the chance lies below', () => {
  const { posterior } = learnFromTests(prior, [{ lost: 0.1, tested: 50, sprouted: 46 }])
  for (const threshold of [absolute, ofStart]) {
    const { low, middle, high } = crossingBand(posterior, threshold)
    expect(chanceBelow(posterior, threshold, middle)).toBeCloseTo(0.5, 1)
    expect(chanceBelow(posterior, threshold, low)).toBeCloseTo(0.05, 1)
    expect(chanceBelow(posterior, threshold, high)).toBeCloseTo(0.95, 1)
  }
})
