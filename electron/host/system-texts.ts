import { isLanguageCode } from '../../db/messages/languages.ts'
import type { Message } from '../../db/messages/message.ts'
import { textsOf, UNTIL_OPEN } from '../../db/messages/texts-of.ts'

/** Tells a message where no collection is open yet: in the language of this computer, where the app speaks it. */
export async function toldBySystem(told: Message): Promise<string> {
  const { locale } = new Intl.DateTimeFormat().resolvedOptions()
  const { language } = new Intl.Locale(locale)
  const texts = await textsOf(UNTIL_OPEN, isLanguageCode(language) ? language : null)
  return texts.say(told)
}
