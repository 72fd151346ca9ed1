import { type Message, message } from '../../messages/message.ts'
/** A pattern for accession numbers: 'HL{yy}-{####}' prints HL26-0142. */
export type NumberPattern = string & { readonly __brand: 'NumberPattern' }

export type PatternReading =
  | { readonly kind: 'pattern'; readonly pattern: NumberPattern; readonly example: string }
  | { readonly kind: 'refused'; readonly because: Message }

const MONTHS = [
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
  'AUG',
  'AUGUST',
  'SEP',
  'SEPT',
  'SEPTEMBER',
  'OCT',
  'OCTOBER',
  'NOV',
  'NOVEMBER',
  'DEC',
  'DECEMBER',
]
const LONGEST = 16

/**
 * Checks a pattern typed by the keeper: capitals, digits and hyphens, one running number '{####}', and the year as
 * '{yy}' or '{yyyy}' where wanted.
 *
 * Refused when a spreadsheet would turn the number into a date or a figure, when a scanner set to another keyboard
 * would garble it, or when two numbers could print alike once the hyphens are left out.
 */
export function readPattern(typed: string): PatternReading {
  const text = typed.trim()
  const running = text.match(/\{#+\}/g) ?? []
  if (running.length !== 1) return refused(message('pattern.running-once', { example: '{####}' }))
  if ((running[0] ?? '').length < 5) return refused(message('pattern.three-digits', { example: '{###}' }))
  if ((text.match(/\{yy(?:yy)?\}/g) ?? []).length > 1)
    return refused(message('pattern.year-once', { short: '{yy}', long: '{yyyy}' }))
  const fixed = text.replace(/\{#+\}|\{yy(?:yy)?\}/g, '')
  if (!/^[A-Z0-9-]*$/.test(fixed)) {
    return refused(message('pattern.plain-signs'))
  }
  if (!/^[A-Z]/.test(text)) return refused(message('pattern.begin-with-letter'))
  if (!/\{#+\}$/.test(text)) return refused(message('pattern.end-with-number'))
  if (/\d\{/.test(text.replaceAll('-', ''))) {
    return refused(message('pattern.letter-before'))
  }
  const letters = /^[A-Z]+/.exec(text)?.[0] ?? ''
  if (MONTHS.includes(letters)) {
    return refused(message('pattern.month', { letters }))
  }
  const pattern = text as NumberPattern
  const example = printNumber(pattern, 2026, 142)
  if (example.length > LONGEST) return refused(message('pattern.too-long', { most: LONGEST, example }))
  return { kind: 'pattern', pattern, example }
}

/** The number that a pattern prints. Longer running numbers than the pattern has digits for print in full. */
export function printNumber(pattern: NumberPattern, year: number, running: number): string {
  return pattern
    .replace('{yyyy}', String(year))
    .replace('{yy}', String(year % 100).padStart(2, '0'))
    .replace(/\{(#+)\}/, (_, digits: string) => String(running).padStart(digits.length, '0'))
}

/**
 * The series a running number is counted in: all that prints before it, without hyphens.
 *
 * One series a year where the pattern shows the year. Patterns that could print the same number share a series, so a
 * changed pattern goes on counting and never prints a number again.
 */
export function numberSeries(pattern: NumberPattern, year: number): string {
  const prefix = pattern.replace(/\{#+\}/, '') as NumberPattern
  return printNumber(prefix, year, 0).replaceAll('-', '')
}

function refused(because: Message): PatternReading {
  return { kind: 'refused', because }
}
