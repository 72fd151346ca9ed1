import type { Beyond } from '../../domain/climate/limits.ts'
import type { Inspection } from '../../domain/rounds/inspection.ts'
import { type Message, message } from '../../messages/message.ts'

/** What the book holds in place of a note, where the instruments of a place were beyond its limits. */
const BEYOND = ['too-warm', 'too-damp', 'too-warm-and-damp'] as const

/** What is noted of a reading; '' where it keeps the limits. */
export function noteOfReading({ tooWarm, tooDamp }: Beyond): (typeof BEYOND)[number] | '' {
  if (tooWarm && tooDamp) return 'too-warm-and-damp'
  if (tooWarm) return 'too-warm'
  return tooDamp ? 'too-damp' : ''
}

/** What was noted of a finding: by whoever walked, or by {@link noteOfReading}; older books hold words there too. */
export function noteOf({
  look,
  note,
}: {
  readonly look: Inspection
  readonly note: string
}): Message | string {
  const beyond = look === 'reading' ? BEYOND.find((code) => code === note) : undefined
  return beyond === undefined ? note : message(`storage.state-${beyond}`)
}
