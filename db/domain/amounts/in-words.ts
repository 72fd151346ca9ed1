import { type MassUnit, MILLIGRAMS_PER, type Milligrams, massFrom, massIn } from './mass.ts'

/** How a library writes: numbers by its locale (a BCP 47 language tag), masses in grams or in ounces and pounds. */
export interface Manner {
  readonly locale: string
  readonly massUnits: 'metric' | 'ounces'
}

/** Three decimals, or three figures where those say more: 0.000176. */
const THREE = {
  maximumFractionDigits: 3,
  maximumSignificantDigits: 3,
  roundingPriority: 'morePrecision',
} as const satisfies Intl.NumberFormatOptions

const DECIMALS_OF: Readonly<Record<MassUnit, Intl.NumberFormatOptions>> = {
  mg: { maximumFractionDigits: 0 },
  g: { maximumFractionDigits: 3 },
  kg: { maximumFractionDigits: 6 },
  oz: THREE,
  lb: THREE,
}

/** A millionth of any unit here rounds back to the milligram: of a kilogram it is one, of a pound 0.45 mg. */
const ENOUGH_DECIMALS = 6

const LEAST_FIGURES = 3
/** A computed number holds so many decimal figures at most. */
const MOST_FIGURES = 15

/**
 * A mass in the unit that a scale for it shows: '12.5 g', '340 mg', '1.2 kg', to the milligram; or '0.441 oz', '2.205 lb',
 * to a thousandth or three figures.
 */
export function massInWords(mass: Milligrams, manner: Manner): string {
  const unit = unitFor(mass, manner)
  return `${formatted(massIn(mass, unit), manner, DECIMALS_OF[unit])} ${unit}`
}

/** A mass to so many figures. */
export function massToFigures(mass: Milligrams, figures: number, manner: Manner): string {
  const unit = unitFor(mass, manner)
  const rounded = Number(massIn(mass, unit).toPrecision(figures))
  return `${formatted(rounded, manner, DECIMALS_OF[unit])} ${unit}`
}

/** The shortest such text that reads back as exactly that mass: three decimals would be asked about, so there are four. */
export function massToType(mass: Milligrams, manner: Manner): string {
  const unit = unitFor(mass, manner)
  const value = massIn(mass, unit)
  let decimals = 0
  while (decimals < ENOUGH_DECIMALS && massFrom(Number(value.toFixed(decimals)), unit) !== mass) decimals += 1
  const digits = formatted(value, manner, { maximumFractionDigits: decimals, useGrouping: false })
  return `${decimals === 3 ? `${digits}0` : digits} ${unit}`
}

/**
 * A computed mass of seed that somebody weighs by: three figures, or as many more as keep it within `tolerance`, so that it may
 * tell parts of a milligram. Both in milligrams.
 */
export function massWithin(mass: number, tolerance: number, manner: Manner): string {
  const unit = unitFor(mass, manner)
  const value = mass / MILLIGRAMS_PER[unit]
  let figures = LEAST_FIGURES
  while (
    figures < MOST_FIGURES &&
    Math.abs(Number(value.toPrecision(figures)) - value) * MILLIGRAMS_PER[unit] > tolerance
  )
    figures += 1
  return `${formatted(value, manner, { maximumSignificantDigits: figures })} ${unit}`
}

/** A whole number rounded to so many significant figures. */
export function toFigures(count: number, figures: number): number {
  const scale = 10 ** Math.max(0, String(count).length - figures)
  return Math.round(count / scale) * scale
}

/** A number with the locale's marks, rounded to at most so many decimals: '1,240', '1.240', '12,5'. */
export function numberInWords(value: number, manner: Pick<Manner, 'locale'>, decimals = 0): string {
  return formatted(value, manner, { maximumFractionDigits: decimals })
}

export type DecimalMark = '.' | ','

/** The mark that a library writes before decimals. Locales with marks of their own are read with a point. */
export function decimalMark(manner: Pick<Manner, 'locale'>): DecimalMark {
  return numberInWords(0.5, manner, 1).includes(',') ? ',' : '.'
}

function unitFor(mass: number, { massUnits }: Manner): MassUnit {
  switch (massUnits) {
    case 'metric':
      if (mass < 1_000) return 'mg'
      return mass < 1_000_000 ? 'g' : 'kg'
    case 'ounces':
      return mass < MILLIGRAMS_PER.lb ? 'oz' : 'lb'
  }
}

/** Formats are dear to make and few are needed. */
const formats = new Map<string, Intl.NumberFormat>()

/** In digits 0 to 9 whatever the locale, and with a space between thousands that every typeface has, so that it reads back. */
function formatted(
  value: number,
  { locale }: Pick<Manner, 'locale'>,
  options: Intl.NumberFormatOptions,
): string {
  const key = `${locale} ${JSON.stringify(options)}`
  const format = formats.get(key) ?? new Intl.NumberFormat(locale, { numberingSystem: 'latn', ...options })
  formats.set(key, format)
  return format.format(value).replaceAll('\u202f', '\u00a0')
}
