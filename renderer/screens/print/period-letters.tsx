import { useState } from 'react'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { TextField } from '../../shared/table-form/fields.tsx'

interface PeriodLettersProps {
  /** When letters were printed last, or the first day of the year. */
  readonly since: string
}

/** Letters for all gifts of a time that nobody was thanked for: such as those of a list, or of donors who agreed later. */
export function PeriodLetters({ since }: PeriodLettersProps) {
  const today = useRead('collection.get', {}).data?.today
  const [typed, setTyped] = useState<{ readonly from?: string; readonly until?: string }>({})
  const format = useFormat()
  const write = useWrite('tray.add-letters')
  const from = typed.from ?? since
  const until = typed.until ?? today ?? ''
  const day = (field: 'from' | 'until', label: string, value: string) => (
    <TextField
      label={label}
      step={field}
      type="date"
      size="record"
      value={value}
      words={value === '' ? '' : format.day(value)}
      onChange={(picked) => setTyped({ ...typed, [field]: picked })}
    />
  )
  return (
    <CardForm
      title="For all gifts of a time"
      level={2}
      sendWord="Put their letters into the tray"
      busy={write.isPending || from === '' || until === ''}
      error={write.error}
      onSend={() => write.mutate({ from, until })}
    >
      {day('from', 'Received from', from)}
      {day('until', 'until', until)}
    </CardForm>
  )
}
