import { createTexts } from '../../messages/texts.ts'

/** Tells what a room says by messages, where lists of seed are still spoken of in English. */
export const { say: inEnglish } = createTexts({
  code: 'en',
  direction: 'ltr',
  manner: { locale: 'en-GB', massUnits: 'metric' },
  translation: {},
})
