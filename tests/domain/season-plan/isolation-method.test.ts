import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { greedyPlan } from '../../../db/domain/season-plan/greedy.ts'
import { toldApartInTime } from '../../../db/domain/season-plan/in-time.ts'
import {
  hoursOfIsolation,
  pollinationOf,
  toldHours,
} from '../../../db/domain/season-plan/isolation-method.ts'
import { choiceWorth, clashesOf, type PlanChoice } from '../../../db/domain/season-plan/plan.ts'
import { cropOfTable } from '../../builders/crop-table.ts'
import { inEnglish } from '../../builders/in-english.ts'
import { aCandidate, aSite, at } from '../../builders/season-plans.ts'

describe('two of a kind that flower one after the other', () => {
  const flint = aCandidate(1, { variety: 'Flint', group: 'Zea mays', laterDays: 28 })
  const dent = aCandidate(2, { variety: 'Dent', group: 'Zea mays', laterDays: 28 })
  const popped = aCandidate(3, { variety: 'Pop', group: 'Zea mays', laterDays: 28 })
  const unknown = aCandidate(4, { variety: 'Quay grass', group: 'Zea mays' })
  const problem = { candidates: [flint, dent, popped, unknown], sites: [aSite(1, 0), aSite(2, 50)] }
  const sentences = (...choices: PlanChoice[]) =>
    clashesOf(problem, choices).map(({ sentence }) => inEnglish<Told>(sentence))

  test('cross when sown at one time, not when one is sown later', () => {
    expect(sentences(at(1, 1), at(2, 2))).toEqual([
      'Flint and Dent cross: at Garden 1 and Garden 2, 50 m apart, and they need about 100 m. Cover one of them, sow one 28 days after the other, or move it.',
    ])
    expect(sentences(at(1, 1), at(2, 2, 'later'))).toEqual([])
    expect(sentences(at(1, 1, 'later'), at(2, 2, 'later'))).toHaveLength(1)
    expect(sentences(at(1, 1, 'later'), at(2, 2, 'later'), at(3, 1))).toHaveLength(1)
  })

  test('nothing is kept apart by time that does not flower all at once', () => {
    expect(sentences(at(1, 1, 'later'), at(4, 2))[0]).toMatch(/^Flint and Quay grass cross.*move it\.$/)
    expect(sentences(at(4, 2, 'later'))).toEqual([
      'Quay grass cannot be kept apart by sowing it later: its kind does not flower all at once. Cover it, or keep it far from others.',
    ])
  })

  test('a neighbour’s crop flowers when it likes', () => {
    const near = aSite(3, 0, { neighbours: [{ crop: 'Maize', group: 'Zea mays', metres: 40 }] })
    expect(clashesOf({ candidates: [flint], sites: [near] }, [at(1, 3, 'later')])[0]?.kind).toBe('neighbour')
  })

  test('are told what is sown first and what follows', () => {
    const told = (choice: PlanChoice, ...others: PlanChoice[]) =>
      inEnglish<Told>(toldApartInTime(problem, [choice, ...others], choice))
    expect(told(at(2, 2, 'later'), at(1, 1))).toMatch(
      /^Sow it 28 days after Flint at Garden 1, so that it flowers when they have finished\. If both/,
    )
    expect(told(at(1, 1), at(2, 2, 'later'))).toMatch(
      /^Sow it on time: Dent at Garden 2 follows 28 days later/,
    )
    expect(told(at(2, 1, 'later'), at(1, 1))).toMatch(/^Sow it 28 days after Flint, so that/)
    expect(told(at(1, 1), at(2, 2, 'covered'))).toBe('')
    expect(told(at(1, 1, 'covered'), at(2, 2, 'later'))).toBe('')
    expect(told(at(1, 1), at(4, 2))).toBe('')
  })

  test('are planned so where there is no room to part them and hand-pollinating costs more', () => {
    const two = [flint, dent].map((one) => ({ ...one, plants: 60, pollination: 'wind' as const }))
    const plan = greedyPlan({ candidates: two, sites: [aSite(1, 0), aSite(2, 50)] }, [])
    expect(plan.map(({ way }) => way).toSorted()).toEqual(['later', 'open'])
  })

  test('what is sown later needs the longer season', () => {
    const late = { ...flint, daysToSeed: 120 }
    const worth = (seasonDays: number) => choiceWorth(late, aSite(1, 0, { seasonDays }), 'later')
    expect(worth(148) - worth(147)).toBeCloseTo(0.9 / 2)
  })
})

describe('the work of a way', () => {
  test.each([
    ['maize', 28],
    ['sunflower', 28],
    ['squash-pepo', null],
    ['spinach', null],
  ] as const)('%s is sown %s days later', (crop, days) =>
    expect(cropOfTable(crop).laterSowingDays).toBe(days),
  )

  test.each([
    ['self', 'selfer', 'self'],
    ['self (some insect)', 'selfer', 'self'],
    ['wind', 'outcrosser', 'wind'],
    ['self and wind', 'mixed', 'wind'],
    ['insect and self', 'mixed', 'insect'],
    [null, 'mixed', 'insect'],
  ] as const)('%s of a %s is covered as by %s', (pollination, breeding, as) =>
    expect(pollinationOf(pollination, breeding)).toBe(as),
  )

  test('a cover over beans is an hour and a little; bagging maize plant by plant is days', () => {
    expect(hoursOfIsolation('open', 200, 'wind')).toBe(0)
    expect(hoursOfIsolation('later', 200, 'wind')).toBe(2)
    expect(hoursOfIsolation('covered', 20, 'self')).toBeCloseTo(1.4)
    expect(hoursOfIsolation('covered', 12, 'insect')).toBeCloseTo(2.8)
    expect(hoursOfIsolation('covered', 200, 'wind')).toBe(51)
  })

  test('in words, to the half hour', () => {
    expect(inEnglish<Told>(toldHours(0.1))).toBe('about half an hour')
    expect(inEnglish<Told>(toldHours(1.1))).toBe('about an hour')
    expect(inEnglish<Told>(toldHours(2.8))).toBe('about 3 hours')
    expect(inEnglish<Told>(toldHours(2.6))).toBe('about 2.5 hours')
    expect(inEnglish<Told>(toldHours(13.4))).toBe('about 13 hours')
  })
})
