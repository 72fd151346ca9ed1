import { harvestInWords, readHarvestYear } from '../../../db/domain/dates/harvest-year.ts'
import { readSample } from '../../../db/domain/weights/read-sample.ts'
import { AmountField } from './amount-field.tsx'
import { TextField } from './fields.tsx'
import { fieldsOf, type StepProblems } from './refusals.ts'
import type { SeedStep, TypedSeed } from './typed-seed.ts'

interface SeedFieldsProps {
  readonly line: TypedSeed
  readonly thisYear: number
  readonly onChange: (change: Partial<TypedSeed>) => void
  readonly problems: StepProblems<SeedStep>
  readonly cropId?: string | undefined
  readonly lotId?: number | undefined
}

/** Which harvest it is of, and how much there is. */
export function SeedFields({ line, thisYear, onChange, problems, cropId, lotId }: SeedFieldsProps) {
  const field = fieldsOf<TypedSeed>(line, onChange, problems)
  return (
    <>
      <TextField
        label="Harvest year"
        {...field('harvest')}
        placeholder="2024, about 2019, 2017-2019, or unknown"
        words={harvestWords(line.harvest, thisYear)}
      />
      <AmountField
        label="Amount"
        size="table"
        {...field('amount')}
        cropId={cropId}
        lotId={lotId}
        sample={readSample(line.sample).kind === 'sample' ? line.sample : ''}
        placeholder="12.5 g, 30 seeds, 3 packets of 25"
      />
      <TextField label="Counted sample" {...field('sample')} placeholder="25 weigh 6.10 g" />
    </>
  )
}

/** What was understood of a year as people say it, where it is not simply what was typed. */
function harvestWords(typed: string, thisYear: number): string {
  if (typed.trim() === '') return ''
  const reading = readHarvestYear(typed, thisYear)
  const words = reading.kind === 'harvest' ? harvestInWords(reading.harvest) : ''
  return words.replace('–', '-') === typed.trim() ? '' : words
}
