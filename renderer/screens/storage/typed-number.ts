import { readNumber } from '../../../db/domain/amounts/read-number.ts'

/** A number as typed, with comma or point and perhaps a minus sign; null where it cannot be read or is empty. */
export function typedNumber(typed: string): number | null {
  const text = typed.trim()
  const below = /^[-−]/.test(text)
  const read = readNumber(below ? text.slice(1) : text)
  if (read.kind !== 'number') return null
  return below ? -read.value : read.value
}
