import { expect, it } from 'vitest'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { type PromiseFacts, promiseState } from '../../../db/domain/promises/promise.ts'

const TODAY = isoDate('2026-03-14')
const state = (facts: Partial<PromiseFacts>) =>
  promiseState({ by: null, broughtBack: false, waived: false, ...facts }, TODAY)

it('is overdue only once its day has passed', () => {
  expect(state({ by: isoDate('2026-03-13') })).toBe('overdue')
  expect(state({ by: TODAY })).toBe('open')
  expect(state({ by: isoDate('2026-03-15') })).toBe('open')
})

it('is never overdue where no day was named', () => {
  expect(state({})).toBe('open')
})

it('is met by what came back, late or let go before', () => {
  expect(state({ broughtBack: true, by: isoDate('2020-01-01') })).toBe('met')
  expect(state({ broughtBack: true, waived: true })).toBe('met')
})

it('is no longer waited for once it was let go', () => {
  expect(state({ waived: true, by: isoDate('2020-01-01') })).toBe('waived')
})
