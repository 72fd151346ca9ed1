import type { Value } from '../../../db/contract/contract.ts'
import { plantCaution } from '../../../db/domain/cautions/plant-caution.ts'

import { usualPolicy } from '../../../db/domain/keeping/keeping.ts'
import { BREEDING_STATUSES } from '../../../db/domain/shared/closed-sets.ts'
import { NO_LIMITS } from '../../../db/domain/terms/gift-limits.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { call } from '../../shared/client/call.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { LimitsFields } from '../../shared/limits-form/limits-fields.tsx'
import { typedLimits } from '../../shared/limits-form/typed-limits.ts'
import { CautionsField } from '../../shared/table-form/cautions-field.tsx'
import { CROPS, noCropFound } from '../../shared/table-form/crop-source.ts'
import { CheckField, SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { fieldsOf, type StepProblems } from '../../shared/table-form/refusals.ts'
import { SeedFields } from '../../shared/table-form/seed-fields.tsx'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'
import type { GiftLine, GiftStep } from './gift-line.ts'

type VarietyFound = Value<'variety.search'>['varieties'][number]

/** Varieties by any of their names. */
const varietiesIn = ({ locale, text: t }: Texts): SuggestionSource<VarietyFound> => ({
  name: `varieties ${locale}`,
  find: async (text) => {
    const { varieties } = await call('variety.search', { text, limit: 8 })
    return varieties.map((variety) => ({
      key: String(variety.varietyId),
      name: variety.name,
      detail: cropFound(variety.cropName, variety.name, variety.matched, t),
      item: variety,
    }))
  },
})

function cropFound(crop: string, variety: string, matched: string, t: Texts['text']): string {
  return matched === '' || matched === variety ? crop : t('take-in.crop-found', { crop, name: matched })
}

export interface GiftPartProps {
  readonly line: GiftLine
  readonly onChange: (change: Partial<GiftLine>) => void
  readonly problems: StepProblems<GiftStep>
}

/** What every gift is asked: which variety, which harvest, how much. */
export function GiftFields({
  line,
  onChange,
  problems,
  thisYear,
}: GiftPartProps & { readonly thisYear: number }) {
  return (
    <>
      <VarietyFields line={line} onChange={onChange} problems={problems} />
      <SeedFields
        line={line}
        thisYear={thisYear}
        onChange={onChange}
        problems={problems}
        cropId={line.cropId ?? undefined}
      />
    </>
  )
}

function VarietyFields({ line, onChange, problems }: GiftPartProps) {
  const texts = useTexts()
  const { t } = texts
  return (
    <>
      <SuggestField
        label={t('take-in.variety')}
        step="variety"
        size="table"
        text={line.variety}
        chosen={line.varietyIs !== 'open'}
        onText={(variety) =>
          onChange(
            line.varietyIs === 'new'
              ? { variety }
              : { variety, varietyIs: 'open', varietyId: null, matched: '', ...NO_CROP },
          )
        }
        source={varietiesIn(texts)}
        onPick={(found) =>
          onChange({
            variety: found.name,
            varietyIs: 'known',
            varietyId: found.varietyId,
            matched: found.matched,
            cropId: found.cropId,
            crop: found.cropName,
            newCrop: false,
          })
        }
        addNew={{
          label: (name) => t('take-in.add-variety', { name }),
          onAdd: (text) =>
            onChange({
              variety: text,
              varietyIs: 'new',
              varietyId: null,
              matched: '',
              ...(line.varietyIs === 'new' ? {} : NO_CROP),
            }),
        }}
        nothingFound={(typed) => t('take-in.no-variety', { typed })}
        placeholder={t('take-in.variety-placeholder')}
        problem={problems.variety}
        words={<Note words={varietyInWords(line, texts)} />}
        spoken={varietyInWords(line, texts)}
      />
      {line.varietyIs === 'new' && (
        <SuggestField
          label={t('take-in.crop')}
          step="crop"
          size="table"
          text={line.crop}
          chosen={line.cropId !== null || line.newCrop}
          onText={(crop) => onChange({ ...NO_CROP, crop })}
          source={CROPS}
          onPick={(crop) => onChange({ crop: crop.commonName, cropId: crop.cropId, newCrop: false })}
          addNew={{
            label: (name) => t('take-in.add-crop', { name }),
            onAdd: (crop) => onChange({ crop, cropId: null, newCrop: true }),
            seldom: true,
          }}
          nothingFound={noCropFound}
          placeholder={t('take-in.crop-placeholder')}
          problem={problems.crop}
          words={<Note words={cropInWords(line, texts)} />}
          spoken={cropInWords(line, texts)}
        />
      )}
    </>
  )
}

const NO_CROP = { cropId: null, crop: '', newCrop: false } as const

function Note({ words }: { readonly words: string }) {
  return words === '' ? null : <p className="soft">{words}</p>
}

function cautionOf(crop: string, say: Texts['say']): string {
  const caution = plantCaution(crop, '')
  return caution === null ? '' : say(caution)
}

function cropInWords({ cropId, crop, newCrop }: GiftLine, { text: t, say }: Texts): string {
  if (cropId === null && !newCrop) return ''
  const added = newCrop ? t('take-in.new-crop') : ''
  return [added, cautionOf(crop, say)].filter((words) => words !== '').join(' ')
}

function varietyInWords({ variety, varietyIs, crop, matched }: GiftLine, { text: t, say }: Texts): string {
  if (varietyIs === 'new') return t('take-in.new-variety')
  if (varietyIs === 'open') return ''
  const words = [cropFound(crop, variety, matched, t), cautionOf(crop, say)]
  return words.filter((part) => part !== '').join(' · ')
}

/** What some gifts have to tell: where they grew, their story, what the donor asks for, and what to be careful about. */
export function MoreFields({ line, onChange, problems }: GiftPartProps) {
  const { t } = useTexts()
  const field = fieldsOf({ donorWords: '', ...line }, onChange, problems)
  const roles = ROLES.map((value) => ({ value, label: t(`shelf.role-${value}`) }))
  return (
    <div className="more-fields stack-3">
      <TextField label={t('take-in.where-grown')} {...field('grownAt')} />
      <TextField
        label={t('take-in.donor-words')}
        long
        {...field('donorWords')}
        hint={t('take-in.donor-words-hint')}
      />
      <TextField label={t('take-in.story')} long {...field('story')} hint={t('take-in.story-hint')} />
      <TextField
        label={t('take-in.terms')}
        {...field('terms')}
        placeholder={t('take-in.terms-placeholder')}
      />
      <GiftLimitsFields line={line} onChange={onChange} problems={problems} />
      <CautionsField {...line} onChange={onChange} problem={problems.cautionNote} />
      <KeepingFields line={line} onChange={onChange} />
      <SelectField label={t('take-in.keep-as')} options={roles} {...field('role')} />
    </div>
  )
}

/** Closed until the giver sets limits: a box to tick, and its fields beneath. */
function GiftLimitsFields({ line, onChange, problems }: GiftPartProps) {
  const { t } = useTexts()
  const { limited = false, limits = typedLimits(NO_LIMITS) } = line
  return (
    <div className="stack-3">
      <CheckField
        label={t('terms.limits')}
        step="limited"
        checked={limited}
        onChange={(on) => onChange({ limited: on, limits })}
      />
      {limited && (
        <LimitsFields
          limits={limits}
          onChange={(change) => onChange({ limits: { ...limits, ...change } })}
          problems={problems}
        />
      )}
    </div>
  )
}

/** How it was bred; of what does not come true from seed also whether it is kept. */
function KeepingFields({ line, onChange }: Omit<GiftPartProps, 'problems'>) {
  const { t } = useTexts()
  const { breeding = 'unknown', policy = '' } = line
  const usual = usualPolicy(breeding)
  return (
    <>
      <SelectField
        label={t('keeping.bred')}
        value={breeding}
        options={BREEDING_STATUSES.map((value) => ({ value, label: t(`keeping.bred-${value}`) }))}
        onChange={(to) => onChange({ breeding: to, policy: '' })}
      />
      {usual === 'pass-on' && (
        <SelectField
          label={t('keeping.policy')}
          value={policy || usual}
          options={(['pass-on', 'keep'] as const).map((value) => ({
            value,
            label: t(`keeping.policy-${value}`),
          }))}
          onChange={(to) => onChange({ policy: to })}
          words={t('keeping.why-pass-on')}
        />
      )}
    </>
  )
}

const ROLES = ['working', 'reserve', 'reference'] as const
