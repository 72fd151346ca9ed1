import type { ComponentProps } from 'react'
import { DateField } from '../table-form/fields.tsx'

type DayFieldProps = Pick<ComponentProps<typeof DateField>, 'value' | 'onChange' | 'problem'>

/** The day on which something was done; today unless the keeper says otherwise. */
export function DayField(props: DayFieldProps) {
  return <DateField label="On" step="on" size="record" {...props} />
}
