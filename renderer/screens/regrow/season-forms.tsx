import { useState } from 'react'
import type { PopulationGoal } from '../../../db/domain/needs/population-goal.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import type { SeasonDraft, SeasonStep } from '../../shared/season-draft/season-draft.ts'
import { TextField } from '../../shared/table-form/fields.tsx'
import { GRADE_CHOICES } from './grade-words.ts'

interface SaveListProps {
  readonly year: number
  readonly season: SeasonDraft
  readonly dispatch: (step: SeasonStep) => void
}

/** Saves the needs as they stand today with what was ticked, to be looked up next year. */
export function SaveList({ year, season: { chosen, note }, dispatch }: SaveListProps) {
  const [open, setOpen] = useState(false)
  const write = useWrite('season-list.create')
  const count = chosen.length
  if (!open) {
    return (
      <button type="button" className="quiet-button" onClick={() => setOpen(true)}>
        {`Save the list of season ${year}${count === 0 ? '' : `, ${count} to grow`}`}
      </button>
    )
  }
  const done = () => {
    dispatch({ kind: 'list-saved' })
    setOpen(false)
  }
  return (
    <CardForm
      title={count === 0 ? 'Save the list with nothing ticked' : `Save the list, ${count} to grow`}
      level={2}
      sendWord="Save this list"
      busy={write.isPending}
      error={write.error}
      onSend={() => write.mutate({ chosen: [...chosen], note }, { onSuccess: done })}
      onClose={() => setOpen(false)}
    >
      <TextField
        label="Note"
        value={note}
        onChange={(typed) => dispatch({ kind: 'noted', note: typed })}
        hint="why these, or what was promised; may stay empty"
      />
    </CardForm>
  )
}

interface SeasonFormProps {
  readonly grade: PopulationGoal
  readonly onClose: () => void
}

/** What regrowings are for in this library, and the day on which a season is sown. */
export function SeasonForm({ grade, onClose }: SeasonFormProps) {
  const sowingDay = useRead('collection.get', {}).data?.settings.sowingDay ?? ''
  const form = useCardForm({ empty: { grade, sowingDay }, writes: 'settings.change', onClose })
  return (
    <CardForm title="Every season" level={2} sendWord="Keep this" {...form.sending({ settings: form.typed })}>
      {form.selectField('grade', 'Regrow for', GRADE_CHOICES)}
      {form.textField('sowingDay', 'Sown about, month-day', {
        path: 'settings.sowingDay',
        hint: '04-15 is the fifteenth of April',
      })}
    </CardForm>
  )
}
