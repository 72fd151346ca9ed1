import { jStat } from 'jstat'
import { describe, expect, test } from 'vitest'
import { addDays, daysBetween } from '../../../db/domain/dates/day-arithmetic.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { crossingBand, middlePace, type Threshold, viabilityBand } from '../../../db/domain/viability/band.ts'
import { type Ageing, curveOf, type DatedTest, forecastOf } from '../../../db/domain/viability/forecast.ts'
import { homeYearsTold } from '../../../db/domain/viability/home-years.ts'
import { normalBelow, normalDensity, normalQuantile } from '../../../db/domain/viability/normal.ts'
import { paceModelOf } from '../../../db/domain/viability/pace-model.ts'
import {
  extrapolatesBy,
  leastSold,
  logPriorOfStart,
  meanStart,
  ODD_LOTS,
  priorOf,
  sigmaFromYears,
} from '../../../db/domain/viability/prior.ts'
import { learnFromTests } from '../../../db/domain/viability/test-sense.ts'
import { constantsOf } from '../../builders/crop-table.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const [START, TODAY] = [isoDate('2020-01-01'), isoDate('2024-01-01')]
const facts = {
  leastSold: 0.75,
  basis: 'constants-seen',
  keepingMeasured: true,
  extrapolates: 'nowhere',
  logPaceByYears: null,
} as const
const prior = priorOf(facts)
const threshold: Threshold = { part: 0.85, of: 'the-start' }

/** A lot that ages evenly, so that the day of any loss is plain arithmetic. */
const evenly = (daily: number): Ageing => ({
  start: START,
  dailyAhead: daily,
  lostOn: (day) => daily * daysBetween(START, day),
})
const dated = (on: string, sprouted: number, tested = 100): DatedTest => ({
  on: isoDate(on),
  tested,
  sprouted,
})

describe('the day of crossing', () => {
  test.each([0.0001, 0.0004, 0.001, 0.01])(
    'of a lot that loses %d a day is where that much is lost',
    (daily) => {
      const { learnt, crossing } = forecastOf(
        prior,
        [dated('2020-06-01', 92)],
        evenly(daily),
        threshold,
        TODAY,
      )
      const { low, middle, high } = crossingBand(learnt.posterior, threshold)
      const day = (lost: number) => addDays(START, Math.ceil(lost / daily - 1e-9))
      expect(crossing).toEqual({ early: day(low), middle: day(middle), late: day(high) })
    },
  )

  test('is the start where it never was above, and none where it is further than two hundred years', () => {
    const never: Threshold = { part: 0.85, of: 'all-seeds' }
    const dead = forecastOf(prior, [dated('2020-01-01', 240, 400)], evenly(0.001), never, TODAY)
    expect(dead.crossing).toEqual({ early: START, middle: START, late: START })
    const frozen = forecastOf(prior, [], evenly(1e-7), threshold, TODAY)
    expect(frozen.crossing).toEqual({ early: null, middle: null, late: null })
    const beginsToday = forecastOf(
      prior,
      [],
      { ...evenly(0.001), start: TODAY, lostOn: () => 0 },
      never,
      TODAY,
    )
    expect(beginsToday.crossing.early).toBe(TODAY)
  })

  test('ahead goes by the pace of where the lot lies now', () => {
    const moved: Ageing = { ...evenly(0.0001), dailyAhead: 0.002 }
    const { learnt, crossing } = forecastOf(prior, [], moved, threshold, TODAY)
    const left = crossingBand(learnt.posterior, threshold).middle - moved.lostOn(TODAY)
    expect(left).toBeGreaterThan(0)
    expect(crossing.middle).toBe(addDays(TODAY, Math.ceil(left / 0.002)))
  })
})

describe('a forecast', () => {
  test('tells the start, today, and what is lost in a year from now on', () => {
    const ageing: Ageing = { ...evenly(0.0004), dailyAhead: 0.001 }
    const told = forecastOf(prior, [dated('2022-01-01', 90)], ageing, threshold, TODAY)
    expect(told.start).toEqual(viabilityBand(told.learnt.posterior, 0))
    expect(told.today).toEqual(viabilityBand(told.learnt.posterior, ageing.lostOn(TODAY)))
    expect(told.deviatesAYear).toBeCloseTo(middlePace(told.learnt.posterior) * 0.001 * 365.25, 12)
  })

  test('takes tests in any order: by what was lost, then by day', () => {
    const tests = [dated('2023-01-01', 85), dated('2021-01-01', 92), dated('2022-01-01', 90)]
    const told = forecastOf(prior, tests, evenly(0.0004), threshold, TODAY)
    expect(told.learnt.used.map(({ on }) => on)).toEqual(['2021-01-01', '2022-01-01', '2023-01-01'])
    const still = forecastOf(prior, tests, { ...evenly(0.0004), lostOn: () => 0 }, threshold, TODAY)
    expect(still.learnt.used.map(({ on }) => on)).toEqual(['2021-01-01', '2022-01-01', '2023-01-01'])
  })

  test('is drawn from the start on in 48 steps, by the past pace and then by the one to come', () => {
    const ageing: Ageing = { ...evenly(0.0004), dailyAhead: 0.002 }
    const told = forecastOf(prior, [], ageing, threshold, TODAY)
    const until = addDays(START, 480 * 10)
    const curve = curveOf(told, ageing, TODAY, until)
    expect(curve).toHaveLength(49)
    expect([curve[0]?.on, curve[1]?.on, curve.at(-1)?.on]).toEqual([START, addDays(START, 100), until])
    const posterior = told.learnt.posterior
    expect(curve[1]).toEqual({ on: addDays(START, 100), ...viabilityBand(posterior, 0.04) })
    const lost = ageing.lostOn(TODAY) + 0.002 * daysBetween(TODAY, until)
    expect(curve.at(-1)).toEqual({ on: until, ...viabilityBand(posterior, lost) })
    expect(curveOf(told, ageing, TODAY, START).at(-1)?.on).toBe(addDays(START, 1))
  })
})

test('the middle pace has half of the weight on either side', () => {
  const { posterior } = learnFromTests(prior, [{ lost: 0.3, tested: 100, sprouted: 80 }])
  const { starts, paces, weights } = posterior
  const middle = middlePace(posterior)
  const below = (most: number) =>
    [...paces.keys()]
      .filter((j) => (paces[j] ?? 0) <= most)
      .reduce(
        (sum, j) =>
          sum + [...starts.keys()].reduce((part, i) => part + (weights[i * paces.length + j] ?? 0), 0),
        0,
      )
  const before = paces[paces.indexOf(middle) - 1] ?? 0
  expect(below(middle)).toBeGreaterThanOrEqual(0.5)
  expect(below(before)).toBeLessThan(0.5)
})

describe('tests beside one another', () => {
  const two = (...sprouted: number[]) =>
    learnFromTests(
      prior,
      sprouted.map((count, index) => ({ lost: 0.1 + index * 0.05, tested: 100, sprouted: count })),
    )

  test('that fit one curve do not disagree, and each narrows the band', () => {
    const agreeing = two(92, 90)
    expect(agreeing).toMatchObject({ setAside: [], disagree: false })
    expect(two(92, 90, 88)).toMatchObject({ disagree: false })
    expect(two(95, 40)).toMatchObject({ disagree: true })
  })

  test('are set aside only where the later is better than one time in a hundred allows', () => {
    // Of 100 each, 80 and 91: z is 2.21 by the pooled share of 0.855; 80 and 92: 2.44, beyond 2.326.
    expect(two(80, 91).setAside).toHaveLength(0)
    expect(two(80, 92).setAside).toHaveLength(1)
    const small = learnFromTests(prior, [
      { lost: 0.1, tested: 10, sprouted: 8 },
      { lost: 0.2, tested: 100, sprouted: 92 },
    ])
    expect(small.setAside).toHaveLength(0)
    expect(two(100, 100)).toMatchObject({ setAside: [], disagree: false })
  })

  test('one of them more lets no one say that the one disagrees', () => {
    expect(learnFromTests(prior, [{ lost: 0, tested: 400, sprouted: 4 }]).disagree).toBe(false)
  })
})

describe('what is thought before any test', () => {
  test('the usual lot starts where nine of ten of its crop are fit to be sold, or so', () => {
    expect(leastSold(null)).toBe(0.75)
    expect(leastSold(80)).toBe(0.8)
    expect(meanStart(0.8) - meanStart(0.7)).toBeCloseTo(normalQuantile(0.8) - normalQuantile(0.7), 12)
    expect(priorOf(facts)).toBe(prior)
  })

  test('figures used beyond what they were fitted on are doubted more, frozen seed most', () => {
    expect(extrapolatesBy([])).toBe('nowhere')
    expect(extrapolatesBy(['drier-than-helps'])).toBe('nowhere')
    expect(extrapolatesBy(['drier-than-helps', 'warmer-than-fitted'])).toBe('somewhere')
    expect(extrapolatesBy(['warmer-than-fitted', 'frozen-unfitted'])).toBe('into-the-cold')
    const doubt = (['nowhere', 'somewhere', 'into-the-cold'] as const).map(
      (extrapolates) => priorOf({ ...facts, extrapolates }).logPaceSd,
    )
    expect(doubt).toEqual(doubt.toSorted((a, b) => a - b))
    expect(priorOf({ ...facts, basis: 'rule-of-thumb' }).logPaceMean).toBe(0)
    expect(prior.logPaceMean).toBeCloseTo(Math.log(1.5), 12)
  })

  test('two sources of the pace are a mixture by the weight of each: its mean and deviation', () => {
    const byYears = priorOf({ ...facts, logPaceByYears: 1 })
    const [one, other] = [
      { mean: prior.logPaceMean, sd: prior.logPaceSd },
      { mean: 1, sd: 0.6 },
    ]
    const weight = 1 / one.sd ** 2 / (1 / one.sd ** 2 + 1 / other.sd ** 2)
    const mean = weight * one.mean + (1 - weight) * other.mean
    const square = weight * (one.sd ** 2 + one.mean ** 2) + (1 - weight) * (other.sd ** 2 + other.mean ** 2)
    expect(byYears.logPaceMean).toBeCloseTo(mean, 12)
    expect(byYears.logPaceSd).toBeCloseTo(Math.sqrt(square - mean ** 2), 12)
  })

  test('a start is as likely as nine usual lots and one odd one make it', () => {
    const { startMean, startSd } = prior
    const density = (x: number, mean: number, sd: number) => normalDensity((x - mean) / sd) / sd
    const at = (start: number) =>
      Math.log(
        (1 - ODD_LOTS.share) * density(start, startMean, startSd) +
          ODD_LOTS.share * density(start, startMean - ODD_LOTS.lower, ODD_LOTS.sd),
      )
    for (const start of [-2, 0, startMean, 3])
      expect(logPriorOfStart(prior, start) - logPriorOfStart(prior, 1)).toBeCloseTo(at(start) - at(1), 10)
  })

  test('years that seed keeps end where half of it is alive', () => {
    expect(normalBelow(1.5 - (4 * 365.25) / sigmaFromYears([2, 8], 1.5))).toBeCloseTo(0.5, 12)
    expect(sigmaFromYears([4, 4], 0.1)).toBeCloseTo((4 * 365.25) / 0.5, 9)
  })
})

describe('a crop without constants', () => {
  const crop = { cropId: 'tomato', constants: null, oil: 0.2, years: [4, 4], leastSold: 0.75 } as const

  test('keeps those years in a room, twice as long 5 °C cooler or a point drier', () => {
    const model = paceModelOf(crop)
    expect(model).toMatchObject({ basis: 'rule-of-thumb', constants: null, logPaceByYears: null })
    const sigma = (celsius: number, moisture: number) => {
      const pace = model?.pace({ celsius, moisture })
      return pace?.kind === 'pace' ? pace.sigmaDays : Number.NaN
    }
    expect(sigma(15, 8) / sigma(20, 8)).toBeCloseTo(2, 9)
    expect(sigma(20, 7) / sigma(20, 8)).toBeCloseTo(2, 9)
    expect(sigma(20, 12) / sigma(20, 8)).toBeCloseTo(1 / 16, 9)
    expect(model?.pace({ celsius: 20, moisture: 8 })).toMatchObject({ kind: 'pace', remarks: [] })
  })

  test('says nothing of seed so moist or so hot that nobody knows', () => {
    const refused = (celsius: number, moisture: number) => paceModelOf(crop)?.pace({ celsius, moisture })
    const because = (...of: Parameters<typeof refused>) => {
      const pace = refused(...of)
      return pace?.kind === 'refused' ? saidInEnglish(pace.because) : ''
    }
    expect(because(20, 26)).toBe(
      'At 26 % moisture nobody can tell how long seed lasts: it moulds or sprouts. Dry it, then measure again.',
    )
    expect(because(91, 8)).toBe('Nobody knows how stored seed does at 91 °C. Check the readings.')
    expect([refused(90, 8)?.kind, refused(20, 25)?.kind]).toEqual(['pace', 'pace'])
  })

  test('with constants is held beside its years, where they are known', () => {
    const maize = (years: readonly [number, number] | null) =>
      paceModelOf({ cropId: 'maize', constants: constantsOf('maize'), oil: 0.05, years, leastSold: 0.75 })
        ?.logPaceByYears ?? null
    expect(maize(null)).toBeNull()
    expect((maize([2, 2]) ?? 0) - (maize([4, 4]) ?? 0)).toBeCloseTo(Math.log(2), 9)
  })
})

describe('years at home in words', () => {
  const said = (low: number, middle: number, high: number) =>
    saidInEnglish(homeYearsTold({ low, middle, high }))
  test.each([
    [[0.1, 0.2, 0.49], 'sow it this season'],
    [[0.1, 0.2, 0.5], 'less than one year, between less than one and 1'],
    [[0.49, 0.5, 3], 'about 1 year, between less than one and 3'],
    [[0.5, 1.6, 3], 'about 2 years, between 1 and 3'],
    [[2, 4.4, 20], 'about 4 years, between 2 and 20'],
    [[2, 20, 21], 'about 20 years, between 2 and more than 20'],
    [[20, 21, 60], 'more than 20 years, but perhaps only 20'],
    [[0.3, 21, 60], 'more than 20 years, but perhaps only less than one'],
    [[21, 40, 60], 'more than 20 years'],
  ] as const)('%j: %s', ([low, middle, high], words) => {
    expect(said(low, middle, high)).toBe(words)
  })
})

test('the normal distribution far out and at its middle, held against jStat', () => {
  expect([normalBelow(0), normalBelow(39), normalBelow(-39)]).toEqual([0.5, 1, 0])
  for (const x of [-6, -5, -4.99, 4.99, 5, 5.5, 6])
    expect(normalBelow(x) / jStat.normal.cdf(x, 0, 1)).toBeCloseTo(1, 6)
  expect(() => normalBelow(Number.NaN)).toThrow(RangeError)
  for (const part of [0, 1, Number.NaN]) expect(() => normalQuantile(part)).toThrow(RangeError)
  for (const part of [1e-12, 0.01, 0.3, 0.5, 0.7, 0.999])
    expect(normalBelow(normalQuantile(part)) / part).toBeCloseTo(1, 9)
})
