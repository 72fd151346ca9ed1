import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'

interface PeriodLettersProps {
  /** When letters were printed last, or the first day of the year. */
  readonly since: string
}

/** Letters for all gifts of a time that nobody was thanked for: such as those of a list, or of donors who agreed later. */
export function PeriodLetters({ since }: PeriodLettersProps) {
  const format = useFormat()
  const { t } = useTexts()
  const form = useCardForm({ empty: { from: since, until: useToday() }, writes: 'tray.add-letters' })
  const { from, until } = form.typed
  const day = (name: 'from' | 'until', label: string) =>
    form.textField(name, label, { type: 'date', words: format.day(form.typed[name]) })
  return (
    <CardForm
      title={t('print.period')}
      level={2}
      sendWord={t('print.period-send')}
      {...form.sending(from === '' || until === '' ? null : { from, until })}
    >
      {day('from', t('print.period-from'))}
      {day('until', t('print.period-until'))}
    </CardForm>
  )
}
