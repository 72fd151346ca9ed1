import type { Value } from '../../../db/contract/contract.ts'
import type { Manner } from '../../../db/domain/amounts/in-words.ts'
import { isIsoDate, yearOf } from '../../../db/domain/dates/iso-date.ts'
import { printNumber, readPattern } from '../../../db/domain/numbers/pattern.ts'
import {
  CHECK_RETURNS,
  MASS_UNITS,
  PAPER_SIZES,
  THRESHOLDS_OF,
} from '../../../db/domain/shared/closed-sets.ts'
import { LANGUAGES } from '../../../db/messages/languages.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { createFormat } from '../../shared/format/format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { type CheckedSetting, settingsOf, typedFrom } from './typed-settings.ts'

const SPOKEN = LANGUAGES.map(({ code, name }) => ({ value: code, label: name }))

/** The library's name, its numbers, what it means to keep, and how it writes things. */
export function SettingsForm({ about }: { readonly about: Value<'collection.get'> }) {
  const { t, say, locale } = useTexts()
  const form = useCardForm({ empty: typedFrom(about.settings), writes: 'settings.change' })
  const { typed } = form
  const read = settingsOf(typed)
  const text = (name: CheckedSetting, label: string, more: { words?: string; hint?: string } = {}) => {
    const problem = read.problems[name]
    return form.textField(name, label, {
      path: `settings.${name}`,
      problem: problem && say(problem),
      ...more,
    })
  }
  return (
    <CardForm
      title={t('settings.library')}
      level={2}
      sendWord={t('settings.keep-these')}
      {...form.sending(read.settings && { settings: read.settings })}
    >
      <div className="card-form-wide">{text('libraryName', t('settings.its-name'))}</div>
      {text('accessionPattern', t('settings.numbers'), {
        words: numberExample(typed.accessionPattern, about.today, t),
      })}
      {text('regrowingsKept', t('settings.regrowings'), {
        hint: t('settings.regrowings-hint'),
      })}
      {text('emergence', t('settings.emergence'), {
        hint: t('settings.emergence-hint'),
      })}
      {text('assurance', t('settings.assurance'), {
        hint: t('settings.assurance-hint'),
      })}
      {text('viabilityThreshold', t('settings.must-sprout'), {
        hint: t('settings.must-sprout-hint'),
      })}
      {form.selectField(
        'viabilityThresholdOf',
        t('settings.that-many-of'),
        THRESHOLDS_OF.map((value) => ({ value, label: t(`settings.of-${value}`) })),
        t('settings.threshold-rules', {
          rules: typed.viabilityThresholdOf === 'all-seeds' ? 'older' : 'newer',
        }),
      )}
      {text('visitLimit', t('settings.visit-limit'), {
        hint: t('settings.visit-limit-hint'),
      })}
      {form.selectField(
        'checkReturns',
        t('settings.check-returns'),
        CHECK_RETURNS.map((value) => ({ value, label: t(`settings.check-returns-${value}`) })),
        t('settings.check-returns-hint'),
      )}
      <div className="card-form-wide">
        {form.checkField('dueDates', t('settings.due-dates'), t('settings.due-dates-hint'))}
      </div>
      {form.selectField('language', t('settings.language'), SPOKEN)}
      {form.selectField('locale', t('settings.dates-as-in'), localeChoices(typed.locale, locale))}
      {form.selectField(
        'massUnits',
        t('settings.weights-in'),
        MASS_UNITS.map((value) => ({ value, label: t(`settings.units-${value}`) })),
        t('settings.weights-in-hint'),
      )}
      {form.selectField(
        'paper',
        t('settings.paper'),
        PAPER_SIZES.map((value) => ({ value, label: t(`settings.paper-${value}`) })),
      )}
      <p className="card-form-wide soft">{mannerExample(typed, about.today, t)}</p>
    </CardForm>
  )
}

/** The numbers that a pattern prints; nothing of one that would go wrong. */
function numberExample(pattern: string, today: string, t: Texts['text']): string {
  const reading = readPattern(pattern)
  if (reading.kind === 'refused') return ''
  const number = printNumber(reading.pattern, isIsoDate(today) ? yearOf(today) : 2000, 142)
  return t('settings.number-example', { number })
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
function localeChoices(
  present: string,
  told: string,
): readonly { readonly value: string; readonly label: string }[] {
  const names = new Intl.DisplayNames(told, { type: 'language', languageDisplay: 'standard' })
  const tags = OFFERED.includes(present) ? OFFERED : [present, ...OFFERED]
  return tags.map((tag) => ({ value: tag, label: names.of(tag) ?? tag }))
}

/** How a date, a count and a mass look. */
function mannerExample(manner: Manner, today: string, t: Texts['text']): string {
  const format = createFormat(manner)
  return t('settings.manner-example', {
    day: format.day(today),
    seeds: format.number(1_240),
    mass: format.mass(12_500),
  })
}
