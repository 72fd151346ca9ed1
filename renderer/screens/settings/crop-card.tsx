import { useEffect, useRef, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import {
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
      problem={problemAt(write.error, `correction.${name}`) ?? problems[name]}
      hint={hint}
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
      {field('species', 'Botanical name', 'empty: not known')}
      {field('family', 'Family', 'empty: not known')}
      {field('packetSeeds', 'Seeds of a usual packet', 'empty: not known')}
      {field(
        'hundredSeedWeightG',
        'Grams of a hundred seeds',
        'from your own scale; lots that were never weighed by the hundred follow it',
      )}
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
  return crop.own ? `${usual}, usual where the pollination is not known` : `${usual}, as the table has it`
}
