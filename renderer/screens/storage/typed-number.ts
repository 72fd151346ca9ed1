import { readNumber } from '../../../db/domain/amounts/read-number.ts'

/** A number as typed, with comma or point and perhaps a minus sign; null where it cannot be read or is empty. */
export function typedNumber(typed: string): number | null {
  const text = typed.trim()
  const below = /^[-−]/.test(text)
  const read = readNumber(below ? text.slice(1) : text)
  if (read.kind !== 'number') return null
  return below ? -read.value : read.value
}

/** What is wrong with a typed figure, or undefined; an empty one says nothing. */
export function figureProblem(typed: string): string | undefined {
  const text = typed.trim()
  return text === '' || text === '-' || typedNumber(text) !== null
    ? undefined
    : 'Write a number such as 18.5 or -19.'
}

/** What a thermometer is read in. */
export const UNITS = [
  { value: 'C', label: '°C' },
  { value: 'F', label: '°F' },
] as const
