import { useState } from 'react'
import type { PlaceClimate, StoredPlace } from '../../../db/contract/storage-operations.ts'
import { PLACE_AIMS, type PlaceAim } from '../../../db/domain/climate/limits.ts'
import { PLACE_KINDS, type PlaceKind } from '../../../db/domain/shared/closed-sets.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t, say } = useTexts()
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
      title={t('storage.write-reading')}
      sendWord={t('storage.write-it-down')}
      {...form.sending(temperature === null || unread ? null : { ...read, temperature })}
    >
      {form.textField('temperature', t('storage.temperature'), {
        problem: figureProblem(typed.temperature, say),
      })}
      {form.selectField('unit', t('storage.in-unit'), UNITS)}
      {form.textField('humidity', t('storage.humidity-percent'), {
        hint: t('storage.empty-not-read'),
        problem: unread ? t('storage.humidity-figure') : undefined,
      })}
      {form.textField('time', t('storage.at-time'), { value: time })}
      {form.dayField('on')}
    </CardForm>
  )
}

/** What a place is meant for, and the keeper's own limits where they differ from the usual ones. */
export function TermsForm({ climate: { place, terms, suggestedAim }, onClose }: PlaceFormProps) {
  const { placeId } = place
  const { t } = useTexts()
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
    <CardForm
      title={t('storage.meant-for')}
      sendWord={t('storage.save')}
      {...form.sending(unread ? null : input)}
    >
      <div className="card-form-wide">
        {form.selectField(
          'aim',
          t('storage.meant-for-keeping'),
          PLACE_AIMS.map((value) => ({ value, label: t(`storage.aim-${value}`) })),
        )}
      </div>
      {form.textField('celsius', t('storage.most-celsius'), {
        hint: t('storage.empty-usual'),
        path: 'highestCelsius',
      })}
      {form.textField('humidity', t('storage.most-humidity'), {
        hint: t('storage.empty-usual'),
        path: 'highestHumidity',
      })}
      {form.textField('roundDays', t('storage.round-days'), { hint: t('storage.empty-no-rounds') })}
    </CardForm>
  )
}

/** Says that a place is another kind of place; what that does to its seed is said before. */
export function KindForm({ climate: { place }, onClose }: PlaceFormProps) {
  const { t } = useTexts()
  const [kind, setKind] = useState(place.kind)
  const change = kind === place.kind ? null : { placeId: place.placeId, kind }
  const previewed = useRead('place.preview-kind', change)
  const write = useWrite('place.change-kind')
  return (
    <CardForm
      title={t('storage.which-kind')}
      sendWord={t('storage.change-it')}
      busy={write.isPending || change === null}
      error={write.error}
      onSend={() => {
        if (change !== null) write.mutate(change, { onSuccess: onClose })
      }}
      onClose={onClose}
    >
      <SelectField
        label={t('storage.it-is')}
        size="record"
        value={kind}
        options={PLACE_KINDS.map((value) => ({ value, label: t(`storage.kind-${value}`) }))}
        onChange={setKind}
      />
      <p className="card-form-wide" role="status">
        {previewed.data?.words.join(' ')}
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
  const { t } = useTexts()
  const form = useCardForm({ draftName: 'new-place', empty: UNNAMED, writes: 'place.create', onClose })
  const { name, kind, parent } = form.typed
  const input = { name, kind, parentId: parent === '' ? null : Number(parent) }
  const inside = places.map(({ placeId, path }) => ({ value: String(placeId), label: path }))
  return (
    <CardForm
      title={t('storage.new-place')}
      level={2}
      sendWord={t('storage.add-it')}
      {...form.sending(name.trim() === '' ? null : input, ({ placeId }) => onMade(placeId))}
    >
      {form.textField('name', t('storage.its-name'))}
      {form.selectField(
        'kind',
        t('storage.what-it-is'),
        PLACE_KINDS.map((value) => ({ value, label: t(`storage.kind-${value}`) })),
      )}
      {places.length > 0 &&
        form.selectField('parent', t('storage.inside'), [
          { value: '', label: t('storage.by-itself') },
          ...inside,
        ])}
      <p className="card-form-wide soft">{t('storage.new-place-why')}</p>
    </CardForm>
  )
}
