import type { Told } from '../../../db/contract/told.ts'
import type { Message } from '../../../db/messages/message.ts'
import { createTexts, type Texts } from '../../../db/messages/texts.ts'
import { UNTIL_TOLD } from './manner.ts'

/** Tells in the language of the window where no component does; English until a collection told its own. */
let say: Texts['say'] = createTexts({
  code: 'en',
  direction: 'ltr',
  manner: UNTIL_TOLD,
  translation: {},
}).say

export function noteTexts(texts: Texts): void {
  say = texts.say
}

export function toldNow(told: Message): Told {
  return say(told) as Told
}
