import { message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { readTypedNumber } from '../../shared/format/manner.ts'

/** A number as typed, with comma or point and perhaps a minus sign; null where it cannot be read or is empty. */
export function typedNumber(typed: string): number | null {
  const text = typed.trim()
  const below = /^[-−]/.test(text)
  const read = readTypedNumber(below ? text.slice(1) : text)
  return read !== null && below ? -read : read
}

/** What is wrong with a typed figure, or undefined; an empty one says nothing. */
export function figureProblem(typed: string, say: Texts['say']): string | undefined {
  const text = typed.trim()
  return text === '' || text === '-' || typedNumber(text) !== null
    ? undefined
    : say(message('storage.figure', { warm: 18.5, cold: '-19' }))
}

/** What a thermometer is read in. */
export const UNITS = [
  { value: 'C', label: '°C' },
  { value: 'F', label: '°F' },
] as const
