import { useState } from 'react'
import type { PopulationGoal } from '../../../db/domain/needs/population-goal.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import type { SeasonDraft, SeasonStep } from '../../shared/season-draft/season-draft.ts'
import { TextField } from '../../shared/table-form/fields.tsx'
import { goalChoices } from './goal-choices.ts'

interface SaveListProps {
  readonly year: number
  readonly season: SeasonDraft
  readonly dispatch: (step: SeasonStep) => void
}

/** Saves the needs as they stand today with what was ticked, to be looked up next year. */
export function SaveList({ year, season: { chosen, note }, dispatch }: SaveListProps) {
  const { t } = useTexts()
  const [open, setOpen] = useState(false)
  const write = useWrite('season-list.create')
  if (!open) {
    return (
      <button type="button" className="quiet-button" onClick={() => setOpen(true)}>
        {t('needs.save-list', { year: String(year), chosen: chosen.length })}
      </button>
    )
  }
  const done = () => {
    dispatch({ kind: 'list-saved' })
    setOpen(false)
  }
  return (
    <CardForm
      title={t('needs.save-list-title', { chosen: chosen.length })}
      level={2}
      sendWord={t('needs.save-this-list')}
      busy={write.isPending}
      error={write.error}
      onSend={() => write.mutate({ chosen: [...chosen], note }, { onSuccess: done })}
      onClose={() => setOpen(false)}
    >
      <TextField
        label={t('needs.note')}
        value={note}
        onChange={(typed) => dispatch({ kind: 'noted', note: typed })}
        hint={t('needs.list-note-hint')}
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
  const { t } = useTexts()
  const sowingDay = useRead('collection.get', {}).data?.settings.sowingDay ?? ''
  const form = useCardForm({ empty: { grade, sowingDay }, writes: 'settings.change', onClose })
  return (
    <CardForm
      title={t('needs.every-season')}
      level={2}
      sendWord={t('needs.save')}
      {...form.sending({ settings: form.typed })}
    >
      {form.selectField('grade', t('needs.regrow-for'), goalChoices(t))}
      {form.textField('sowingDay', t('needs.sowing-day'), {
        path: 'settings.sowingDay',
        hint: t('needs.sowing-day-hint'),
      })}
    </CardForm>
  )
}
