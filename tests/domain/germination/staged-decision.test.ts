import { describe, expect, test } from 'vitest'
import { plannableThreshold, stagedDecision, stagedPlan } from '../../../db/domain/germination/staged-plan.ts'
import { stagedTold } from '../../../db/domain/germination/staged-told.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const stagedInWords = (...of: Parameters<typeof stagedTold>) => saidInEnglish(stagedTold(...of))

const saidOf = (stages: number, tested: number, germinated: number) =>
  stagedInWords({ stages, tested, germinated }, stagedDecision(0.85, 40, tested, germinated), 0.85)

describe('stages added up decide as the published table does', () => {
  // Ellis, Hong & Roberts 1985: the rows of 40 and 80 seen, the others from memory (see staged-plan.ts).
  test.each([
    [40, 29, 'regrow'],
    [40, 30, 'go-on'],
    [40, 40, 'go-on'],
    [80, 64, 'regrow'],
    [80, 65, 'go-on'],
    [80, 75, 'go-on'],
    [80, 76, 'keep'],
    [360, 310, 'regrow'],
    [360, 315, 'undecided'],
    [360, 321, 'keep'],
  ] as const)('%i tested, %i germinated: %s', (tested, germinated, kind) => {
    expect(stagedDecision(0.85, 40, tested, germinated).kind).toBe(kind)
  })

  test('stages that are not alike go by the same lines, which give every row of the table but its first keep', () => {
    const between = stagedDecision(0.85, 40, 70, 62).now
    expect(between).toMatchObject({ tested: 70, confidence: 'computed' })
    const rows = stagedPlan(0.85, 40, 360).stages
    expect(between.regrowAtMost).toBeGreaterThan(rows[0]?.regrowAtMost ?? 0)
    expect(between.regrowAtMost).toBeLessThan(rows[1]?.regrowAtMost ?? 0)
  })

  test('counts that cannot be are refused', () => {
    expect(() => stagedDecision(0.85, 40, 40, 41)).toThrow(RangeError)
  })
})

test('the decision is said in words, with what comes next', () => {
  expect(saidOf(2, 80, 70)).toBe(
    '70 of 80 sprouted in 2 stages: still open. Lay out 40 more. Of 120 in all: regrow at 100 or fewer, keep at 111 or more.',
  )
  expect(saidOf(2, 80, 78)).toBe(
    '78 of 80 sprouted in 2 stages: keep. The plan for 85 % says so at 76 or more.',
  )
  expect(saidOf(1, 40, 20)).toContain('in one stage: regrow. The plan for 85 % says so at 29 or fewer.')
  expect(saidOf(9, 360, 315)).toContain('the plan ends here')
})

describe('a plan in groups', () => {
  test('is the published table for 85 % in groups of 40 alone', () => {
    expect(stagedPlan(0.85, 40, 360).published).toBe(true)
    expect(stagedPlan(0.85, 40, 360).stages[0]).toMatchObject({ regrowAtMost: 29, confidence: 'seen' })
    for (const other of [stagedPlan(0.85, 20, 360), stagedPlan(0.8, 40, 360)]) {
      expect(other.published).toBe(false)
      expect(other.stages[0]?.confidence).toBe('computed')
    }
  })

  test('has as many groups as the seed gives, nine at most', () => {
    expect([39, 40, 119, 120, 10_000].map((seeds) => stagedPlan(0.85, 40, seeds).stages.length)).toEqual([
      0, 1, 2, 3, 9,
    ])
    expect(stagedPlan(0.7, 10, 95).stages.map(({ tested }) => tested)).toEqual([
      10, 20, 30, 40, 50, 60, 70, 80, 90,
    ])
  })

  test('is made of no threshold at the ends, but of one near them', () => {
    for (const bad of [0, 1, Number.NaN]) expect(() => stagedPlan(bad, 40, 400)).toThrow(RangeError)
    expect([0, 0.05, 0.5, 0.99, 1].map(plannableThreshold)).toEqual([0.05, 0.05, 0.5, 0.99, 0.99])
  })

  test('never regrows or keeps by a count that cannot come', () => {
    const [first] = stagedPlan(0.9, 10, 100).stages
    expect(first).toEqual({ tested: 10, regrowAtMost: 3, keepAtLeast: null, confidence: 'computed' })
    expect(stagedPlan(0.05, 5, 100).stages[0]).toMatchObject({ regrowAtMost: null })
  })
})

test('counts below nothing are refused, and what the stage after the last would be is not told', () => {
  expect(() => stagedDecision(0.85, 40, 40, -1)).toThrow(RangeError)
  expect(stagedDecision(0.85, 40, 40, 0)).toMatchObject({ kind: 'regrow', next: { tested: 80 } })
  expect(stagedDecision(0.85, 40, 360, 315).next).toBeNull()
  expect(stagedDecision(0.85, 40, 320, 280)).toMatchObject({ kind: 'go-on', next: { tested: 360 } })
})

test('a next group that can end nothing either way is told without its ends', () => {
  const stage = { tested: 40, regrowAtMost: null, keepAtLeast: null, confidence: 'computed' } as const
  const said = (next: object) =>
    stagedInWords(
      { stages: 1, tested: 20, germinated: 10 },
      { kind: 'go-on', now: stage, next: { ...stage, ...next } },
      0.5,
    )
  const open = '10 of 20 sprouted in one stage: still open. Lay out 20 more.'
  expect(said({})).toBe(open)
  expect(said({ regrowAtMost: 9 })).toBe(`${open} Of 40 in all: regrow at 9 or fewer.`)
  expect(said({ keepAtLeast: 31 })).toBe(`${open} Of 40 in all: keep at 31 or more.`)
  expect(saidOf(9, 360, 315)).toBe(
    '315 of 360 sprouted in 9 stages: still open, and the plan ends here. The lot is too near 85 % to tell.',
  )
})
