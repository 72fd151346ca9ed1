import { describe, expect, test } from 'vitest'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { type MonitoringFacts, nextTestDates } from '../../../db/domain/germination/next-test.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const NEW: MonitoringFacts = {
  receivedOn: isoDate('2020-05-04'),
  lastTest: null,
  frozen: false,
  oilPercent: null,
  forecastCrossing: null,
  threshold: { part: 0.85, of: 'all-seeds' },
}
const tested = (share: number, changes: Partial<MonitoringFacts> = {}): MonitoringFacts => ({
  ...NEW,
  lastTest: { on: isoDate('2021-06-01'), share },
  ...changes,
})
const datesOf = (facts: MonitoringFacts) =>
  nextTestDates(facts).map((date) => ({
    ...date,
    because: saidInEnglish(date.because),
    source: saidInEnglish(date.source),
  }))
const said = (facts: MonitoringFacts) => datesOf(facts).map(({ on, because }) => `${on} ${because}`)

test('a lot that came in is tested within a year', () => {
  expect(datesOf(NEW)).toEqual([
    {
      on: '2021-05-04',
      because: 'not tested yet: at the latest twelve months after it came in',
      source: 'FAO Genebank Standards 2014, 4.3.1',
      confidence: 'seen',
    },
  ])
})

describe('a lot that was tested', () => {
  test('is tested again by the handbook or the usual interval, the sooner first', () => {
    expect(said(tested(0.966))).toEqual([
      '2026-06-01 working stock every five years',
      '2033-06-01 12 years after 97 % germinated, for seed kept at 4-5 °C',
    ])
    expect(said(tested(0.8))).toEqual([
      '2024-06-01 3 years after 80 % germinated, for seed kept at 4-5 °C',
      '2026-06-01 working stock every five years',
    ])
    expect(datesOf(tested(0.8)).map(({ source, confidence }) => [source, confidence])).toEqual([
      ['Handbook for Genebanks No. 8 (2006), table 8.1', 'seen-labels-inferred'],
      ['IBPGR, Procedures for Handling Seeds in Genebanks (1985)', 'seen'],
    ])
  })

  test('is oily from fifteen parts in a hundred on', () => {
    expect(said(tested(0.8, { oilPercent: 15 }))[0]).toBe(
      '2022-06-01 a year after 80 % germinated, for oily seed kept at 4-5 °C',
    )
    expect(said(tested(0.8, { oilPercent: 14.9 }))[0]).toContain('for seed kept')
  })

  test('frozen waits longer', () => {
    expect(said(tested(0.97, { frozen: true }))).toEqual([
      '2031-06-01 frozen stock at least every ten years',
      '2041-06-01 20 years after 97 % germinated, for frozen seed',
    ])
  })

  test('with a share that cannot be is refused', () => {
    expect(() => nextTestDates(tested(-0.1))).toThrow(RangeError)
  })
})

describe('a forecast', () => {
  const crossing = (on: string) => ({ forecastCrossing: isoDate(on) })

  test('asks for a test a third of the way to the crossing', () => {
    expect(datesOf(tested(0.97, crossing('2027-06-01')))[0]).toEqual({
      on: '2023-06-01',
      because: 'test again before it drops below 85 %, forecast for 1 Jun 2027',
      source: 'FAO Genebank Standards 2014, 4.3.3, worked out from the forecast',
      confidence: 'from-memory',
    })
    expect(said({ ...NEW, ...crossing('2020-08-02') })[0]).toMatch(/^2020-06-03 test it before/)
  })

  test('never sooner than a year after the last test', () => {
    for (const [soon, day] of [
      ['2022-01-01', '1 Jan 2022'],
      ['2021-01-01', '1 Jan 2021'],
      ['2024-05-29', '29 May 2024'],
    ] as const)
      expect(said(tested(0.97, crossing(soon)))[0]).toBe(
        `2022-06-01 a year after the last test: it is forecast to drop below 85 % on ${day}`,
      )
    expect(said(tested(0.97, crossing('2024-05-31')))[0]).toMatch(/^2022-06-01 test again before/)
  })

  test('of seed below its threshold from the start asks for a test at once', () => {
    const words = 'not tested yet, and forecast to be below its threshold already'
    expect(said({ ...NEW, ...crossing('2020-05-05') })[0]).toBe(`2020-05-04 ${words}`)
    expect(said({ ...NEW, ...crossing('2019-01-01') })[0]).toBe(`2020-05-04 ${words}`)
  })

  test('asks for a test after forty years at most', () => {
    expect(said(tested(0.97, { frozen: true, ...crossing('2400-01-01') })).at(-1)).toMatch(
      /^2061-06-01 test again/,
    )
  })
})
