import { describe, expect, it } from 'vitest'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import {
  giftStanding,
  isLate,
  type Waiting,
  waitingCaution,
  waitingTold,
} from '../../../db/domain/intake/waiting.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const on = isoDate('2026-03-01')
const waits = { kind: 'waits-for', step: 'drying', on, due: null, note: '' } as const
const done = { kind: 'step-done', step: 'drying', on, note: 'crisp' } as const

describe('where a gift stands', () => {
  it('is offered, waiting for what is not done', () => {
    expect(giftStanding([waits])).toMatchObject({ state: 'offered', waitsFor: [waits], done: [] })
    expect(giftStanding([waits, done])).toMatchObject({ waitsFor: [], done: [done] })
  })

  it('waits again for a step that has to be done again', () => {
    expect(giftStanding([waits, done, waits])).toMatchObject({ waitsFor: [waits], done: [] })
  })

  it('is declined with its reason, or accepted', () => {
    expect(giftStanding([{ kind: 'declined', on, note: 'mould' }])).toMatchObject({
      state: 'declined',
      reason: 'mould',
    })
    expect(giftStanding([waits, { kind: 'accepted', on }])).toMatchObject({ state: 'accepted', waitsFor: [] })
  })
})

it('is late the day after it was due', () => {
  expect(isLate({ due: on }, on)).toBe(false)
  expect(isLate({ due: on }, isoDate('2026-03-02'))).toBe(true)
  expect(isLate({ due: null }, isoDate('2099-01-01'))).toBe(false)
})

it('warns of freezing moist seed and of coloured gel', () => {
  expect(saidInEnglish(waitingCaution('freezing') ?? '')).toMatch(
    /−18 °C or colder for two weeks.*5 to 8 % moisture.*warm up closed/,
  )
  expect(saidInEnglish(waitingCaution('drying') ?? '')).toContain('cobalt')
})

const STEPS: readonly Waiting[] = ['identity', 'drying', 'freezing', 'test', 'legal', 'other']

it('says of each step what it is, and what to be careful of', () => {
  expect(STEPS.map((step) => saidInEnglish(waitingTold(step)))).toEqual([
    'somebody to say what it is',
    'drying',
    'freezing against insects',
    'a germination test',
    'a check of the rules',
    'something else',
  ])
  expect(STEPS.map((step) => saidInEnglish(waitingCaution(step) ?? '').split(' ')[0])).toEqual([
    '',
    'Silica',
    'Freeze',
    '',
    'Rules',
    '',
  ])
})
