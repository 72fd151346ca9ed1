import type { PopulationGoal } from '../../../db/domain/needs/population-goal.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { GRADE_CHOICES } from './grade-words.ts'

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
