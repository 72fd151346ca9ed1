import { createTexts } from './texts.ts'

/** Tells in English, for files whose readers are other programs. */
export const english = createTexts({
  code: 'en',
  direction: 'ltr',
  manner: { locale: 'en-GB', massUnits: 'metric' },
  translation: {},
})
