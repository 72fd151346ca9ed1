/** A typed number: one value, two possible values to ask about, or nothing that can be read. */
export type NumberReading =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'ask'; readonly grouped: number; readonly decimal: number }
  | { readonly kind: 'unreadable' }

/** Writes one-character fractions and wide digits in plain digits: '1½ oz' becomes '1 1/2 oz'. */
export function spellFractions(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${sign}`)
    .normalize('NFKC')
    .replace(/⁄/g, '/')
}

/**
 * Reads a number that may use comma or point as the decimal mark, spaces or marks between thousands, or a fraction.
 *
 * One mark followed by exactly three digits (1,234 or 1.234) can be meant both ways, so it asks; 0.234 cannot.
 */
export function readNumber(typed: string): NumberReading {
  const text = spellFractions(typed).trim()
  const fraction = /^(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(text)
  if (fraction) {
    const below = Number(fraction[3])
    if (below === 0) return { kind: 'unreadable' }
    return exactly(Number(fraction[1] ?? 0) + Number(fraction[2]) / below)
  }
  const plain = text.replace(/(?<=\d)[\s'’](?=\d{3}(?:\D|$))/g, '')
  if (/^\d+$/.test(plain)) return exactly(Number(plain))
  const both = /^(\d{1,3})(?:([.,])\d{3})+(?!\2)[.,]\d+$/.exec(plain)
  if (both) {
    const grouping = both[2] ?? ''
    return exactly(Number(plain.replaceAll(grouping, '').replace(',', '.')))
  }
  if (/^\d{1,3}(?:\.\d{3}){2,}$|^\d{1,3}(?:,\d{3}){2,}$/.test(plain))
    return exactly(Number(plain.replace(/[.,]/g, '')))
  const single = /^(\d*)[.,](\d+)$/.exec(plain)
  if (!single) return { kind: 'unreadable' }
  const decimal = Number(`${single[1] || '0'}.${single[2]}`)
  const couldGroup = single[2]?.length === 3 && /^[1-9]\d{0,2}$/.test(single[1] ?? '')
  return couldGroup ? { kind: 'ask', grouped: Number(`${single[1]}${single[2]}`), decimal } : exactly(decimal)
}

function exactly(value: number): NumberReading {
  return Number.isFinite(value) ? { kind: 'number', value } : { kind: 'unreadable' }
}
