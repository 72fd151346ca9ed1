import type { Manner } from '../../../db/domain/amounts/in-words.ts'
import { createFormat } from '../../shared/format/format.ts'

const OFFERED = [
  'en-GB',
  'en-IE',
  'en-US',
  'en-CA',
  'en-AU',
  'en-NZ',
  'en-ZA',
  'en-IN',
  'cs-CZ',
  'da-DK',
  'de-DE',
  'el-GR',
  'es-ES',
  'fi-FI',
  'fr-FR',
  'it-IT',
  'nb-NO',
  'nl-NL',
  'pl-PL',
  'pt-PT',
  'sv-SE',
  'uk-UA',
]

/** The ways of writing dates and numbers to choose from, with the present one even if it is a rare one. */
export function localeChoices(
  present: string,
): readonly { readonly value: string; readonly label: string }[] {
  const names = new Intl.DisplayNames('en', { type: 'language', languageDisplay: 'standard' })
  const tags = OFFERED.includes(present) ? OFFERED : [present, ...OFFERED]
  return tags.map((tag) => ({ value: tag, label: names.of(tag) ?? tag }))
}

/** How a date, a count and a mass look. */
export function mannerExample(manner: Manner, today: string): string {
  const format = createFormat(manner)
  return `So it looks: ${format.day(today)} · ${format.number(1_240)} seeds · ${format.mass(12_500)}`
}
