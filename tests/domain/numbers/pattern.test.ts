import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type NumberPattern,
  numberSeries,
  printNumber,
  readPattern,
} from '../../../db/domain/numbers/pattern.ts'
import { bareNumber } from '../../../db/domain/numbers/scan-code.ts'
import { inEnglish } from '../../builders/in-english.ts'

function accepted(text: string): NumberPattern {
  const reading = readPattern(text)
  if (reading.kind === 'refused') throw new Error(`${text} was refused: ${reading.because.id}`)
  return reading.pattern
}

describe('patterns that are accepted, with the example shown', () => {
  test.each([
    ['QH{yy}-{####}', 'QH26-0142'],
    ['QH{yyyy}-{###}', 'QH2026-142'],
    ['A{###}', 'A142'],
    ['QH{#####}', 'QH00142'],
    ['QH-{yy}-S{####}', 'QH-26-S0142'],
    ['S4L{yy}{####}', 'S4L260142'],
    ['MARROW-{###}', 'MARROW-142'],
    ['A-MAR{###}', 'A-MAR142'],
    ['  QH{yy}-{####} ', 'QH26-0142'],
  ])('%s', (typed, example) => {
    expect(readPattern(typed)).toEqual({ kind: 'pattern', pattern: typed.trim(), example })
  })
})

describe('patterns that are refused, with why', () => {
  test.each([
    ['', 'running number in once'],
    ['QH', 'running number in once'],
    ['QH{###}{###}', 'running number in once'],
    ['QH{}', 'running number in once'],
    ['QH{##}', 'at least three digits'],
    ['QH{yy}{yyyy}-{###}', 'year in once'],
    ['QH{yy}-{yy}-{###}', 'year in once'],
    ['qh{###}', 'capital letters'],
    ['QH/{###}', 'capital letters'],
    ['QH {###}', 'capital letters'],
    ['QH.{###}', 'capital letters'],
    ['ÖH{###}', 'capital letters'],
    ['QH{YY}-{###}', 'capital letters'],
    ['{####}', 'Begin with a letter'],
    ['{yy}-{####}', 'Begin with a letter'],
    ['2A-{####}', 'Begin with a letter'],
    ['-A{####}', 'Begin with a letter'],
    ['QH2{####}', 'not a digit, before'],
    ['QH2-{####}', 'not a digit, before'],
    ['QH1{yy}-{####}', 'not a digit, before'],
    ['QH1-{yy}-{####}', 'not a digit, before'],
    ['QH{yy}5-{####}', 'not a digit, before'],
    ['QH{####}-{yy}', 'End with the running number'],
    ['QH{####}B', 'End with the running number'],
    ['QH{####}-', 'End with the running number'],
    ['QUILLHAVEN-{yyyy}-{###}', 'too long'],
    ['QH{#################}', 'too long'],
  ])('%s', (typed, because) => {
    expect(inEnglish(readPattern(typed))).toEqual({
      kind: 'refused',
      because: expect.stringContaining(because),
    })
  })

  test.each([
    ...[
      'JAN',
      'JANUARY',
      'FEB',
      'FEBRUARY',
      'MAR',
      'MARCH',
      'APR',
      'APRIL',
      'MAY',
      'JUN',
      'JUNE',
      'JUL',
      'JULY',
    ],
    ...['AUG', 'AUGUST', 'SEP', 'SEPT', 'SEPTEMBER', 'OCT', 'OCTOBER', 'NOV', 'NOVEMBER', 'DEC', 'DECEMBER'],
  ])('%s and a number is a date to a spreadsheet', (month) => {
    for (const rest of ['{###}', '-{###}', '{yy}-{###}', '-{yy}-{###}']) {
      expect(inEnglish(readPattern(month + rest))).toMatchObject({
        because: expect.stringContaining('do not spell a month'),
      })
    }
  })

  test('the longest number that is accepted has sixteen characters', () => {
    expect(readPattern(`QUILLHAVENS-{####}`)).toMatchObject({ example: 'QUILLHAVENS-0142' })
    expect(readPattern(`QUILLHAVENSS-{####}`)).toMatchObject({ kind: 'refused' })
  })
})

test.each([
  ['QH{yy}-{####}', 2026, 142, 'QH26-0142'],
  ['QH{yy}-{####}', 2005, 1, 'QH05-0001'],
  ['QH{yyyy}-{###}', 2030, 7, 'QH2030-007'],
  ['QH{yy}-{###}', 2026, 12_345, 'QH26-12345'],
])('%s prints, in %s, number %s as %s', (pattern, year, running, printed) => {
  expect(printNumber(accepted(pattern), year, running)).toBe(printed)
})

test('a series is what prints before the running number, without hyphens', () => {
  expect(numberSeries(accepted('QH{yy}-{####}'), 2026)).toBe('QH26')
  expect(numberSeries(accepted('QH{yy}{####}'), 2030)).toBe('QH30')
  expect(numberSeries(accepted('QH{yyyy}-{####}'), 2030)).toBe('QH2030')
  expect(numberSeries(accepted('QH-{####}'), 2026)).toBe('QH')
})

const letters = fc.constantFrom('A', 'Q', 'QH', 'S4L', 'QH26A', 'QH2026A')
const hyphen = fc.constantFrom('', '-', '--')
const year = fc.constantFrom('', '{yy}', '{yyyy}')
const between = fc.constantFrom('', 'A', '-A', '26A')
const running = fc.constantFrom('{###}', '{####}', '{#####}', '{######}')
const anyPattern = fc
  .tuple(letters, hyphen, year, between, hyphen, running)
  .map((parts) => readPattern(parts.join('')))
  .filter((reading) => reading.kind === 'pattern')
  .map(({ pattern }) => pattern)
const anyNumber = fc.record({
  pattern: anyPattern,
  // A pattern is first used today, so years long gone need not be told from other numbers.
  year: fc.integer({ min: 2024, max: 2099 }),
  running: fc.oneof(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 9_999 })),
})

test('two numbers never print alike, hyphens or not, under one pattern or a changed one', () => {
  const key = (number: { pattern: NumberPattern; year: number; running: number }) => ({
    series: numberSeries(number.pattern, number.year),
    running: number.running,
  })
  const bare = (number: { pattern: NumberPattern; year: number; running: number }) =>
    bareNumber(printNumber(number.pattern, number.year, number.running))
  fc.assert(
    fc.property(anyNumber, anyNumber, (one, other) => {
      const same = key(one).series === key(other).series && key(one).running === key(other).running
      if (!same) expect(bare(one)).not.toBe(bare(other))
    }),
    { numRuns: 20_000 },
  )
})

test('no number that is printed reads as a figure or a date', () => {
  fc.assert(
    fc.property(anyNumber, ({ pattern, year: inYear, running: n }) => {
      const printed = printNumber(pattern, inYear, n)
      expect(printed).toMatch(/^[A-Z][A-Z0-9-]*\d$/)
      expect(printed).not.toMatch(/^(JAN|FEB|MAR|APR|MAY|JUN|JUL|AUG|SEP|OCT|NOV|DEC)[A-Z]*-?\d/)
    }),
  )
})
