import { plantCaution } from '../../../db/domain/cautions/plant-caution.ts'
import { readSample } from '../../../db/domain/weights/read-sample.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { CROPS, noCropFound } from '../../shared/table-form/crop-source.ts'
import { HarvestField } from '../../shared/table-form/harvest-field.tsx'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { GiftLine, GiftProblems } from './gift-line.ts'
import { VARIETIES } from './sources.ts'

export interface GiftPartProps {
  readonly line: GiftLine
  readonly onChange: (change: Partial<GiftLine>) => void
  readonly problems: GiftProblems
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
      <HarvestField
        value={line.harvest}
        thisYear={thisYear}
        onChange={(harvest) => onChange({ harvest })}
        problem={problems.harvest}
      />
      <AmountField
        label="Amount"
        step="amount"
        size="table"
        value={line.amount}
        onChange={(amount) => onChange({ amount })}
        cropId={line.cropId ?? undefined}
        sample={readSample(line.sample).kind === 'sample' ? line.sample : ''}
        problem={problems.amount}
        placeholder="12.5 g, 30 seeds, 3 packets of 25"
      />
      <TextField
        label="Counted sample"
        step="sample"
        value={line.sample}
        onChange={(sample) => onChange({ sample })}
        placeholder="25 weigh 6.10 g"
        problem={problems.sample}
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
        words={<VarietyWords line={line} />}
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
          words={<CropWords line={line} />}
          spoken={cropInWords(line)}
        />
      )}
    </>
  )
}

const NO_CROP = { cropId: null, crop: '', newCrop: false } as const

function CropWords({ line }: { readonly line: GiftLine }) {
  const words = cropInWords(line)
  return words === '' ? null : <p className="soft">{words}</p>
}

function cropInWords(line: GiftLine): string {
  if (line.cropId === null && !line.newCrop) return ''
  const added = line.newCrop
    ? 'A crop of your own: will be added when the visit is saved. Say what you know of it in the settings.'
    : ''
  return [added, plantCaution(line.crop, '')].filter((words) => words !== '').join(' ')
}

function VarietyWords({ line }: { readonly line: GiftLine }) {
  const words = varietyInWords(line)
  return words === '' ? null : <p className="soft">{words}</p>
}

function varietyInWords(line: GiftLine): string {
  if (line.varietyIs === 'new') return 'New: will be added when the visit is saved.'
  if (line.varietyIs === 'open') return ''
  const called = line.matched === '' || line.matched === line.variety ? '' : `, also called ${line.matched}`
  const caution = plantCaution(line.crop, '')
  return `${line.crop}${called}${caution === '' ? '' : `. ${caution}`}`
}
