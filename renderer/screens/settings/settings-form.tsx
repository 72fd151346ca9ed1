import type { Value } from '../../../db/contract/contract.ts'
import type { Manner } from '../../../db/domain/amounts/in-words.ts'
import { isIsoDate, yearOf } from '../../../db/domain/dates/iso-date.ts'
import { printNumber, readPattern } from '../../../db/domain/numbers/pattern.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { createFormat } from '../../shared/format/format.ts'
import { type CheckedSetting, settingsOf, typedFrom } from './typed-settings.ts'

const THRESHOLDS = [
  { value: 'all-seeds', label: 'all seeds' },
  { value: 'the-start', label: 'those alive at its start' },
] as const
const UNITS = [
  { value: 'metric', label: 'grams' },
  { value: 'ounces', label: 'ounces and pounds' },
] as const
const PAPERS = [
  { value: 'a4', label: 'A4' },
  { value: 'letter', label: 'US Letter' },
] as const

/** The library's name, its numbers, what it means to keep, and how it writes things. */
export function SettingsForm({ about }: { readonly about: Value<'collection.get'> }) {
  const form = useCardForm({ empty: typedFrom(about.settings), writes: 'settings.change' })
  const { typed } = form
  const read = settingsOf(typed)
  const text = (name: CheckedSetting, label: string, more: { words?: string; hint?: string } = {}) =>
    form.textField(name, label, { path: `settings.${name}`, problem: read.problems[name], ...more })
  return (
    <CardForm
      title="The library"
      level={2}
      sendWord="Keep these settings"
      {...form.sending(read.settings && { settings: read.settings })}
    >
      <div className="card-form-wide">{text('libraryName', 'Its name, as on labels and letters')}</div>
      {text('accessionPattern', 'Accession numbers', {
        words: numberExample(typed.accessionPattern, about.today),
      })}
      {text('regrowingsKept', 'Regrowings held in reserve', {
        hint: 'Three is what seed banks hold to: seed for three regrowings before more must be grown.',
      })}
      {text('emergence', 'Of 100 living seeds sown, how many become plants', {
        hint: 'from your own seedbeds',
      })}
      {text('assurance', 'Of 100 sowings, how many must make all their plants', {
        hint: 'decides how much seed is sown and kept; 90 is usual',
      })}
      {text('viabilityThreshold', 'Of 100 seeds tested, how many must sprout', {
        hint: 'for crops that have no threshold of their own',
      })}
      {form.selectField(
        'viabilityThresholdOf',
        'That many of',
        THRESHOLDS,
        `as ${typed.viabilityThresholdOf === 'all-seeds' ? 'older' : 'newer'} rules of gene banks have it`,
      )}
      {text('visitLimit', 'Packets for one visit', {
        hint: 'more than that wants a reason; leave it empty for no limit',
      })}
      {form.selectField('locale', 'Dates and numbers as in', localeChoices(typed.locale))}
      {form.selectField('massUnits', 'Weights in', UNITS, 'as they are written; either can be typed')}
      {form.selectField('paper', 'Paper', PAPERS)}
      <p className="card-form-wide soft">{mannerExample(typed, about.today)}</p>
    </CardForm>
  )
}

/** The numbers that a pattern prints; nothing of one that would go wrong. */
function numberExample(pattern: string, today: string): string {
  const reading = readPattern(pattern)
  if (reading.kind === 'refused') return ''
  const number = printNumber(reading.pattern, isIsoDate(today) ? yearOf(today) : 2000, 142)
  return `prints ${number}; its lots are ${number}-A, -B`
}

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
function localeChoices(present: string): readonly { readonly value: string; readonly label: string }[] {
  const names = new Intl.DisplayNames('en', { type: 'language', languageDisplay: 'standard' })
  const tags = OFFERED.includes(present) ? OFFERED : [present, ...OFFERED]
  return tags.map((tag) => ({ value: tag, label: names.of(tag) ?? tag }))
}

/** How a date, a count and a mass look. */
function mannerExample(manner: Manner, today: string): string {
  const format = createFormat(manner)
  return `So it looks: ${format.day(today)} · ${format.number(1_240)} seeds · ${format.mass(12_500)}`
}
