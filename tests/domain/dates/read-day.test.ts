import { describe, expect, it } from 'vitest'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { readDay } from '../../../db/domain/dates/read-day.ts'

const months = [
  ...[['January'], ['February'], ['March', 'marzo'], ['April'], ['May'], ['June'], ['July']],
  ...[['August'], ['September', 'Sept'], ['October'], ['November'], ['December']],
]
const today = isoDate('2026-11-30')

describe.each([
  ['day-first', '2026-02-03'],
  ['month-first', '2026-03-02'],
] as const)('a day typed %s', (order, both) => {
  const read = (typed: string) => readDay(typed, today, { order, months })

  it.each(['3/2/2026', '3.2.26', '3-2', ' 03 . 02 . 2026 ', '3/2.'])('may be either: %s', (typed) => {
    expect(read(typed)).toBe(both)
  })

  it.each([
    ...[
      '2026-03-14',
      '2026/3/14',
      '14.3.2026',
      '3/14/2026',
      '14 Mar',
      'March 14',
      '14th March 2026',
      'mar 14, 2026',
    ],
    ...['14 de marzo de 2026', 'Sat, 14 March 2026', '14 mar. 26'],
  ])('is the 14th of March: %s', (typed) => {
    expect(read(typed)).toBe('2026-03-14')
  })

  it.each([
    '',
    '14',
    'March',
    '31.2.2026',
    '32 March',
    '14 Ma',
    'June March 3',
    'soon',
    '1 2 3 4',
    '2026-13-01',
  ])('is none: %s', (typed) => {
    expect(read(typed)).toBeNull()
  })
})
