import { useState } from 'react'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { typedNumber } from './typed-number.ts'

interface ReadingFormProps {
  readonly placeId: number
  readonly onClose: () => void
}

const UNITS = [
  { value: 'C', label: '°C' },
  { value: 'F', label: '°F' },
] as const

const EMPTY = { temperature: '', unit: 'C' as 'C' | 'F', humidity: '', on: '', time: '', note: '' }

/** A reading off a thermometer, and off a hygrometer where there is one. */
export function ReadingForm({ placeId, onClose }: ReadingFormProps) {
  const [now] = useState(() => new Date().toTimeString().slice(0, 5))
  const form = useCardForm({
    draftName: `reading/${placeId}`,
    empty: EMPTY,
    writes: 'reading.record',
    onClose,
  })
  const { typed } = form
  const temperature = typedNumber(typed.temperature)
  const humidity = typedNumber(typed.humidity)
  const unread = typed.humidity.trim() !== '' && humidity === null
  const temperatureField = form.field('temperature')
  const humidityField = form.field('humidity')
  const send = () => {
    if (temperature === null) return
    const { unit, note } = typed
    form.send({ placeId, on: form.dayOf('on'), time: typed.time || now, temperature, unit, humidity, note })
  }
  return (
    <CardForm
      title="Write a reading down"
      sendWord="Write it down"
      {...form.frame}
      busy={form.frame.busy || temperature === null || unread}
      onSend={send}
    >
      <TextField
        label="Temperature"
        size="record"
        {...temperatureField}
        problem={
          typed.temperature.trim() !== '' && typed.temperature.trim() !== '-' && temperature === null
            ? 'Write a number such as 18.5 or -19.'
            : temperatureField.problem
        }
      />
      <SelectField label="In" size="record" options={UNITS} {...form.choice('unit')} />
      <TextField
        label="Humidity, %"
        size="record"
        {...humidityField}
        hint="empty where it was not read"
        problem={unread ? 'Write a number from 0 to 100.' : humidityField.problem}
      />
      <TextField label="At" size="record" {...form.field('time')} value={typed.time || now} />
      <DayField {...form.day('on')} />
    </CardForm>
  )
}
