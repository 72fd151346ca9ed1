import { useState } from 'react'
import type { PopulationGoal } from '../../../db/domain/needs/population-goal.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { GRADE_CHOICES } from './grade-words.ts'

interface SeasonFormProps {
  readonly grade: PopulationGoal
  readonly onClose: () => void
}

/** What regrowings are for in this library, and the day on which a season is sown. */
export function SeasonForm({ grade, onClose }: SeasonFormProps) {
  const about = useRead('collection.get', {})
  const kept = about.data?.settings.sowingDay ?? ''
  const [typed, setTyped] = useState<{ grade: PopulationGoal; sowingDay: string | null }>({
    grade,
    sowingDay: null,
  })
  const write = useWrite('settings.change')
  return (
    <CardForm
      title="Every season"
      level={2}
      sendWord="Keep this"
      busy={write.isPending || about.data === undefined}
      error={write.error}
      shownAtField={['settings.sowingDay']}
      onSend={() =>
        write.mutate(
          { settings: { grade: typed.grade, sowingDay: typed.sowingDay ?? kept } },
          { onSuccess: onClose },
        )
      }
      onClose={onClose}
    >
      <SelectField
        label="Regrow for"
        step="grade"
        size="record"
        value={typed.grade}
        options={GRADE_CHOICES}
        onChange={(next) => setTyped({ ...typed, grade: next })}
      />
      <TextField
        label="Sown about, month-day"
        step="sowingDay"
        size="record"
        value={typed.sowingDay ?? kept}
        onChange={(sowingDay) => setTyped({ ...typed, sowingDay })}
        hint="04-15 is the fifteenth of April"
        problem={problemAt(write.error, 'settings.sowingDay')}
      />
    </CardForm>
  )
}
