import { describe, expect, test } from 'vitest'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { testConditions } from '../../../db/domain/germination/conditions.ts'
import {
  aliveOf,
  countDue,
  NOTHING_COUNTED,
  seedlingsByDay,
  sumOf,
  tallied,
  testResult,
} from '../../../db/domain/germination/germination-test.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const [START, LATER] = [isoDate('2026-03-01'), isoDate('2026-03-08')]
const tally = { normal: 9, abnormal: 2, hard: 4, fresh: 3, dead: 1 }
const NEITHER = { hard: false, fresh: false }

describe('seeds by what became of them', () => {
  test('are added up, each kind by itself', () => {
    expect(sumOf([tally, tally, { ...NOTHING_COUNTED, dead: 5 }])).toEqual({
      normal: 18,
      abnormal: 4,
      hard: 8,
      fresh: 6,
      dead: 7,
    })
    expect([tallied(tally), tallied(NOTHING_COUNTED), tallied(sumOf([]))]).toEqual([19, 0, 0])
  })

  test('count as alive by the keeper’s choice, abnormal seedlings never', () => {
    const alive = (hard: boolean, fresh: boolean) => aliveOf(tally, { hard, fresh })
    expect([alive(false, false), alive(true, false), alive(false, true), alive(true, true)]).toEqual([
      9, 13, 12, 16,
    ])
  })
})

describe('what a test comes to', () => {
  const replicates = [
    { sown: 25, counts: [{ on: START, tally }] },
    {
      sown: 20,
      counts: [
        { on: START, tally },
        { on: LATER, tally: { ...NOTHING_COUNTED, normal: 1 } },
      ],
    },
  ]

  test('is the sum of its replicates and counts, with what nobody sorted', () => {
    expect(testResult(replicates, { hard: true, fresh: false })).toEqual({
      sown: 45,
      germinated: 27,
      tally: { normal: 19, abnormal: 4, hard: 8, fresh: 6, dead: 2 },
      unsorted: 6,
      replicates: [
        { sown: 25, germinated: 13 },
        { sown: 20, germinated: 14 },
      ],
    })
    expect(testResult([], NEITHER)).toMatchObject({ sown: 0, germinated: 0, unsorted: 0 })
  })

  test('is refused where more was counted than sown, and not where as much was', () => {
    const of = (sown: number) => () => testResult([{ sown, counts: [{ on: START, tally }] }], NEITHER)
    expect(of(19)).not.toThrow()
    expect(of(18)).toThrow(new RangeError('19 counted of 18 sown'))
  })

  test('came day by day, normal seedlings alone', () => {
    expect(seedlingsByDay(replicates, START)).toEqual([
      { day: 0, germinated: 9 },
      { day: 0, germinated: 9 },
      { day: 7, germinated: 1 },
    ])
  })
})

describe('the next count', () => {
  const due = (lastCountOn: string | null, today: string, firstDay: number | null = 5) =>
    countDue(
      {
        startedOn: START,
        firstDay,
        finalDay: 10,
        lastCountOn: lastCountOn === null ? null : isoDate(lastCountOn),
      },
      isoDate(today),
    )

  test.each([
    ['2026-03-05', 'later'],
    ['2026-03-06', 'today'],
    ['2026-03-07', 'late'],
  ])('is the first: on %s it is %s', (today, when) => {
    expect(due(null, today)).toEqual({ on: '2026-03-06', which: 'first', when })
  })

  test('is the final one once the first was made, three days early at most', () => {
    expect(due('2026-03-02', '2026-03-03')).toMatchObject({ which: 'first', on: '2026-03-06' })
    expect(due('2026-03-03', '2026-03-03')).toEqual({ which: 'final', on: '2026-03-11', when: 'later' })
    expect(due('2026-03-20', '2026-03-11')).toMatchObject({ which: 'final', when: 'today' })
  })

  test('is the final one where no first count is wanted', () => {
    expect(due(null, '2026-03-12', null)).toEqual({ which: 'final', on: '2026-03-11', when: 'late' })
  })
})

describe('the conditions of a test in words', () => {
  const conditions = (...codes: Parameters<typeof testConditions>) => {
    const { temperature, media } = testConditions(...codes)
    return { temperature: saidInEnglish(temperature), media: media.map(saidInEnglish) }
  }

  test.each([
    ['20-30', '20 °C for 16 hours and 30 °C for 8'],
    ['20-30 or 25', '20 °C for 16 hours and 30 °C for 8 or 25 °C'],
    ['5', '5 °C'],
    ['15 in light', '15 °C in light'],
  ])('%s', (codes, words) => {
    expect(conditions(codes, 'T').temperature).toBe(words)
  })

  test('name the media that are nearest to hand first, and keep a code that nobody knows', () => {
    expect(conditions('20', 'S,B,T').media).toEqual([
      'rolled paper towel',
      'between blotters',
      'in sand or planting mix',
    ])
    expect(conditions('20', 'ZZ').media).toEqual(['ZZ'])
  })

  test('are plain ones where the table has nothing', () => {
    const plain = { temperature: 'about 20 °C', media: ['rolled paper towel'] }
    expect([conditions(null, null), conditions('20', null), conditions(null, 'T')]).toEqual([
      plain,
      plain,
      plain,
    ])
  })
})
