import type { DecimalMark } from './in-words.ts'

/** A typed number: one value, two possible values to ask about, or nothing that can be read. */
export type NumberReading =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'ask'; readonly grouped: number; readonly decimal: number }
  | { readonly kind: 'unreadable' }

/**
 * Writes one-character fractions and wide digits in plain characters: '1½ oz' becomes '1 1/2 oz'.
 *
 * Raised and circled digits are left alone, so that '10²' is not taken for 102.
 */
export function plainCharacters(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${sign.normalize('NFKC').replace('⁄', '/')}`)
    .replace(/[！-～㎎-㎏]/g, (sign) => sign.normalize('NFKC'))
}

/**
 * Reads a number that may use comma or point as the decimal mark, spaces or marks between thousands (and between
 * lakhs: 12,34,567), or a fraction.
 *
 * One mark followed by exactly three digits (1,234 or 1.234) can be meant both ways, so it asks; 0.234 cannot.
 */
export function readNumber(typed: string): NumberReading {
  const text = plainCharacters(typed).trim()
  const fraction = /^(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(text)
  if (fraction) return readFraction(fraction[1], Number(fraction[2]), Number(fraction[3]))
  const plain = /^[1-9]\d{0,2}(?:([\s'’])\d{3})(?:\1\d{3})*(?:[.,]\d+)?$/.test(text)
    ? text.replace(/[\s'’]/g, '')
    : text
  if (/^\d+$/.test(plain)) return exactly(Number(plain))
  const both = /^[1-9]\d{0,2}(?:([.,])\d{3})(?:\1\d{3})*(?!\1)[.,]\d+$/.exec(plain)
  if (both) return exactly(Number(plain.replaceAll(both[1] ?? '', '').replace(',', '.')))
  if (/^[1-9]\d{0,2}(?:(?:\.\d{3}){2,}|(?:,\d{3}){2,})$/.test(plain))
    return exactly(Number(plain.replace(/[.,]/g, '')))
  const lakhs = /^[1-9]\d?([.,])\d{2}(?:\1\d{2})*\1\d{3}(?:(?!\1)[.,]\d+)?$/.exec(plain)
  if (lakhs) return exactly(Number(plain.replaceAll(lakhs[1] ?? '', '').replace(',', '.')))
  const single = /^(\d*)[.,](\d+)$/.exec(plain)
  if (!single) return { kind: 'unreadable' }
  const decimal = Number(`${single[1] || '0'}.${single[2]}`)
  const couldGroup = single[2]?.length === 3 && /^[1-9]\d{0,2}$/.test(single[1] ?? '')
  return couldGroup ? { kind: 'ask', grouped: Number(`${single[1]}${single[2]}`), decimal } : exactly(decimal)
}

function readFraction(whole: string | undefined, above: number, below: number): NumberReading {
  if (below === 0 || (whole !== undefined && above >= below)) return { kind: 'unreadable' }
  return exactly(Number(whole ?? 0) + above / below)
}

function exactly(value: number): NumberReading {
  return Number.isFinite(value) ? { kind: 'number', value } : { kind: 'unreadable' }
}

/** Where a library's decimal mark is known, it tells 1.234 from 1,234; null for what is no number. */
export function readByMark(typed: string, mark: DecimalMark): number | null {
  const number = readNumber(typed)
  if (number.kind === 'unreadable') return null
  if (number.kind === 'number') return number.value
  return typed.includes(mark) ? number.decimal : number.grouped
}

/** Where only whole numbers make sense, a mark before three digits stands between thousands. */
export function withGrouping(number: NumberReading): Exclude<NumberReading, { kind: 'ask' }> {
  return number.kind === 'ask' ? { kind: 'number', value: number.grouped } : number
}

/** Reads a whole number above zero; null for anything else. */
export function readWholeNumber(typed: string): number | null {
  const number = withGrouping(readNumber(typed))
  return number.kind === 'number' && Number.isSafeInteger(number.value) && number.value > 0
    ? number.value
    : null
}

/** A decimal number as a text that reads back one way: three decimals get a fourth. */
export function spellDecimal(value: number): string {
  return String(value).replace(/(\.\d{3})$/, '$10')
}
