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

/** Whether a code that came from outside is that of a language that the app speaks. */
export function isLanguageCode(code: unknown): code is LanguageCode {
  return LANGUAGES.some((language) => language.code === code)
}
