import { describe, expect, test } from 'vitest'
import { greedyPlan } from '../../../db/domain/season-plan/greedy.ts'
import type { PlanCandidate, PlanSite } from '../../../db/domain/season-plan/plan.ts'
import { programmeOf } from '../../../db/domain/season-plan/programme.ts'
import { aCandidate, aSite, at } from '../../builders/season-plans.ts'

const selfed = { plants: 0, pollination: 'self', worth: 0.5 } as const
const problemOf = (candidates: readonly PlanCandidate[], sites: readonly PlanSite[]) => ({
  candidates,
  sites,
})
const lines = (problem: ReturnType<typeof problemOf>, locked: Parameters<typeof programmeOf>[1] = []) =>
  programmeOf(problem, locked).text.split('\n')

describe('the programme of a plan as its solver reads it', () => {
  test('two that cross in one small garden: each once, the bed, the number, and one of them in the open', () => {
    const two = [aCandidate(1, { ...selfed, group: 'G' }), aCandidate(2, { ...selfed, group: 'G', area: 3 })]
    const problem = problemOf(two, [aSite(7, 0, { mostVarieties: 1 })])
    const { text, choices } = programmeOf(problem, [at(2, 7, 'covered')])
    expect(text).toBe(`Maximize
 worth: + 0.45 x0 + 0.44 x1 + 0.45 x2 + 0.44 x3
st
 r0: + x0 + x1 <= 1
 r1: + x2 + x3 <= 1
 r2: + 2 x0 + 2 x1 + 3 x2 + 3 x3 <= 20
 r3: + x0 + x1 + x2 + x3 <= 1
 r4: + x0 + x2 <= 1
Bounds
 x3 = 1
Binary
 x0 x1 x2 x3
End
`)
    expect([...choices]).toEqual([
      ['x0', at(1, 7)],
      ['x1', at(1, 7, 'covered')],
      ['x2', at(2, 7)],
      ['x3', at(2, 7, 'covered')],
    ])
  })

  test('two gardens that are near cross as one, and of a garden with room for two each pair is told', () => {
    const two = [1, 2].map((id) => aCandidate(id, { ...selfed, group: 'G', worth: 0.01, isolation: 50 }))
    const crossing = (area: number) =>
      lines(problemOf(two, [aSite(1, 0, { area }), aSite(2, 40, { area })])).filter((line) =>
        / r[6-9]/.test(line),
      )
    expect(crossing(20)).toEqual([' r6: + x0 + x2 + x1 + x3 <= 1'])
    expect(crossing(2_500)).toEqual([
      ' r6: + x0 + x1 <= 1',
      ' r7: + x0 + x3 <= 1',
      ' r8: + x2 + x1 <= 1',
      ' r9: + x2 + x3 <= 1',
    ])
  })

  test('others cross with none, nor with what flowers when they have done', () => {
    const rows = (...candidates: PlanCandidate[]) =>
      lines(problemOf(candidates, [aSite(1, 0)])).filter((line) => line.startsWith(' r')).length
    const one = { ...selfed, worth: 0.01 }
    const [each, site] = [2, 2]
    expect(rows(aCandidate(1, one), aCandidate(2, one))).toBe(each + site)
    expect(rows(aCandidate(1, { ...one, group: 'G' }), aCandidate(2, { ...one, group: 'G' }))).toBe(
      each + site + 1,
    )
    const timed = { ...one, worth: 0.1, group: 'G', laterDays: 28 }
    expect(
      lines(problemOf([aCandidate(1, timed), aCandidate(2, timed)], [aSite(1, 0)])).filter((line) =>
        / r[4-9]/.test(line),
      ),
    ).toEqual([' r4: + x0 + x3 <= 1', ' r5: + x2 + x5 <= 1'])
  })

  test('eight terms stand on a line', () => {
    const nine = Array.from({ length: 9 }, (_, index) => aCandidate(index + 1, { ...selfed, worth: 0.01 }))
    expect(lines(problemOf(nine, [aSite(1, 0)])).slice(-4)).toEqual([
      ' x0 x1 x2 x3 x4 x5 x6 x7',
      '   x8',
      'End',
      '',
    ])
  })

  test('of nothing is still a programme', () => {
    const empty = [
      'Maximize',
      ' worth: 0 nothing',
      'st',
      ' r0: nothing <= 1',
      'Binary',
      ' nothing',
      'End',
      '',
    ]
    expect(lines(problemOf([], []))).toEqual(empty)
    expect(lines(problemOf([aCandidate(1, { worth: 0 })], [aSite(1, 0)]))).toEqual(empty)
  })
})

describe('the greedy plan, choice by choice', () => {
  const plan = (
    ...[candidates, sites, locked]: [PlanCandidate[], PlanSite[], Parameters<typeof greedyPlan>[1]?]
  ) => greedyPlan(problemOf(candidates, sites), locked ?? [])

  test('takes the most valuable first, small beds before large, then the older number', () => {
    const order = [
      aCandidate(4, { worth: 0.5, area: 2 }),
      aCandidate(3, { worth: 0.5, area: 2 }),
      aCandidate(2, { worth: 0.5, area: 1 }),
      aCandidate(1, { worth: 0.9, area: 3 }),
    ]
    expect(plan(order, [aSite(1, 0)])).toEqual([at(1, 1), at(2, 1), at(3, 1), at(4, 1)])
  })

  test('fills the bed and the number to the last', () => {
    const three = [1, 2, 3].map((id) => aCandidate(id, { area: 10 }))
    expect(plan(three, [aSite(1, 0)])).toEqual([at(1, 1), at(2, 1)])
    expect(plan(three, [aSite(1, 0, { area: 40, mostVarieties: 1 })])).toEqual([at(1, 1)])
    expect(plan(three, [aSite(1, 0), aSite(2, 900, { reliability: 0.5 })])).toEqual([
      at(1, 1),
      at(2, 1),
      at(3, 2),
    ])
  })

  test('goes round what is locked, its bed, its place and what it would cross with', () => {
    const two = [aCandidate(1, { worth: 2, area: 15 }), aCandidate(2, { worth: 0.1, area: 15 })]
    expect(plan(two, [aSite(1, 0)], [at(2, 1)])).toEqual([at(2, 1)])
    const kin = [1, 2].map((id) => aCandidate(id, { group: 'G', plants: 5, worth: 1 }))
    expect(plan(kin, [aSite(1, 0)], [at(2, 1)])).toEqual([at(2, 1), at(1, 1, 'covered')])
    expect(plan(kin, [aSite(1, 0)], [at(2, 1, 'covered')])).toEqual([at(2, 1, 'covered'), at(1, 1)])
  })

  test('leaves out what is worth nothing', () => {
    expect(plan([aCandidate(1, { worth: 0 })], [aSite(1, 0)])).toEqual([])
  })
})
