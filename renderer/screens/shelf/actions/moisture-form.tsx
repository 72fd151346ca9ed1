import type { Measured } from '../../../../db/contract/lot-storage-operations.ts'
import { readNumber } from '../../../../db/domain/amounts/read-number.ts'
import { BREAK_CLASSES, type BreakClass } from '../../../../db/domain/moisture/break-check.ts'
import { breakInWords } from '../../../../db/domain/moisture/moisture-words.ts'
import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useSavedForm } from '../../../shared/card-form/use-saved-form.ts'
import { useToday } from '../../../shared/card-form/use-today.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import { SelectField, TextField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'

const METHODS = [
  { value: 'sealed-jar', label: 'the air in a closed jar' },
  { value: 'break-check', label: 'how it gives way in the hand' },
  { value: 'oven', label: 'weighing before and after an oven' },
  { value: 'meter', label: 'a moisture meter' },
] as const
const GIVES = BREAK_CLASSES.map((value) => ({ value, label: breakInWords(value) }))

const EMPTY = {
  method: 'sealed-jar' as Measured['method'],
  gives: 'breaks' as BreakClass,
  numbers: {} as Readonly<Record<string, string>>,
  on: '',
}

/** The numbers that a method wants, by the name each has in the input. */
const NUMBERS: Readonly<Record<Measured['method'], readonly (readonly [field: string, label: string])[]>> = {
  'sealed-jar': [
    ['humidity', 'Humidity in the jar, %'],
    ['temperature', 'Temperature, °C'],
  ],
  oven: [
    ['freshGrams', 'Before, grams with the dish'],
    ['dryGrams', 'After, grams with the dish'],
    ['dishGrams', 'The dish alone, grams'],
  ],
  meter: [['percent', 'Moisture, % of fresh weight']],
  'break-check': [],
}

/** How moist the seed was found; what it comes to is said before it is written down. */
export function MoistureForm({ lot, draftName, onClose }: ActionFormProps) {
  const today = useToday()
  const { typed, change, discard } = useSavedForm(draftName, EMPTY)
  const write = useWrite('moisture.record')
  const measured = measuredOf(typed)
  const seen = useRead('moisture.preview', measured === null ? null : { lotId: lot.lotId, measured })
  const error = write.error ?? seen.error
  const done = () => {
    discard()
    onClose()
  }
  return (
    <CardForm
      title="How moist it is"
      sendWord="Write it down"
      busy={write.isPending || measured === null || seen.data === undefined}
      error={error}
      shownAtField={['on', ...NUMBERS[typed.method].map(([field]) => `measured.${field}`)]}
      onSend={() => {
        if (measured !== null)
          write.mutate({ lotId: lot.lotId, on: typed.on || today, measured }, { onSuccess: done })
      }}
      onClose={onClose}
    >
      <SelectField
        label="Found by"
        size="record"
        value={typed.method}
        options={METHODS}
        onChange={(method) => change({ method })}
      />
      {typed.method === 'break-check' && (
        <SelectField
          label="It"
          size="record"
          value={typed.gives}
          options={GIVES}
          onChange={(gives) => change({ gives })}
        />
      )}
      {NUMBERS[typed.method].map(([field, label]) => (
        <TextField
          key={field}
          label={label}
          step={field}
          size="record"
          value={typed.numbers[field] ?? ''}
          onChange={(value) => change({ numbers: { ...typed.numbers, [field]: value } })}
          problem={problemAt(error, `measured.${field}`)}
        />
      ))}
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
      <div className="card-form-wide" role="status">
        {seen.data !== undefined && (
          <p>
            It holds {seen.data.words}. {seen.data.advice.join(' ')}
          </p>
        )}
      </div>
    </CardForm>
  )
}

/** What was measured as the contract wants it; null while a number is missing. A dish that was not used weighs nothing. */
function measuredOf({ method, gives, numbers }: typeof EMPTY): Measured | null {
  if (method === 'break-check') return { method, gives }
  const number = (field: string) => {
    const read = readNumber(numbers[field] ?? '')
    return read.kind === 'number' ? read.value : null
  }
  if (method === 'meter') {
    const percent = number('percent')
    return percent === null ? null : { method, percent }
  }
  if (method === 'oven') {
    const [freshGrams, dryGrams, dishGrams] = [number('freshGrams'), number('dryGrams'), number('dishGrams')]
    return freshGrams === null || dryGrams === null
      ? null
      : { method, freshGrams, dryGrams, dishGrams: dishGrams ?? 0 }
  }
  const [humidity, temperature] = [number('humidity'), number('temperature')]
  return humidity === null || temperature === null ? null : { method, humidity, temperature, unit: 'C' }
}
