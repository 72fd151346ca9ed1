import type { Value } from '../../../db/contract/contract.ts'
import { plantCaution } from '../../../db/domain/cautions/plant-caution.ts'
import { call } from '../../shared/client/call.ts'
import { ROLE_WORDS } from '../../shared/format/words.ts'
import { CautionsField } from '../../shared/table-form/cautions-field.tsx'
import { CROPS, noCropFound } from '../../shared/table-form/crop-source.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { fieldsOf, type StepProblems } from '../../shared/table-form/refusals.ts'
import { SeedFields } from '../../shared/table-form/seed-fields.tsx'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'
import type { GiftLine, GiftStep } from './gift-line.ts'

type VarietyFound = Value<'variety.search'>['varieties'][number]

/** Varieties by any of their names. */
const VARIETIES: SuggestionSource<VarietyFound> = {
  name: 'varieties',
  find: async (text) => {
    const { varieties } = await call('variety.search', { text, limit: 8 })
    return varieties.map((variety) => ({
      key: String(variety.varietyId),
      name: variety.name,
      detail: [
        variety.cropName,
        ...(variety.matched === '' || variety.matched === variety.name
          ? []
          : [`also called ${variety.matched}`]),
      ].join(' · '),
      item: variety,
    }))
  },
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
  return (
    <>
      <SuggestField
        label="Variety"
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
        source={VARIETIES}
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
          label: (text) => `Add ${text} as a new variety`,
          onAdd: (text) =>
            onChange({
              variety: text,
              varietyIs: 'new',
              varietyId: null,
              matched: '',
              ...(line.varietyIs === 'new' ? {} : NO_CROP),
            }),
        }}
        nothingFound={(text) => `No variety called ${text} is known yet.`}
        placeholder="a few letters of any of its names"
        problem={problems.variety}
        words={<Note words={varietyInWords(line)} />}
        spoken={varietyInWords(line)}
      />
      {line.varietyIs === 'new' && (
        <SuggestField
          label="Its crop"
          step="crop"
          size="table"
          text={line.crop}
          chosen={line.cropId !== null || line.newCrop}
          onText={(crop) => onChange({ ...NO_CROP, crop })}
          source={CROPS}
          onPick={(crop) => onChange({ crop: crop.commonName, cropId: crop.cropId, newCrop: false })}
          addNew={{
            label: (text) => `Add ${text} as a crop of your own`,
            onAdd: (crop) => onChange({ crop, cropId: null, newCrop: true }),
            seldom: true,
          }}
          nothingFound={noCropFound}
          placeholder="bean, tomato, Lactuca …"
          problem={problems.crop}
          words={<Note words={cropInWords(line)} />}
          spoken={cropInWords(line)}
        />
      )}
    </>
  )
}

const NO_CROP = { cropId: null, crop: '', newCrop: false } as const

function Note({ words }: { readonly words: string }) {
  return words === '' ? null : <p className="soft">{words}</p>
}

function cropInWords({ cropId, crop, newCrop }: GiftLine): string {
  if (cropId === null && !newCrop) return ''
  const added = newCrop
    ? 'A crop of your own: will be added when the visit is saved. Say what you know of it in the settings.'
    : ''
  return [added, plantCaution(crop, '')].filter((words) => words !== '').join(' ')
}

function varietyInWords({ variety, varietyIs, crop, matched }: GiftLine): string {
  if (varietyIs === 'new') return 'New: will be added when the visit is saved.'
  if (varietyIs === 'open') return ''
  const called = matched === '' || matched === variety ? '' : `, also called ${matched}`
  const caution = plantCaution(crop, '')
  return `${crop}${called}${caution === '' ? '' : `. ${caution}`}`
}

/** What some gifts have to tell: where they grew, their story, what the donor asks for, and what to be careful about. */
export function MoreFields({ line, onChange, problems }: GiftPartProps) {
  const field = fieldsOf({ donorWords: '', ...line }, onChange, problems)
  return (
    <div className="more-fields stack-3">
      <TextField label="Where grown" {...field('grownAt')} />
      <TextField
        label="In the donor’s words"
        long
        {...field('donorWords')}
        hint="What they told of it. The thank-you letter says it again."
      />
      <TextField
        label="Its story, as you write it"
        long
        {...field('story')}
        hint="Goes on packets and lists, not into the letter. Shift+Enter begins a new line. No health or family details."
      />
      <TextField label="Terms of the gift" {...field('terms')} placeholder="what the donor asks for" />
      <CautionsField {...line} onChange={onChange} problem={problems.cautionNote} />
      <SelectField label="Keep it as" options={ROLES} {...field('role')} />
    </div>
  )
}

const ROLES = (['working', 'reserve', 'reference'] as const).map((value) => ({
  value,
  label: ROLE_WORDS[value],
}))
