import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import {
  byUrgency,
  toldCost,
  toldSetAside,
  toldUrgency,
  type UrgencyFacts,
} from '../../../db/domain/needs/urgency.ts'
import { inEnglish } from '../../builders/in-english.ts'

const why = (of: UrgencyFacts) => inEnglish<Told>(toldUrgency(of, 'seed', 2028))

const facts = (accessionId: number, more: Partial<UrgencyFacts> = {}): UrgencyFacts => ({
  accessionId,
  state: 'regrow',
  living: 100,
  setAside: 0,
  cost: 0.5,
  onlySource: false,
  demand: 0,
  growing: false,
  ...more,
})

const order = (...list: readonly UrgencyFacts[]) =>
  list.toSorted(byUrgency).map(({ accessionId }) => accessionId)

describe('the order of the list', () => {
  test('is by state before all else', () => {
    expect(
      order(
        facts(1, { state: 'well-stocked', cost: 1, onlySource: true, demand: 90 }),
        facts(2, { state: 'watch', cost: 1 }),
        facts(3, { state: 'regrow', cost: 0 }),
        facts(4, { state: 'rescue', cost: 0, living: 0, growing: true }),
        facts(5, { state: 'none-left', cost: 1, living: 0, onlySource: true }),
      ),
    ).toEqual([4, 3, 2, 1, 5])
  })

  test('then what nobody grows yet, then what can still be sown, then the cost of waiting', () => {
    expect(order(facts(1, { growing: true, cost: 1 }), facts(2, { living: 0, cost: 0 }))).toEqual([2, 1])
    expect(order(facts(1, { living: 0, cost: 1 }), facts(2, { living: 1, cost: 0 }))).toEqual([2, 1])
    expect(order(facts(1, { cost: 0.2, onlySource: true }), facts(2, { cost: 0.21 }))).toEqual([2, 1])
  })

  test('takes costs that differ by less than half a hundredth for one', () => {
    expect(order(facts(1, { cost: 0.502 }), facts(2, { cost: 0.5, onlySource: true }))).toEqual([2, 1])
    expect(order(facts(1, { cost: 0.506 }), facts(2, { cost: 0.5, onlySource: true }))).toEqual([1, 2])
  })

  test('then what is held nowhere else, then what members ask for, then the number', () => {
    expect(order(facts(1, { demand: 90 }), facts(2, { onlySource: true }))).toEqual([2, 1])
    expect(order(facts(1, { demand: 3 }), facts(2, { demand: 4 }))).toEqual([2, 1])
    expect(order(facts(2), facts(1))).toEqual([1, 2])
  })
})

test.each([
  [0, 'hardly any risk if we wait'],
  [0.0049, 'hardly any risk if we wait'],
  [0.005, 'lost if we wait: about 1 in 100'],
  [0.4, 'lost if we wait: about 40 in 100'],
  [0.995, 'lost if we wait: about 99 in 100'],
  [0.996, 'almost surely lost if we wait'],
  [1, 'almost surely lost if we wait'],
])('a cost of %d is said as %s', (cost, words) => {
  expect(inEnglish<Told>(toldCost(cost))).toBe(words)
})

describe('what puts it where it stands', () => {
  test('is the risk of waiting', () => {
    expect(why(facts(1, { cost: 0.4 }))).toBe(
      'By the sowing of 2028 there may be too little for a full regrowing: about 40 in 100.',
    )
    expect(why(facts(1, { cost: 0.001 }))).toBe(
      'By the sowing of 2028 there is hardly any risk of too little for a full regrowing.',
    )
  })

  test('and whether it is held elsewhere and asked for', () => {
    expect(why(facts(1, { onlySource: true, demand: 123.4 }))).toBe(
      'By the sowing of 2028 there may be too little for a full regrowing: about 50 in 100; held nowhere else that we know of; members take about 120 seeds a year.',
    )
    expect(why(facts(1, { demand: 1 }))).toContain('members take about 1 seed a year')
    expect(why(facts(1, { demand: 0.9 }))).not.toContain('members')
  })

  test('or that none is left, and where some may still be', () => {
    expect(why(facts(1, { living: 0 }))).toBe('No living seed is left here: ask for a duplicate.')
    expect(why(facts(1, { living: 0, setAside: 300 }))).toBe(
      'No living seed is counted here, but 300 seeds are in quarantine or kept as the reference sample: look at them first.',
    )
    expect(inEnglish<Told>(toldSetAside(1, 'seed'))).toMatch(/^1 seed is in quarantine/)
  })
})
