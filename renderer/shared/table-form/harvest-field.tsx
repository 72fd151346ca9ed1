import { harvestInWords, readHarvestYear } from '../../../db/domain/dates/harvest-year.ts'
import { TextField } from './text-field.tsx'

interface HarvestFieldProps {
  readonly value: string
  readonly thisYear: number
  readonly onChange: (harvest: string) => void
  readonly problem: string | undefined
}

/** A year of harvest as people say it: a year, about a year, a range, or nothing. */
export function HarvestField({ value, thisYear, onChange, problem }: HarvestFieldProps) {
  return (
    <TextField
      label="Harvest year"
      step="harvest"
      value={value}
      onChange={onChange}
      placeholder="2024, about 2019, 2017-2019, or unknown"
      words={harvestWords(value, thisYear)}
      problem={problem}
    />
  )
}

/** What was understood, where it is not simply what was typed. */
function harvestWords(typed: string, thisYear: number): string {
  if (typed.trim() === '') return ''
  const reading = readHarvestYear(typed, thisYear)
  const words = reading.kind === 'harvest' ? harvestInWords(reading.harvest) : ''
  return words.replace('–', '-') === typed.trim() ? '' : words
}
