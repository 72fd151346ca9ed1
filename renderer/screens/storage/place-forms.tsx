import { useState } from 'react'
import type { PlaceClimate, StoredPlace } from '../../../db/contract/storage-operations.ts'
import { aimInWords } from '../../../db/domain/climate/climate-words.ts'
import { PLACE_AIMS, type PlaceAim } from '../../../db/domain/climate/limits.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { PLACE_KINDS, type PlaceKind } from '../../shared/format/place-kinds.ts'
import { SelectField } from '../../shared/table-form/fields.tsx'
import { figureProblem, typedNumber, UNITS } from './typed-number.ts'

interface PlaceFormProps {
  readonly climate: PlaceClimate
  readonly onClose: () => void
}

const NOT_READ = { temperature: '', unit: 'C' as 'C' | 'F', humidity: '', on: '', time: '', note: '' }

/** A reading off a thermometer, and off a hygrometer where there is one. */
export function ReadingForm({ climate, onClose }: PlaceFormProps) {
  const { placeId } = climate.place
  const [now] = useState(() => new Date().toTimeString().slice(0, 5))
  const draftName = `reading/${placeId}`
  const form = useCardForm({ draftName, empty: NOT_READ, writes: 'reading.record', onClose })
  const { typed } = form
  const [temperature, humidity] = [typedNumber(typed.temperature), typedNumber(typed.humidity)]
  const unread = typed.humidity.trim() !== '' && humidity === null
  const time = typed.time || now
  const read = { placeId, ...typed, on: form.dayOf('on'), time, humidity }
  return (
    <CardForm
      title="Write a reading down"
      sendWord="Write it down"
      {...form.sending(temperature === null || unread ? null : { ...read, temperature })}
    >
      {form.textField('temperature', 'Temperature', { problem: figureProblem(typed.temperature) })}
      {form.selectField('unit', 'In', UNITS)}
      {form.textField('humidity', 'Humidity, %', {
        hint: 'empty where it was not read',
        problem: unread ? 'Write a number from 0 to 100.' : undefined,
      })}
      {form.textField('time', 'At', { value: time })}
      {form.dayField('on')}
    </CardForm>
  )
}

const AIMS = PLACE_AIMS.map((aim) => ({ value: aim, label: aimInWords(aim) }))

/** What a place is meant for, and the keeper's own limits where they differ from the usual ones. */
export function TermsForm({ climate: { place, terms, suggestedAim }, onClose }: PlaceFormProps) {
  const { placeId } = place
  const form = useCardForm({
    draftName: `terms/${placeId}`,
    empty: {
      aim: (terms?.aim ?? suggestedAim) as PlaceAim,
      celsius: String(terms?.highestCelsius ?? ''),
      humidity: String(terms?.highestHumidity ?? ''),
      roundDays: String(terms?.roundDays ?? ''),
    },
    writes: 'place.change-terms',
    onClose,
  })
  const { typed } = form
  const [highestCelsius, highestHumidity] = [typedNumber(typed.celsius), typedNumber(typed.humidity)]
  const roundDays = wholeNumber(typed.roundDays)
  const unread =
    (typed.roundDays.trim() !== '' && roundDays === null) ||
    (typed.celsius.trim() !== '' && highestCelsius === null) ||
    (typed.humidity.trim() !== '' && highestHumidity === null)
  const input = { placeId, aim: typed.aim, highestCelsius, highestHumidity, roundDays }
  return (
    <CardForm title="What it is meant for" sendWord="Keep that" {...form.sending(unread ? null : input)}>
      <div className="card-form-wide">{form.selectField('aim', 'Meant for keeping seed', AIMS)}</div>
      {form.textField('celsius', 'At most, °C', { hint: 'empty: the usual', path: 'highestCelsius' })}
      {form.textField('humidity', 'Humidity at most, %', {
        hint: 'empty: the usual',
        path: 'highestHumidity',
      })}
      {form.textField('roundDays', 'A round every … days', { hint: 'empty: no rounds here' })}
    </CardForm>
  )
}

/** Says that a place is another kind of place; what that does to its seed is said before. */
export function KindForm({ climate: { place }, onClose }: PlaceFormProps) {
  const [kind, setKind] = useState(place.kind)
  const change = kind === place.kind ? null : { placeId: place.placeId, kind }
  const previewed = useRead('place.preview-kind', change)
  const write = useWrite('place.change-kind')
  return (
    <CardForm
      title="What kind of place it is"
      sendWord="Change it"
      busy={write.isPending || change === null}
      error={write.error}
      onSend={() => {
        if (change !== null) write.mutate(change, { onSuccess: onClose })
      }}
      onClose={onClose}
    >
      <SelectField label="It is" size="record" value={kind} options={PLACE_KINDS} onChange={setKind} />
      <p className="card-form-wide" role="status">
        {previewed.data?.words ?? ''}
      </p>
    </CardForm>
  )
}

interface NewPlaceProps {
  readonly places: readonly StoredPlace[]
  readonly onMade: (placeId: number) => void
  readonly onClose: () => void
}

const UNNAMED = { name: '', kind: 'room' as PlaceKind, parent: '' }

/** A place to keep seed in, or one that is only measured for now to see whether it would do. */
export function NewPlace({ places, onMade, onClose }: NewPlaceProps) {
  const form = useCardForm({ draftName: 'new-place', empty: UNNAMED, writes: 'place.create', onClose })
  const { name, kind, parent } = form.typed
  const input = { name, kind, parentId: parent === '' ? null : Number(parent) }
  const inside = places.map(({ placeId, path }) => ({ value: String(placeId), label: path }))
  return (
    <CardForm
      title="A new place"
      level={2}
      sendWord="Add it"
      {...form.sending(name.trim() === '' ? null : input, ({ placeId }) => onMade(placeId))}
    >
      {form.textField('name', 'Its name')}
      {form.selectField('kind', 'What it is', PLACE_KINDS)}
      {places.length > 0 &&
        form.selectField('parent', 'Inside', [{ value: '', label: 'by itself' }, ...inside])}
      <p className="card-form-wide soft">
        It need not hold seed yet: read a few candidates for some weeks and compare them before you choose.
      </p>
    </CardForm>
  )
}
