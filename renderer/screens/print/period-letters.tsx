import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useFormat } from '../../shared/format/use-format.ts'

interface PeriodLettersProps {
  /** When letters were printed last, or the first day of the year. */
  readonly since: string
}

/** Letters for all gifts of a time that nobody was thanked for: such as those of a list, or of donors who agreed later. */
export function PeriodLetters({ since }: PeriodLettersProps) {
  const format = useFormat()
  const form = useCardForm({ empty: { from: since, until: useToday() }, writes: 'tray.add-letters' })
  const { from, until } = form.typed
  const day = (name: 'from' | 'until', label: string) =>
    form.textField(name, label, { type: 'date', words: format.day(form.typed[name]) })
  return (
    <CardForm
      title="For all gifts of a time"
      level={2}
      sendWord="Put their letters into the tray"
      {...form.sending(from === '' || until === '' ? null : { from, until })}
    >
      {day('from', 'Received from')}
      {day('until', 'until')}
    </CardForm>
  )
}
