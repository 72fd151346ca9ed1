import type { ComponentProps } from 'react'
import { useFormat } from '../format/use-format.ts'
import { TextField } from './text-field.tsx'

type DateFieldProps = Omit<ComponentProps<typeof TextField>, 'type' | 'words'> & {
  /** Today, where '' stands for it. */
  readonly today?: string
}

/** A day, read back in words. */
export function DateField({ value, onChange, today = '', ...rest }: DateFieldProps) {
  const format = useFormat()
  return (
    <TextField
      {...rest}
      type="date"
      value={value || today}
      words={value !== '' ? format.day(value) : today === '' ? '' : 'today'}
      onChange={(day) => onChange(day === today ? '' : day)}
    />
  )
}
