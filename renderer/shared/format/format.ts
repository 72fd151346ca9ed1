/** How this library writes numbers, masses and dates. */
export interface Format {
  /** A whole or decimal number as it is, grouped. */
  readonly number: (value: number) => string
  /** A mass in the unit a small scale shows, from milligrams. */
  readonly mass: (milligrams: number) => string
  /** A part of one as a percentage. */
  readonly percent: (part: number) => string
  /** A calendar date, or the text as it is where it is not one. */
  readonly day: (iso: string) => string
  /** A sentence in which each calendar date is written as the keeper writes dates. */
  readonly sentence: (text: string) => string
  /** A moment, down to the minute. */
  readonly moment: (iso: string) => string
  /** The time of a moment. */
  readonly time: (iso: string) => string
  /** The calendar date of a moment, where the keeper is. */
  readonly dayOfMoment: (iso: string) => string
  /** A change with its sign: '+50', '−3'. */
  readonly change: (value: number) => string
}

const ISO_DAY = /\b\d{4}-\d{2}-\d{2}\b/g

export function createFormat(locale: string): Format {
  const number = new Intl.NumberFormat(locale, { maximumFractionDigits: 4 })
  const grams = new Intl.NumberFormat(locale, { maximumFractionDigits: 3 })
  const whole = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 })
  const signed = new Intl.NumberFormat(locale, { signDisplay: 'exceptZero' })
  const day = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' })
  const moment = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' })
  const time = new Intl.DateTimeFormat(locale, { timeStyle: 'short' })
  const dayOfMoment = new Intl.DateTimeFormat(locale, { dateStyle: 'full' })
  const dayOf = (iso: string) => formatted(day, iso, `${iso}T00:00:00Z`)
  return {
    number: (value) => number.format(value),
    mass: (milligrams) => {
      const size = Math.abs(milligrams)
      if (size < 1_000) return trueMinus(`${number.format(milligrams)} mg`)
      if (size < 1_000_000) return trueMinus(`${grams.format(milligrams / 1_000)} g`)
      return trueMinus(`${grams.format(milligrams / 1_000_000)} kg`)
    },
    // As the sentences of the app write it, so that a card does not write it in two ways.
    percent: (part) => `${whole.format(100 * part)}\u00a0%`,
    day: dayOf,
    sentence: (text) => text.replace(ISO_DAY, dayOf),
    moment: (iso) => formatted(moment, iso, iso),
    time: (iso) => formatted(time, iso, iso),
    dayOfMoment: (iso) => formatted(dayOfMoment, iso, iso),
    change: (value) => trueMinus(signed.format(value)),
  }
}

function formatted(format: Intl.DateTimeFormat, asGiven: string, instant: string): string {
  const time = Date.parse(instant)
  return Number.isNaN(time) ? asGiven : format.format(time)
}

function trueMinus(text: string): string {
  return text.replace('-', '−')
}
