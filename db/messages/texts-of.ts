import { type LanguageCode, languageOf } from './languages.ts'
import { createTexts, type Manner, type Speech, type Texts } from './texts.ts'

/** How a library writes: its language, and its numbers, dates and masses. */
export interface LibrarySpeech extends Manner {
  readonly language: LanguageCode
}

/** As long as no library is open. */
export const UNTIL_OPEN: LibrarySpeech = { language: 'en', locale: 'en-GB', massUnits: 'metric' }

/** Formats are dear to make, and there are few libraries and languages. */
const made = new Map<string, Texts>()

/** Whoever tells messages as a library writes: in the language asked for, else in its own. */
export async function textsOf(
  library: LibrarySpeech,
  asked: LanguageCode | null = null,
  dates: Speech['dates'] & string = 'medium',
): Promise<Texts> {
  const { locale, massUnits } = library
  const code = asked ?? library.language
  const name = `${code} ${locale} ${massUnits} ${dates}`
  const known = made.get(name)
  if (known !== undefined) return known
  const language = languageOf(code)
  const texts = createTexts({
    ...language,
    manner: { locale, massUnits },
    translation: await language.load(),
    dates,
  })
  made.set(name, texts)
  return texts
}
