import { Fragment } from 'react'
import type { Measured } from '../../../../db/contract/care-operations.ts'
import { BREAK_CLASSES, type BreakClass } from '../../../../db/domain/moisture/break-check.ts'
import { USUAL_DRYING_GOAL } from '../../../../db/domain/moisture/drying.ts'
import { MOISTURE_METHODS } from '../../../../db/domain/shared/closed-sets.ts'
import { type Message, message } from '../../../../db/messages/message.ts'
import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { useSavedForm } from '../../../shared/card-form/use-saved-form.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import { readTypedNumber } from '../../../shared/format/manner.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import { TextField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'

const EMPTY = {
  method: 'sealed-jar' as Measured['method'],
  gives: 'breaks' as BreakClass,
  humidity: '',
  temperature: '',
  freshGrams: '',
  dryGrams: '',
  dishGrams: '',
  percent: '',
  on: '',
}
type NumberField = Exclude<keyof typeof EMPTY, 'method' | 'gives' | 'on'>

/** The numbers that a method wants, by the name each has in the input. */
const NUMBERS: Readonly<Record<Measured['method'], readonly (readonly [NumberField, label: Message])[]>> = {
  'sealed-jar': [
    ['humidity', message('shelf.number-jar-humidity')],
    ['temperature', message('shelf.number-temperature')],
  ],
  oven: [
    ['freshGrams', message('shelf.number-before')],
    ['dryGrams', message('shelf.number-after')],
    ['dishGrams', message('shelf.number-dish')],
  ],
  meter: [['percent', message('shelf.number-moisture')]],
  'break-check': [],
}

/** How moist the seed was found; what it comes to is said before it is written down. */
export function MoistureForm({ lot: { lotId }, ...kept }: ActionFormProps) {
  const { t, say } = useTexts()
  const form = useCardForm({ ...kept, empty: EMPTY, writes: 'moisture.record' })
  const { method } = form.typed
  const measured = measuredOf(form.typed)
  const seen = useRead('moisture.preview', measured === null ? null : { lotId, measured })
  const ready = measured !== null && seen.data !== undefined
  return (
    <CardForm
      title={t('shelf.how-moist')}
      sendWord={t('shelf.write-down')}
      {...form.sending(ready ? { lotId, on: form.dayOf('on'), measured } : null)}
      error={form.frame.error ?? seen.error}
    >
      {form.selectField(
        'method',
        t('shelf.found-by'),
        MOISTURE_METHODS.map((value) => ({ value, label: t(`shelf.method-${value}`) })),
      )}
      {method === 'break-check' &&
        form.selectField(
          'gives',
          t('shelf.it-gives'),
          BREAK_CLASSES.map((value) => ({ value, label: t(`storage.gives-${value}`) })),
        )}
      {NUMBERS[method].map(([name, label]) => {
        const path = `measured.${name}`
        const problem = form.frame.error === null ? problemAt(seen.error, path) : undefined
        return <Fragment key={name}>{form.textField(name, say(label), { path, problem })}</Fragment>
      })}
      {form.dayField('on')}
      <div className="card-form-wide" role="status">
        {seen.data !== undefined && (
          <p>
            {t('shelf.it-holds', { moisture: seen.data.words })} {seen.data.advice.join(' ')}
          </p>
        )}
      </div>
    </CardForm>
  )
}

/** What was measured as the contract wants it; null while a number is missing. A dish that was not used weighs nothing. */
function measuredOf({ method, gives, ...typed }: typeof EMPTY): Measured | null {
  if (method === 'break-check') return { method, gives }
  const number = (name: NumberField) => readTypedNumber(typed[name])
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

const DRYING = { grams: '', from: '', to: String(USUAL_DRYING_GOAL) }
const DRYING_FIELDS = [
  ['grams', message('shelf.number-seed-weighs')],
  ['from', message('shelf.number-moisture-now')],
  ['to', message('shelf.number-moisture-wanted')],
] as const

/** At which mass the seed is dry, and how much drying gel that takes; writes nothing. */
export function DryingForm({ draftName, onClose }: ActionFormProps) {
  const { t, say } = useTexts()
  const { typed, change } = useSavedForm(draftName, DRYING)
  const [grams, from, to] = [
    readTypedNumber(typed.grams),
    readTypedNumber(typed.from),
    readTypedNumber(typed.to),
  ]
  const ready = grams !== null && from !== null && to !== null
  const plan = useRead('moisture.plan-drying', ready ? { grams, from, to } : null)
  return (
    <CardForm
      title={t('shelf.do-drying')}
      sendWord={t('shelf.done')}
      busy={false}
      error={plan.error}
      onSend={onClose}
      onClose={onClose}
    >
      {DRYING_FIELDS.map(([name, label]) => (
        <TextField
          key={name}
          label={say(label)}
          size="record"
          value={typed[name]}
          onChange={(value) => change({ [name]: value })}
        />
      ))}
      <div className="card-form-wide" role="status">
        {plan.data !== undefined &&
          [plan.data.words, ...plan.data.assumptions, ...plan.data.cautions].map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
      </div>
    </CardForm>
  )
}
