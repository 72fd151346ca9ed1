/** A pattern for accession numbers: 'HL{yy}-{####}' prints HL26-0142. */
export type NumberPattern = string & { readonly __brand: 'NumberPattern' }

export type PatternReading =
  | { readonly kind: 'pattern'; readonly pattern: NumberPattern; readonly example: string }
  | { readonly kind: 'refused'; readonly because: string }

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
  if (running.length !== 1) return refused('Put the running number in once, as {####}: one # for each digit.')
  if ((running[0] ?? '').length < 5) return refused('Give the running number at least three digits: {###}.')
  if ((text.match(/\{yy(?:yy)?\}/g) ?? []).length > 1) return refused('Put the year in once: {yy} or {yyyy}.')
  const fixed = text.replace(/\{#+\}|\{yy(?:yy)?\}/g, '')
  if (!/^[A-Z0-9-]*$/.test(fixed)) {
    return refused(
      'Use capital letters A to Z, digits and hyphens only: a scanner set to another keyboard garbles the rest.',
    )
  }
  if (!/^[A-Z]/.test(text))
    return refused('Begin with a letter: a spreadsheet reads a number that begins with a digit as a figure.')
  if (!/\{#+\}$/.test(text)) return refused('End with the running number: the lot letter follows it.')
  if (/\d\{/.test(text.replaceAll('-', ''))) {
    return refused(
      'Put a letter, not a digit, before the running number and the year: without hyphens they run together.',
    )
  }
  const letters = /^[A-Z]+/.exec(text)?.[0] ?? ''
  if (MONTHS.includes(letters)) {
    return refused(
      `A spreadsheet turns ${letters} and a number into a date. Choose letters that do not spell a month.`,
    )
  }
  const pattern = text as NumberPattern
  const example = printNumber(pattern, 2026, 142)
  if (example.length > LONGEST)
    return refused(`Keep it to ${LONGEST} characters: ${example} is too long for a small label.`)
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

function refused(because: string): PatternReading {
  return { kind: 'refused', because }
}
