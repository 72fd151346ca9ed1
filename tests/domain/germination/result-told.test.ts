import { describe, expect, test } from 'vitest'
import {
  choiceTold,
  resultTold,
  speedTold,
  toleranceTold,
} from '../../../db/domain/germination/result-told.ts'
import { judgeTolerance } from '../../../db/domain/germination/tolerance.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const resultInWords = (...of: Parameters<typeof resultTold>) => saidInEnglish(resultTold(...of))
const choiceInWords = (...of: Parameters<typeof choiceTold>) => saidInEnglish(choiceTold(...of))
const toleranceInWords = (...of: Parameters<typeof toleranceTold>) => saidInEnglish(toleranceTold(...of))
const speedInWords = (...of: Parameters<typeof speedTold>) => saidInEnglish(speedTold(...of))

/** A lot without a forecast, tested of late. */
const BY_ITSELF = { chanceAbove: null, longAgo: false }
const tally = { normal: 15, abnormal: 0, hard: 2, fresh: 1, dead: 2 }

describe('a result is one sentence', () => {
  test.each([
    [17, 0.75, 'likely above 75 %, not yet sure'],
    [20, 0.75, 'surely above 75 %'],
    [15, 0.75, 'it may be above or below 75 %'],
    [12, 0.75, 'likely below 75 %, not yet sure'],
    [6, 0.75, 'surely below 75 %'],
  ])('%i of 20 against %d: %s', (germinated, threshold, verdict) => {
    expect(resultInWords(germinated, 20, threshold, BY_ITSELF)).toMatch(
      new RegExp(`^${germinated} of 20 sprouted: between \\d+ % and \\d+ %; ${verdict}$`),
    )
  })

  test('whose verdict is the forecast’s, and of long ago', () => {
    const said = (chanceAbove: number, longAgo: boolean) =>
      resultInWords(20, 20, 0.75, { chanceAbove, longAgo }).split('; ')[1]
    expect(said(0.99, false)).toBe('surely above 75 %')
    expect(said(0.9, false)).toBe('likely above 75 %, not yet sure')
    expect(said(0.5, true)).toBe('then it may be above or below 75 %')
    expect(said(0.01, true)).toBe('then by its age and all its tests likely below 75 %, not yet sure')
  })

  // Wilson's limits of 17 of 20 are in tests/published/wilson-interval.test.ts.
  test('with its interval in whole percent', () => {
    expect(resultInWords(17, 20, 0.75, BY_ITSELF)).toContain('between 64 % and 95 %;')
  })

  test('that says what else was counted as alive', () => {
    const said = (hard: boolean, fresh: boolean) =>
      resultInWords(17, 20, 0.75, BY_ITSELF, { tally, choice: { hard, fresh } }).split(':')[0]
    expect(said(false, false)).toBe('17 of 20 sprouted')
    expect(said(true, false)).toBe('17 of 20 counted as alive (15 sprouted, 2 hard)')
    expect(said(false, true)).toBe('17 of 20 counted as alive (15 sprouted, 1 dormant)')
    expect(said(true, true)).toBe('17 of 20 counted as alive (15 sprouted, 2 hard, 1 dormant)')
    const none = { ...tally, hard: 0, fresh: 0 }
    expect(
      resultInWords(17, 20, 0.75, BY_ITSELF, { tally: none, choice: { hard: true, fresh: true } }),
    ).toMatch(/^17 of 20 sprouted:/)
  })
})

test('the keeper’s choice is told of what there was', () => {
  const said = (hard: boolean, fresh: boolean) => choiceInWords(tally, { hard, fresh })
  expect(said(true, false)).toBe(
    'The keeper chose: 2 hard counted as alive and 1 dormant (fresh) counted as not germinated.',
  )
  expect(said(false, true)).toBe(
    'The keeper chose: 2 hard counted as not germinated and 1 dormant (fresh) counted as alive.',
  )
  expect(choiceInWords({ ...tally, hard: 0 }, { hard: true, fresh: true })).toBe(
    'The keeper chose: 1 dormant (fresh) counted as alive.',
  )
  expect(choiceInWords({ ...tally, hard: 0, fresh: 0 }, { hard: true, fresh: true })).toBe('')
})

describe('whether replicates agree', () => {
  const of = (sown: number, ...germinated: number[]) =>
    judgeTolerance(germinated.map((count) => ({ sown, germinated: count })))

  test('is judged by the table for two or four replicates of 100 alone', () => {
    expect(of(100, 80, 82)).toMatchObject({ by: 'table', range: 2, mean: 81, allowed: 12 })
    expect(of(100, 80, 82, 81, 83)).toMatchObject({ by: 'table' })
    expect(of(100, 80, 82, 81)).toMatchObject({ by: 'chi-squared' })
    expect(of(100, 80, 82, 81, 80, 82)).toMatchObject({ by: 'chi-squared' })
    expect(of(50, 40, 42)).toMatchObject({ by: 'chi-squared' })
    expect(
      judgeTolerance([
        { sown: 100, germinated: 80 },
        { sown: 99, germinated: 80 },
      ]),
    ).toMatchObject({ by: 'chi-squared' })
    // The table prints no range for two with a mean of 98 % or more.
    expect(of(100, 97, 99)).toEqual({ kind: 'not-judged', because: 'too-few-seeds' })
  })

  test('is not judged of one replicate, of too few seeds, nor where all are alike', () => {
    expect(of(100, 80)).toEqual({ kind: 'not-judged', because: 'one-replicate' })
    expect(of(20, 20, 20)).toEqual({ kind: 'not-judged', because: 'all-alike' })
    expect(of(20, 0, 0)).toEqual({ kind: 'not-judged', because: 'all-alike' })
    expect(of(100, 100, 100)).toEqual({ kind: 'not-judged', because: 'all-alike' })
    expect(of(25, 20, 21)).toEqual({ kind: 'not-judged', because: 'too-few-seeds' })
    expect(of(25, 5, 4)).toEqual({ kind: 'not-judged', because: 'too-few-seeds' })
    expect(of(25, 20, 20)).toMatchObject({ kind: 'within', chance: 1 })
    expect(
      judgeTolerance([
        { sown: 200, germinated: 100 },
        { sown: 8, germinated: 4 },
      ]),
    ).toEqual({ kind: 'not-judged', because: 'too-few-seeds' })
  })

  test('is judged by Pearson’s X2 elsewhere, at one in forty', () => {
    // Four of 50 with 25, 25, 32 and 36: by hand X2 is 7.36 with three degrees, whose chance is 0.061.
    expect(of(50, 25, 25, 32, 36)).toMatchObject({ kind: 'within', chance: expect.closeTo(0.0612, 3) })
    expect(of(50, 22, 25, 32, 38)).toMatchObject({ kind: 'outside', by: 'chi-squared' })
  })

  test('is said with what to do', () => {
    expect(toleranceInWords({ kind: 'within', by: 'table', mean: 81, range: 2, allowed: 12 })).toBe(
      'The replicates are 2 points apart, and 12 are allowed at 81 %: they agree.',
    )
    expect(toleranceInWords({ kind: 'outside', by: 'table', mean: 81, range: 20, allowed: 12 })).toBe(
      'The replicates are 20 points apart, and 12 are allowed at 81 %: repeat the test.',
    )
    const how =
      'the published table is only for two or four replicates of 100, so this is a chi-squared comparison: chance alone differs as much in'
    expect(toleranceInWords({ kind: 'within', by: 'chi-squared', chance: 0.0612 })).toBe(
      `The replicates agree (${how} 6.1 % of tests).`,
    )
    expect(toleranceInWords({ kind: 'outside', by: 'chi-squared', chance: 0.001 })).toBe(
      `The replicates differ too much; repeat the test (${how} 0.1 % of tests).`,
    )
    expect(toleranceInWords({ kind: 'outside', by: 'chi-squared', chance: 0.0009 })).toContain(
      'under 0.1 % of tests',
    )
    const notJudged = (['one-replicate', 'too-few-seeds', 'all-alike'] as const).map((because) =>
      toleranceInWords({ kind: 'not-judged', because }),
    )
    expect(notJudged).toEqual([
      'With one replicate there is nothing to compare. Two or more show whether the seeds were laid out evenly.',
      'Too few seeds to say whether the replicates agree: the published table is for replicates of 100.',
      'The replicates are all alike.',
    ])
  })
})

test('the speed is told in days, with the half where it is known', () => {
  expect(speedInWords({ meanDays: 6.74, halfDays: 5.97 })).toBe(
    'Seedlings came after 6.7 days on average, half of them by 6 days, as counted.',
  )
  expect(speedInWords({ meanDays: 7, halfDays: null })).toBe(
    'Seedlings came after 7 days on average, as counted.',
  )
})
