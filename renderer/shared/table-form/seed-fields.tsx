import { harvestTold, readHarvestYear } from '../../../db/domain/dates/harvest-year.ts'
import type { Message } from '../../../db/messages/message.ts'
import { readTypedSample } from '../format/manner.ts'
import { useTexts } from '../format/use-texts.ts'
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
  const { t, say } = useTexts()
  return (
    <>
      <TextField
        label={t('table.harvest')}
        {...field('harvest')}
        placeholder={t('table.harvest-like')}
        words={harvestWords(line.harvest, thisYear, say)}
      />
      <AmountField
        label={t('table.amount')}
        size="table"
        {...field('amount')}
        cropId={cropId}
        lotId={lotId}
        sample={readTypedSample(line.sample).kind === 'sample' ? line.sample : ''}
        placeholder={t('table.amount-like')}
      />
      <TextField label={t('table.sample')} {...field('sample')} placeholder={t('table.sample-like')} />
    </>
  )
}

/** What was understood of a year as people say it, where it is not simply what was typed. */
function harvestWords(typed: string, thisYear: number, say: (told: Message) => string): string {
  if (typed.trim() === '') return ''
  const reading = readHarvestYear(typed, thisYear)
  const told = reading.kind === 'harvest' ? harvestTold(reading.harvest) : ''
  const words = typeof told === 'string' ? told : say(told)
  return words.replace('–', '-') === typed.trim() ? '' : words
}
