import { useFormat } from '../format/use-format.ts'
import { TextField } from '../table-form/fields.tsx'

interface DayFieldProps {
  readonly value: string
  readonly onChange: (value: string) => void
  readonly problem?: string | undefined
}

/** The day on which something was done; today unless the keeper says otherwise. */
export function DayField({ value, onChange, problem }: DayFieldProps) {
  const format = useFormat()
  return (
    <TextField
      label="On"
      step="on"
      type="date"
      size="record"
      value={value}
      onChange={onChange}
      words={value === '' ? '' : format.day(value)}
      problem={problem}
    />
  )
}
