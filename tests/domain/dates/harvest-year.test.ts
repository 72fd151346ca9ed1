import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type HarvestYear, harvestTold, readHarvestYear } from '../../../db/domain/dates/harvest-year.ts'
import { inEnglish, saidInEnglish } from '../../builders/in-english.ts'

const THIS_YEAR = 2026
const UNKNOWN: HarvestYear = { kind: 'unknown' }
const inYear = (year: number, about = false): HarvestYear => ({ kind: 'year', year, about })
const span = (from: number, to: number): HarvestYear => ({ kind: 'span', from, to })

describe('harvest years as people write them', () => {
  test.each<[string, HarvestYear]>([
    ['', UNKNOWN],
    ['  ', UNKNOWN],
    ['?', UNKNOWN],
    ['-', UNKNOWN],
    ['Unknown', UNKNOWN],
    ['year unknown', UNKNOWN],
    ['n/a', UNKNOWN],
    ['2023', inYear(2023)],
    ['2026', inYear(2026)],
    ['1800', inYear(1800)],
    ['２０２３', inYear(2023)],
    ['about 2019', inYear(2019, true)],
    ['ca. 2019', inYear(2019, true)],
    ['c2019', inYear(2019, true)],
    ['~2019', inYear(2019, true)],
    ['2019?', inYear(2019, true)],
    ['2019 ?', inYear(2019, true)],
    ['2017-2019', span(2017, 2019)],
    ['2017–2019', span(2017, 2019)],
    ['2017 to 2019', span(2017, 2019)],
    ['2018 or 2019', span(2018, 2019)],
    ['2018/19', span(2018, 2019)],
    ['1999/00', span(1999, 2000)],
    ['2019-2019', inYear(2019)],
    ['2019/19', inYear(2019)],
    ['hacia 2019', inYear(2019, true)],
    ['Hacia el año 2019', inYear(2019, true)],
    ['sobre 2019', inYear(2019, true)],
    ['alrededor de 2019', inYear(2019, true)],
    ['más o menos 2019', inYear(2019, true)],
    ['verano de 2021', inYear(2021)],
    ['otoño 2021', inYear(2021)],
    ['finales del verano de 2021', inYear(2021)],
    ['cosecha de 2021', inYear(2021)],
    ['late summer 2021', inYear(2021)],
    ['2017 a 2019', span(2017, 2019)],
    ['entre 2017 y 2019', span(2017, 2019)],
    ['between 2017 and 2019', span(2017, 2019)],
    ['2018 o 2019', span(2018, 2019)],
    ['Año desconocido', UNKNOWN],
    ['no se sabe', UNKNOWN],
  ])('%j', (typed, harvest) => {
    expect(readHarvestYear(typed, THIS_YEAR)).toEqual({ kind: 'harvest', harvest })
  })
})

describe('what is no harvest year says what to do', () => {
  test.each([
    ['2027', '2027 has not come yet'],
    ['about 2027', '2027 has not come yet'],
    ['2025-2027', '2027 has not come yet'],
    ['2099/00', '2099 has not come yet'],
    ['1799', '1799 is before 1800'],
    ['1799-1801', '1799 is before 1800'],
    ['2019-2017', '2019 comes after 2017'],
    ['1950/00', '1950 comes after 1900'],
    ['1999/50', '1999 comes after 1950'],
    ['2019-05', '2019 comes after 2005. For one year type 2019'],
    ['last summer', '‘last summer’ is not a harvest year'],
    ['23', '‘23’ is not a harvest year'],
    ['20233', 'is not a harvest year'],
    ['14.3.2023', 'is not a harvest year'],
    ['about', 'is not a harvest year'],
    ['el verano pasado', 'is not a harvest year'],
    ['antes de 2019', 'is not a harvest year'],
    ['before 2019', 'is not a harvest year'],
    ['verano de 2027', '2027 has not come yet'],
    ['about 2017-2019', 'is not a harvest year'],
  ])('%s', (typed, because) => {
    expect(inEnglish<unknown>(readHarvestYear(typed, THIS_YEAR) as never)).toEqual({
      kind: 'unreadable',
      because: expect.stringContaining(because),
    })
  })
})

test.each<[HarvestYear, string]>([
  [UNKNOWN, 'year unknown'],
  [inYear(2023), '2023'],
  [inYear(2019, true), 'about 2019'],
  [span(2017, 2019), '2017–2019'],
])('%j in words is %s', (harvest, words) => {
  expect(saidInEnglish(harvestTold(harvest))).toBe(words)
})

test('a harvest year in words reads back as itself', () => {
  const anyYear = fc.integer({ min: 1_800, max: THIS_YEAR })
  const anyHarvest = fc.oneof<fc.Arbitrary<HarvestYear>[]>(
    fc.constant(UNKNOWN),
    fc.tuple(anyYear, fc.boolean()).map(([year, about]) => inYear(year, about)),
    fc
      .tuple(anyYear, anyYear)
      .filter(([from, to]) => from < to)
      .map(([from, to]) => span(from, to)),
  )
  fc.assert(
    fc.property(anyHarvest, (harvest) => {
      expect(readHarvestYear(saidInEnglish(harvestTold(harvest)), THIS_YEAR)).toEqual({
        kind: 'harvest',
        harvest,
      })
    }),
  )
})
