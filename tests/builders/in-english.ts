import type { Told, Untold } from '../../db/contract/told.ts'
import type { Message } from '../../db/messages/message.ts'
import { tellAll } from '../../db/messages/tell.ts'
import { createTexts, type Manner, type Texts } from '../../db/messages/texts.ts'

const BRITISH: Manner = { locale: 'en-GB', massUnits: 'metric' }

/** What a service gives, as somebody who reads English is told it in a library that writes so. */
export function inEnglish<T>(untold: Untold<T>, manner: Manner = BRITISH): T {
  const { locale, massUnits } = manner
  const name = `${locale} ${massUnits}`
  const english =
    made.get(name) ??
    createTexts({ code: 'en', direction: 'ltr', manner: { locale, massUnits }, translation: {} })
  made.set(name, english)
  return tellAll(untold, english.say) as T
}

/** The same of one message, with plain spaces before units. */
export function saidInEnglish(told: Message | string): string {
  return inEnglish<Told>(told).replaceAll('\u00a0', ' ')
}

/** Whoever tells what is printed, in English. */
export const ENGLISH: Texts = createTexts({
  code: 'en',
  direction: 'ltr',
  manner: BRITISH,
  translation: {},
  dates: 'long',
})

const made = new Map<string, Texts>()
