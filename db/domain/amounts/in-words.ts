import type { CountedUnit } from '../crops/counted-unit.ts'
import type { Milligrams } from './mass.ts'

/** A mass as it was weighed, in the unit a small scale shows: '12.5 g', '340 mg', '1.2 kg'. */
export function massInWords(mass: Milligrams): string {
  if (mass < 1_000) return `${mass} mg`
  if (mass < 1_000_000) return `${trimmed(mass / 1_000, 3)} g`
  return `${trimmed(mass / 1_000_000, 3)} kg`
}

/** A count that was counted: '50 seeds'. */
export function countInWords(count: number, unit: CountedUnit): string {
  return `${grouped(count)} ${count === 1 ? unit.one : unit.many}`
}

/** A derived count without false digits: three significant figures, or two when the doubt passes a tenth. */
export function aboutCount(count: number, doubt: number): string {
  if (doubt === 0 || count < 20) return grouped(count)
  const digits = doubt > 0.1 ? 2 : 3
  const scale = 10 ** Math.max(0, Math.floor(Math.log10(count)) + 1 - digits)
  return `about ${grouped(Math.round(count / scale) * scale)}`
}

function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',')
}

function trimmed(value: number, decimals: number): string {
  return value.toFixed(decimals).replace(/\.?0+$/, '')
}
