import { TextField } from '../../../shared/table-form/text-field.tsx'

interface DayFieldProps {
  readonly value: string
  readonly onChange: (value: string) => void
  readonly problem?: string | undefined
}

/** The day on which something was done; today unless the keeper says otherwise. */
export function DayField({ value, onChange, problem }: DayFieldProps) {
  return (
    <TextField
      label="On"
      step="on"
      type="date"
      size="record"
      value={value}
      onChange={onChange}
      problem={problem}
    />
  )
}
