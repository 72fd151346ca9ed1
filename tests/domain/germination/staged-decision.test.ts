import { describe, expect, test } from 'vitest'
import { stagedDecision, stagedPlan } from '../../../db/domain/germination/staged-plan.ts'
import { stagedInWords } from '../../../db/domain/germination/staged-words.ts'

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
    '70 of 80 sprouted in 2 stages: still open. Lay 40 more out. Of 120 in all: regrow at 100 or fewer, keep at 111 or more.',
  )
  expect(saidOf(2, 80, 78)).toBe(
    '78 of 80 sprouted in 2 stages: keep. The plan for 85 % says so at 76 or more.',
  )
  expect(saidOf(1, 40, 20)).toContain('in one stage: regrow. The plan for 85 % says so at 29 or fewer.')
  expect(saidOf(9, 360, 315)).toContain('the plan ends here')
})
