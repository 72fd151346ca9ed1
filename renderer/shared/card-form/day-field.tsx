import type { ComponentProps } from 'react'
import { useTexts } from '../format/use-texts.ts'
import { DateField } from '../table-form/fields.tsx'

type DayFieldProps = Pick<ComponentProps<typeof DateField>, 'value' | 'onChange' | 'problem'>

/** The day on which something was done; today unless the keeper says otherwise. */
export function DayField(props: DayFieldProps) {
  const { t } = useTexts()
  return <DateField label={t('card-form.on')} step="on" size="record" {...props} />
}
