import { useEffect, useRef, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
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
        <ul className="soft" aria-label={t('settings.crop-unknown')}>
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
  const { t, say } = useTexts()
  const [typed, setTyped] = useState<TypedCrop>(() => typedCropFrom(crop))
  const write = useWrite('crop.change')
  const { read, problems } = correctionOf(typed)
  const told = (problem?: Message) => problem && say(problem)
  const notKnown = t('settings.empty-not-known')
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
        told(problems[name])
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
        ...(name === 'countedUnit' ? [] : [{ value: '' as const, label: t('settings.not-known') }]),
        ...CROP_CHOICES[name].map((value) => ({ value, label: t(`settings.crop-is-${value}`) })),
      ]}
      onChange={(value) => setTyped({ ...typed, [name]: value })}
    />
  )
  return (
    <CardForm
      title={t('settings.own-crop', { crop: crop.commonName })}
      sendWord={t('settings.correct-crop')}
      busy={write.isPending || read === null}
      error={write.error}
      shownAtField={Object.keys(typed).map((name) => `correction.${name}`)}
      onSend={() => read !== null && write.mutate({ cropId: crop.cropId, correction: read })}
      onClose={onClose}
    >
      {field('name', t('settings.crop-everyday-name'))}
      {field('species', t('settings.crop-botanical-name'), notKnown)}
      {field('family', t('settings.crop-family'), notKnown)}
      {field('packetSeeds', t('settings.crop-packet'), notKnown)}
      {field('hundredSeedWeightG', t('settings.crop-hundred'), t('settings.crop-hundred-hint'))}
      {choice('countedUnit', t('settings.crop-counted-as'))}
      {field('keepsMonths', t('pieces.crop-keeps'), t('pieces.crop-keeps-hint'))}
      {choice('matingSystem', t('settings.crop-fertilised'))}
      {choice('pollination', t('settings.crop-pollen'))}
      {choice('lifeCycle', t('settings.crop-lives'))}
      {field('isolationHomeM', t('settings.crop-metres'), notKnown)}
      {field('isolationStrictM', t('settings.crop-metres-strict'), notKnown)}
      {field('laterSowingDays', t('settings.crop-later-days'), t('settings.crop-later-hint'))}
      {field('bedArea', t('settings.crop-bed'), notKnown)}
      {choice('seedExtraction', t('settings.crop-got-out'))}
      {field('ke', t('settings.crop-ke'), t('settings.crop-ke-hint'))}
      {field('cw', t('settings.crop-cw'))}
      {field('ch', t('settings.crop-ch'))}
      {field('cq', t('settings.crop-cq'))}
    </CardForm>
  )
}

function KeepingForm({ crop, onClose }: CropFormProps) {
  const { t, say } = useTexts()
  const [typed, setTyped] = useState<TypedKeeping>(() => typedKeepingFrom(crop))
  const write = useWrite('crop.change-policy')
  const { read, problems } = keepingOf(typed)
  const told = (problem?: Message) => problem && say(problem)
  const field = (name: keyof TypedKeeping, label: string, hint: string) => (
    <TextField
      label={label}
      step={name}
      size="record"
      value={typed[name]}
      onChange={(value) => setTyped({ ...typed, [name]: value })}
      problem={problemAt(write.error, name) ?? told(problems[name])}
      hint={hint}
    />
  )
  return (
    <CardForm
      title={t('settings.crop-keeps', { crop: crop.commonName })}
      sendWord={t('settings.keep-figures')}
      busy={write.isPending || read === null}
      error={write.error}
      shownAtField={Object.keys(typed)}
      onSend={() => read !== null && write.mutate({ cropId: crop.cropId, ...read })}
      onClose={onClose}
    >
      {field('plantsToKeep', t('settings.crop-plants'), say(usualPlants(crop)))}
      {field('viabilityThreshold', t('settings.crop-must-sprout'), t('settings.crop-sprout-hint'))}
      {field('daysToSeed', t('settings.crop-days-to-seed'), say(usualDays(crop)))}
      <div className="card-form-wide">
        {field('reason', t('settings.crop-why'), t('settings.crop-why-hint'))}
      </div>
    </CardForm>
  )
}

function usualDays({ daysToSeed, daysToSeedIsOverride }: Value<'crop.get'>): Message {
  if (daysToSeedIsOverride) return message('settings.usual-figure')
  return daysToSeed === null
    ? message('settings.no-season-too-short')
    : message('settings.usual-days', { days: daysToSeed })
}

function usualPlants(crop: Value<'crop.get'>): Message {
  if (crop.plantsToKeepIsOverride || crop.plantsToKeep === null) return message('settings.usual-figure')
  const { own, matingSystem } = crop
  const from = !own ? 'table' : matingSystem === null ? 'unknown' : 'kind'
  return message('settings.usual-plants', { plants: crop.plantsToKeep, from })
}
