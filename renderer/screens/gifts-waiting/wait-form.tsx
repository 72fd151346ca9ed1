import { WaitingStep } from '../../../db/contract/gift-decision.ts'
import { waitingCaution, waitingInWords } from '../../../db/domain/intake/waiting.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { GiftFormProps } from './gift-form-props.ts'

const STEPS = WaitingStep.options.map((value) => ({ value, label: waitingInWords(value) }))

/** One more thing that a gift has to wait for, with the day by which it should be done. */
export function WaitForm({ gift, keptAs, onClose }: GiftFormProps) {
  const format = useFormat()
  const today = useToday()
  const { typed, change, letGo } = useKeptForm<{ step: WaitingStep; due: string; note: string }>(keptAs, {
    step: 'drying',
    due: '',
    note: '',
  })
  const write = useWrite('gift.note-step')
  const caution = waitingCaution(typed.step)
  const send = () =>
    write.mutate(
      {
        giftId: gift.giftId,
        step: typed.step,
        due: typed.due === '' ? null : typed.due,
        note: typed.note,
        done: false,
        on: today,
      },
      {
        onSuccess: () => {
          letGo()
          onClose()
        },
      },
    )
  return (
    <CardForm
      title="It has to wait"
      sendWord="Let it wait for this"
      busy={write.isPending}
      error={write.error}
      shownAtField={['due', 'note']}
      onSend={send}
      onClose={onClose}
    >
      <SelectField
        label="For what"
        step="step"
        size="record"
        value={typed.step}
        options={STEPS}
        onChange={(step) => change({ step })}
      />
      <TextField
        label="Done by"
        step="due"
        type="date"
        size="record"
        value={typed.due}
        words={typed.due === '' ? '' : format.day(typed.due)}
        hint="May stay empty."
        onChange={(due) => change({ due })}
        problem={problemAt(write.error, 'due')}
      />
      <TextField
        label="Note"
        step="note"
        size="record"
        value={typed.note}
        onChange={(note) => change({ note })}
        placeholder="who looks after it, where it lies"
        problem={problemAt(write.error, 'note')}
      />
      {caution !== '' && <p className="gift-caution card-form-wide">{caution}</p>}
    </CardForm>
  )
}
