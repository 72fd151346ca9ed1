import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { isIsoDate, yearOf } from '../../../db/domain/dates/iso-date.ts'
import { printNumber, readPattern } from '../../../db/domain/numbers/pattern.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useWrite } from '../../shared/client/use-write.ts'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import { localeChoices, mannerExample } from './locales.ts'
import { settingsOf, type TypedSettings, typedFrom } from './typed-settings.ts'

type About = Value<'collection.get'>

const SHOWN = [
  'settings.libraryName',
  'settings.accessionPattern',
  'settings.regrowingsKept',
  'settings.emergence',
  'settings.assurance',
  'settings.viabilityThreshold',
  'settings.visitLimit',
  'settings.locale',
]

/** The library's name, its numbers, what it means to keep, and how it writes things. */
export function SettingsForm({ about }: { readonly about: About }) {
  const [typed, setTyped] = useState<TypedSettings>(() => typedFrom(about.settings))
  const write = useWrite('settings.change')
  const read = settingsOf(typed)
  const set = (part: Partial<TypedSettings>) => setTyped({ ...typed, ...part })
  const text = (field: keyof TypedSettings, label: string, more: { words?: string; hint?: string } = {}) => (
    <TextField
      label={label}
      step={field}
      size="record"
      value={typed[field]}
      onChange={(value) => set({ [field]: value })}
      problem={problemAt(write.error, `settings.${field}`) ?? read.problems[field]}
      {...more}
    />
  )
  return (
    <CardForm
      title="The library"
      level={2}
      sendWord="Keep these settings"
      busy={write.isPending || read.settings === null}
      error={write.error}
      shownAtField={SHOWN}
      onSend={() => read.settings !== null && write.mutate({ settings: read.settings })}
    >
      <div className="card-form-wide">{text('libraryName', 'Its name, as on labels and letters')}</div>
      <PatternField
        value={typed.accessionPattern}
        today={about.today}
        refused={problemAt(write.error, 'settings.accessionPattern')}
        onChange={(accessionPattern) => set({ accessionPattern })}
      />
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
      <SelectField
        label="That many of"
        size="record"
        value={typed.viabilityThresholdOf}
        options={[
          { value: 'all-seeds', label: 'all seeds' },
          { value: 'the-start', label: 'those alive at its start' },
        ]}
        words={
          typed.viabilityThresholdOf === 'all-seeds'
            ? 'as older rules of gene banks have it'
            : 'as newer rules of gene banks have it'
        }
        onChange={(viabilityThresholdOf) => set({ viabilityThresholdOf })}
      />
      {text('visitLimit', 'Packets for one visit', {
        hint: 'more than that wants a reason; leave it empty for no limit',
      })}
      <SelectField
        label="Dates and numbers as in"
        size="record"
        value={typed.locale}
        options={localeChoices(typed.locale)}
        onChange={(locale) => set({ locale })}
      />
      <SelectField
        label="Weights in"
        size="record"
        value={typed.massUnits}
        options={[
          { value: 'metric', label: 'grams' },
          { value: 'ounces', label: 'ounces and pounds' },
        ]}
        words="as they are written; either can be typed"
        onChange={(massUnits) => set({ massUnits })}
      />
      <SelectField
        label="Paper"
        size="record"
        value={typed.paper}
        options={[
          { value: 'a4', label: 'A4' },
          { value: 'letter', label: 'US Letter' },
        ]}
        onChange={(paper) => set({ paper })}
      />
      <p className="card-form-wide soft">{mannerExample(typed, about.today)}</p>
    </CardForm>
  )
}

interface PatternFieldProps {
  readonly value: string
  readonly today: string
  readonly refused: string | undefined
  readonly onChange: (value: string) => void
}

/** The pattern of accession numbers, with the number it prints or why it would go wrong. */
function PatternField({ value, today, refused, onChange }: PatternFieldProps) {
  const reading = readPattern(value)
  const year = isIsoDate(today) ? yearOf(today) : 2000
  return (
    <TextField
      label="Accession numbers"
      step="accessionPattern"
      size="record"
      value={value}
      onChange={onChange}
      problem={refused ?? (reading.kind === 'refused' ? reading.because : undefined)}
      {...(reading.kind === 'pattern'
        ? {
            words: `prints ${printNumber(reading.pattern, year, 142)}; its lots are ${printNumber(reading.pattern, year, 142)}-A, -B`,
          }
        : {})}
    />
  )
}
