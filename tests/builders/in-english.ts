import type { Told, Untold } from '../../db/contract/told.ts'
import type { Message } from '../../db/messages/message.ts'
import { tellAll } from '../../db/messages/tell.ts'
import { createTexts } from '../../db/messages/texts.ts'

const english = createTexts({
  code: 'en',
  direction: 'ltr',
  manner: { locale: 'en-GB', massUnits: 'metric' },
  translation: {},
})

/** What a service gives, as somebody who reads English is told it. */
export function inEnglish<T>(untold: Untold<T>): T {
  return tellAll(untold, english.say) as T
}

/** The same of one message, with plain spaces before units. */
export function saidInEnglish(told: Message | string): string {
  return inEnglish<Told>(told).replaceAll('\u00a0', ' ')
}
