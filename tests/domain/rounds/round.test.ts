import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { INSPECTIONS, looksFor, roundCautions } from '../../../db/domain/rounds/inspection.ts'
import { roundDue } from '../../../db/domain/rounds/round-due.ts'
import { inEnglish } from '../../builders/in-english.ts'

const today = isoDate('2026-03-14')

describe('a round is due', () => {
  test.each([
    [null, '2026-03-14', 'today'],
    ['2026-02-12', '2026-03-14', 'today'],
    ['2026-02-11', '2026-03-13', 'late'],
    ['2026-02-13', '2026-03-15', 'later'],
  ] as const)('walked to on %s, every 30 days: on %s, %s', (last, on, when) => {
    expect(roundDue(last === null ? null : isoDate(last), 30, today)).toEqual({ on, when })
  })
})

describe('what is looked at', () => {
  const room = { freezes: false, chills: false, closedIn: false }
  test('follows what the place is and what lies there', () => {
    expect(looksFor(room)).toEqual(['pests', 'dampness', 'reading'])
    expect(looksFor({ ...room, closedIn: true })).toEqual(INSPECTIONS)
    expect(looksFor({ ...room, freezes: true })).toEqual(['seals', 'dampness', 'reading'])
    expect(looksFor({ ...room, chills: true })).toEqual(['pests', 'seals', 'dampness', 'reading'])
  })

  test('brings its own cautions and no others', () => {
    expect(roundCautions(['dampness', 'reading'])).toEqual([])
    expect(inEnglish<Told[]>(roundCautions(['gel'])).join(' ')).toContain('cobalt chloride')
    expect(inEnglish<Told[]>(roundCautions(['pests'])).join(' ')).toContain(
      'Only seed dried to about 5 to 8 % moisture',
    )
  })
})
