import fc from 'fast-check'
import { expect, it } from 'vitest'
import { addDays } from '../../../db/domain/dates/day-arithmetic.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { AGREEMENT_TOLD_DAYS, duplicateDue } from '../../../db/domain/elsewhere/duplicate-due.ts'

const TODAY = isoDate('2026-03-14')
const dueIn = (days: number) => duplicateDue({ agreementEnds: addDays(TODAY, days), nextLook: null }, TODAY)

it('tells of an agreement ninety days ahead, says that it is over from the day after it, and of a look on its day', () => {
  expect([-1, 0, 90, 91].map(dueIn)).toEqual([['agreement-over'], ['agreement-ends'], ['agreement-ends'], []])
  const look = (days: number) => duplicateDue({ agreementEnds: null, nextLook: addDays(TODAY, days) }, TODAY)
  expect([-400, 0, 1].map(look)).toEqual([['look'], ['look'], []])
  expect(duplicateDue({ agreementEnds: null, nextLook: null }, TODAY)).toEqual([])
})

it('once due, stays due as days go by, until somebody writes another day', () => {
  const day = fc.integer({ min: -500, max: 500 })
  fc.assert(
    fc.property(day, day, fc.nat(500), (ends, look, later) => {
      const days = { agreementEnds: addDays(TODAY, ends), nextLook: addDays(TODAY, look) }
      const [now, then] = [duplicateDue(days, TODAY), duplicateDue(days, addDays(TODAY, later))]
      expect(then.length).toBeGreaterThanOrEqual(now.length)
      expect(now.includes('agreement-over') || now.includes('agreement-ends')).toBe(
        ends <= AGREEMENT_TOLD_DAYS,
      )
    }),
  )
})
