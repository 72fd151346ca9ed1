import { WaitingStep } from '../../../db/contract/gift-decision.ts'
import { waitingCaution, waitingInWords } from '../../../db/domain/intake/waiting.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { GiftFormProps } from './gift-form-props.ts'

const STEPS = WaitingStep.options.map((value) => ({ value, label: waitingInWords(value) }))

const EMPTY = { step: 'drying' as WaitingStep, due: '', note: '' }

/** One more thing that a gift has to wait for, with the day by which it should be done. */
export function WaitForm({ gift, draftName, onClose }: GiftFormProps) {
  const format = useFormat()
  const today = useToday()
  const form = useCardForm({ draftName, empty: EMPTY, writes: 'gift.record-step', onClose })
  const { step, due, note } = form.typed
  const caution = waitingCaution(step)
  return (
    <CardForm
      title="It has to wait"
      sendWord="Let it wait for this"
      {...form.frame}
      onSend={() =>
        form.send({
          giftId: gift.giftId,
          step,
          due: due === '' ? null : due,
          note,
          done: false,
          on: today,
        })
      }
    >
      <SelectField label="For what" size="record" options={STEPS} {...form.choice('step')} />
      <TextField
        label="Done by"
        type="date"
        size="record"
        {...form.field('due')}
        words={due === '' ? '' : format.day(due)}
        hint="May stay empty."
      />
      <TextField
        label="Note"
        size="record"
        {...form.field('note')}
        placeholder="who looks after it, where it lies"
      />
      {caution !== '' && <p className="caution card-form-wide">{caution}</p>}
    </CardForm>
  )
}
