import { useEffect, useRef, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import {
  type Choice,
  type ChoiceField,
  CROP_CHOICES,
  correctionOf,
  keepingOf,
  type TypedCrop,
  type TypedKeeping,
  typedCropFrom,
  typedKeepingFrom,
} from './typed-crop.ts'

interface CropCardProps {
  readonly cropId: string
  readonly onClose: () => void
}

/** A crop: what is not known of it, what it is where it is the keeper's own, and what it has to keep. */
export function CropCard({ cropId, onClose }: CropCardProps) {
  const { data: crop, error } = useRead('crop.get', { cropId })
  const card = useRef<HTMLDivElement>(null)
  const isThere = crop !== undefined
  useEffect(() => {
    if (isThere) card.current?.querySelector('input')?.focus()
  }, [isThere])
  if (crop === undefined) return error === null ? null : <ProblemText problem={error.problem} />
  return (
    <div ref={card} className="stack-4">
      {crop.own && <CorrectForm crop={crop} onClose={onClose} />}
      <KeepingForm crop={crop} onClose={onClose} />
      {crop.caution !== '' && <p className="table-field-warning">{crop.caution}</p>}
      {crop.unknown.length > 0 && (
        <ul className="soft" aria-label="What is not known of it">
          {crop.unknown.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </div>
  )
}

const NOT_KNOWN = 'empty: not known'

const CHOICE_WORDS: Readonly<Record<Exclude<Choice<ChoiceField>, ''>, string>> = {
  seed: 'a seed',
  cluster: 'a cluster of seeds',
  fruit: 'a fruit',
  selfer: 'by themselves',
  mixed: 'by themselves and by other plants',
  outcrosser: 'by other plants',
  self: 'nobody: it pollinates itself',
  insect: 'insects',
  wind: 'the wind',
  annual: 'one season',
  biennial: 'two seasons, and flowers in the second',
  perennial: 'for years',
  'dried-on-plant': 'dry, from pods or heads',
  washed: 'washed out of the ripe fruit',
  fermented: 'left in its juice for two days, then washed',
  'after-ripened': 'washed, three weeks after the fruit was picked',
  'rubbed-out': 'rubbed out dry, of a fruit gone soft',
}

interface CropFormProps {
  readonly crop: Value<'crop.get'>
  readonly onClose: () => void
}

function CorrectForm({ crop, onClose }: CropFormProps) {
  const [typed, setTyped] = useState<TypedCrop>(() => typedCropFrom(crop))
  const write = useWrite('crop.change')
  const { read, problems } = correctionOf(typed)
  const field = (name: keyof TypedCrop, label: string, hint = '') => (
    <TextField
      label={label}
      step={name}
      size="record"
      value={typed[name]}
      onChange={(value) => setTyped({ ...typed, [name]: value })}
      problem={
        problemAt(write.error, `correction.${name}`) ??
        problemAt(write.error, `correction.viabilityConstants.${name}`) ??
        problems[name]
      }
      hint={hint}
    />
  )
  const choice = <F extends ChoiceField>(name: F, label: string) => (
    <SelectField<Choice<F>>
      label={label}
      step={name}
      size="record"
      value={typed[name] as Choice<F>}
      options={[
        ...(name === 'countedUnit' ? [] : [{ value: '' as const, label: 'not known' }]),
        ...CROP_CHOICES[name].map((value) => ({ value, label: CHOICE_WORDS[value] })),
      ]}
      onChange={(value) => setTyped({ ...typed, [name]: value })}
    />
  )
  return (
    <CardForm
      title={`${crop.commonName}, a crop of your own`}
      sendWord="Correct it"
      busy={write.isPending || read === null}
      error={write.error}
      shownAtField={Object.keys(typed).map((name) => `correction.${name}`)}
      onSend={() => read !== null && write.mutate({ cropId: crop.cropId, correction: read })}
      onClose={onClose}
    >
      {field('name', 'Everyday name')}
      {field('species', 'Botanical name', NOT_KNOWN)}
      {field('family', 'Family', NOT_KNOWN)}
      {field('packetSeeds', 'Seeds of a usual packet', NOT_KNOWN)}
      {field(
        'hundredSeedWeightG',
        'Grams of a hundred seeds',
        'from your own scale; lots that were never weighed by the hundred follow it',
      )}
      {choice('countedUnit', 'What is counted as one')}
      {choice('matingSystem', 'Its flowers are fertilised')}
      {choice('pollination', 'Its pollen is carried by')}
      {choice('lifeCycle', 'It lives')}
      {field('isolationHomeM', 'Metres from what it crosses with', NOT_KNOWN)}
      {field('isolationStrictM', 'Metres, for conservation', NOT_KNOWN)}
      {field('laterSowingDays', 'Days later to sow it, to flower after others', 'empty: not to be relied on')}
      {field('bedArea', 'Square metres of bed for one plant', NOT_KNOWN)}
      {choice('seedExtraction', 'Its seed is got out')}
      {field('ke', 'Constant of ageing KE', 'of a study of this species; empty: none is known')}
      {field('cw', 'Constant of ageing CW')}
      {field('ch', 'Constant of ageing CH')}
      {field('cq', 'Constant of ageing CQ')}
    </CardForm>
  )
}

function KeepingForm({ crop, onClose }: CropFormProps) {
  const [typed, setTyped] = useState<TypedKeeping>(() => typedKeepingFrom(crop))
  const write = useWrite('crop.change-policy')
  const { read, problems } = keepingOf(typed)
  const field = (name: keyof TypedKeeping, label: string, hint: string) => (
    <TextField
      label={label}
      step={name}
      size="record"
      value={typed[name]}
      onChange={(value) => setTyped({ ...typed, [name]: value })}
      problem={problemAt(write.error, name) ?? problems[name]}
      hint={hint}
    />
  )
  return (
    <CardForm
      title={`What ${crop.commonName} has to keep`}
      sendWord="Keep these figures"
      busy={write.isPending || read === null}
      error={write.error}
      shownAtField={Object.keys(typed)}
      onSend={() => read !== null && write.mutate({ cropId: crop.cropId, ...read })}
      onClose={onClose}
    >
      {field('plantsToKeep', 'Plants for one regrowing', usualPlants(crop))}
      {field('viabilityThreshold', 'Of 100 seeds tested, how many must sprout', 'empty: as for the library')}
      {field('daysToSeed', 'Days without frost to ripe seed', usualDays(crop))}
      <div className="card-form-wide">{field('reason', 'Why', 'kept beside the figures')}</div>
    </CardForm>
  )
}

function usualDays({ daysToSeed, daysToSeedIsOverride }: Value<'crop.get'>): string {
  if (daysToSeedIsOverride) return 'empty: the usual figure'
  return daysToSeed === null ? 'empty: no season is too short for it' : `empty: ${daysToSeed}, as usual`
}

function usualPlants(crop: Value<'crop.get'>): string {
  if (crop.plantsToKeepIsOverride) return 'empty: the usual figure'
  const usual = `empty: ${crop.plantsToKeep}`
  if (!crop.own) return `${usual}, as the table has it`
  return crop.matingSystem === null
    ? `${usual}, usual where the pollination is not known`
    : `${usual}, usual for such a plant`
}
