import { useState } from 'react'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
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
  const today = useToday()
  const [now] = useState(() => new Date().toTimeString().slice(0, 5))
  const { typed, change, letGo } = useKeptForm(`reading/${placeId}`, EMPTY)
  const write = useWrite('reading.note')
  const temperature = typedNumber(typed.temperature)
  const humidity = typedNumber(typed.humidity)
  const unread = typed.humidity.trim() !== '' && humidity === null
  const send = () => {
    if (temperature === null) return
    write.mutate(
      {
        placeId,
        on: typed.on || today,
        time: typed.time || now,
        temperature,
        unit: typed.unit,
        humidity,
        note: typed.note,
      },
      {
        onSuccess: () => {
          letGo()
          onClose()
        },
      },
    )
  }
  return (
    <CardForm
      title="Write a reading down"
      sendWord="Write it down"
      busy={write.isPending || temperature === null || unread}
      error={write.error}
      shownAtField={['temperature', 'humidity', 'on', 'time']}
      onSend={send}
      onClose={onClose}
    >
      <TextField
        label="Temperature"
        step="temperature"
        size="record"
        value={typed.temperature}
        onChange={(value) => change({ temperature: value })}
        problem={
          typed.temperature.trim() !== '' && typed.temperature.trim() !== '-' && temperature === null
            ? 'Write a number such as 18.5 or -19.'
            : problemAt(write.error, 'temperature')
        }
      />
      <SelectField
        label="In"
        size="record"
        value={typed.unit}
        options={UNITS}
        onChange={(unit) => change({ unit })}
      />
      <TextField
        label="Humidity, %"
        step="humidity"
        size="record"
        value={typed.humidity}
        hint="empty where it was not read"
        onChange={(value) => change({ humidity: value })}
        problem={unread ? 'Write a number from 0 to 100.' : problemAt(write.error, 'humidity')}
      />
      <TextField
        label="At"
        step="time"
        size="record"
        value={typed.time || now}
        onChange={(time) => change({ time })}
        problem={problemAt(write.error, 'time')}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
    </CardForm>
  )
}
