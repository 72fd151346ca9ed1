import fc from 'fast-check'
import { expect, it } from 'vitest'
import { addDays } from '../../../db/domain/dates/day-arithmetic.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { openSteps } from '../../../db/domain/elsewhere/open-steps.ts'

const SENT = isoDate('2025-03-14')

it('waits for an agreement, for sending, and from a year after that for a word of what came of it', () => {
  const at = (today: string, reports = 0) =>
    openSteps({ agreement: 'signed', sentOn: SENT, reports }, isoDate(today))
  expect(openSteps({ agreement: '', sentOn: null, reports: 0 }, SENT)).toEqual(['agreement', 'sending'])
  expect([at('2026-03-13'), at('2026-03-14'), at('2031-01-01', 1)]).toEqual([[], ['report'], []])
})

it('never opens again what a report closed, whatever the day', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9 }), fc.nat(9_000), fc.string(), (reports, later, agreement) => {
      const open = openSteps({ agreement, sentOn: SENT, reports }, addDays(SENT, later))
      expect(open).toEqual(agreement === '' ? ['agreement'] : [])
    }),
  )
})
