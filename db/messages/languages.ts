import type { Translation } from './texts.ts'

/** A language that the app speaks. */
export interface Language {
  /** BCP 47. */
  readonly code: string
  /** As its speakers call it. */
  readonly name: string
  readonly direction: 'ltr' | 'rtl'
  /** Its texts; what it lacks is told in English. */
  readonly load: () => Promise<Translation>
}

export const LANGUAGES = [
  { code: 'en', name: 'English', direction: 'ltr', load: async () => ({}) },
  { code: 'es', name: 'Español', direction: 'ltr', load: async () => (await import('./es/index.ts')).es },
] as const satisfies readonly Language[]

export type LanguageCode = (typeof LANGUAGES)[number]['code']

export const LANGUAGE_CODES = LANGUAGES.map(({ code }) => code) as [LanguageCode, ...LanguageCode[]]

/**
 * Languages that a program makes of English, for the tests: a collection that says it speaks one of them is told in it.
 * Nobody can choose them. Their codes are those that CLDR reserves for such languages; the texts of the second are
 * written in Arabic's direction, and so are its dates in Arabic.
 */
const MADE_UP: readonly Language[] = [
  {
    code: 'en-XA',
    name: 'Longer',
    direction: 'ltr',
    load: async () => (await import('./pseudo.ts')).pseudoTranslation('ltr'),
  },
  {
    code: 'ar-XB',
    name: 'From right to left',
    direction: 'rtl',
    load: async () => (await import('./pseudo.ts')).pseudoTranslation('rtl'),
  },
]

/** The language of a code; English where the app does not speak it. */
export function languageOf(code: string | undefined): Language {
  return [...LANGUAGES, ...MADE_UP].find((language) => language.code === code) ?? LANGUAGES[0]
}

/** Whether a code that came from outside is that of a language that the app speaks. */
export function isLanguageCode(code: unknown): code is LanguageCode {
  return LANGUAGES.some((language) => language.code === code)
}
