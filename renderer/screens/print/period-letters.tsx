import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useTexts } from '../../shared/format/use-texts.ts'

interface PeriodLettersProps {
  /** When letters were printed last, or the first day of the year. */
  readonly since: string
}

/** Letters for all gifts of a time that nobody was thanked for: such as those of a list, or of donors who agreed later. */
export function PeriodLetters({ since }: PeriodLettersProps) {
  const { t } = useTexts()
  const form = useCardForm({ empty: { from: since, until: useToday() }, writes: 'tray.add-letters' })
  const { from, until } = form.typed
  return (
    <CardForm
      title={t('print.period')}
      level={2}
      sendWord={t('print.period-send')}
      {...form.sending(from === '' || until === '' ? null : { from, until })}
    >
      {form.dateField('from', t('print.period-from'))}
      {form.dateField('until', t('print.period-until'))}
    </CardForm>
  )
}
