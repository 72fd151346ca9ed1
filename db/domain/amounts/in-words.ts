import type { CountedUnit } from '../crops/counted-unit.ts'
import type { Milligrams } from './mass.ts'

/** A mass to the milligram, in the unit that a scale for it shows: '12.5 g', '340 mg', '1.2 kg'. */
export function massInWords(mass: Milligrams): string {
  if (mass < 1_000) return `${mass} mg`
  if (mass < 1_000_000) return `${trimmed(mass / 1_000, 3)} g`
  return `${trimmed(mass / 1_000_000, 6)} kg`
}

/** The same mass as a text that reads back as exactly it: three decimals would be asked about, so there are four. */
export function massToType(mass: Milligrams): string {
  return massInWords(mass).replace(/(\.\d{3}) /, '$10 ')
}

/** A count that was counted: '50 seeds'. */
export function countInWords(count: number, unit: CountedUnit): string {
  return `${grouped(count)} ${count === 1 ? unit.one : unit.many}`
}

/**
 * A derived count without false digits: three significant figures, or two when the doubt passes a tenth.
 *
 * Said without 'about' only where the doubt is less than half a seed.
 */
export function aboutCount(count: number, doubt: number): string {
  if (count * doubt < 0.5) return grouped(count)
  return `about ${grouped(toFigures(count, doubt > 0.1 ? 2 : 3))}`
}

/** A whole number rounded to so many significant figures. */
export function toFigures(count: number, figures: number): number {
  const scale = 10 ** Math.max(0, String(count).length - figures)
  return Math.round(count / scale) * scale
}

/** A whole number with commas between thousands. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',')
}

function trimmed(value: number, decimals: number): string {
  return value.toFixed(decimals).replace(/\.?0+$/, '')
}
