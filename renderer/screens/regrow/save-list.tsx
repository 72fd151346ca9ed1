import { useState } from 'react'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useWrite } from '../../shared/client/use-write.ts'
import { TextField } from '../../shared/table-form/fields.tsx'
import type { Chosen } from './chosen.ts'

interface SaveListProps {
  readonly year: number
  readonly chosen: Chosen
}

/** Saves the needs as they stand today with what was ticked, to be looked up next year. */
export function SaveList({ year, chosen }: SaveListProps) {
  const [open, setOpen] = useState(false)
  const write = useWrite('season-list.create')
  const count = chosen.chosen.length
  if (!open) {
    return (
      <button type="button" className="quiet-button" onClick={() => setOpen(true)}>
        {`Save the list of season ${year}${count === 0 ? '' : `, ${count} to grow`}`}
      </button>
    )
  }
  const done = () => {
    chosen.discard()
    setOpen(false)
  }
  return (
    <CardForm
      title={count === 0 ? 'Save the list with nothing ticked' : `Save the list, ${count} to grow`}
      level={2}
      sendWord="Save this list"
      busy={write.isPending}
      error={write.error}
      onSend={() => write.mutate({ chosen: [...chosen.chosen], note: chosen.note }, { onSuccess: done })}
      onClose={() => setOpen(false)}
    >
      <TextField
        label="Note"
        step="note"
        size="record"
        value={chosen.note}
        onChange={chosen.setNote}
        hint="why these, or what was promised; may stay empty"
      />
    </CardForm>
  )
}
