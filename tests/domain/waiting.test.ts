import { describe, expect, it } from 'vitest'
import { isoDate } from '../../db/domain/dates/iso-date.ts'
import { giftStanding, isLate, waitingCaution } from '../../db/domain/intake/waiting.ts'

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
  expect(waitingCaution('freezing')).toContain('5 to 8 % moisture')
  expect(waitingCaution('drying')).toContain('cobalt')
})
