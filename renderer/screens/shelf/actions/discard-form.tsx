import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { AmountField } from '../../../shared/table-form/amount-field.tsx'
import { CheckField, TextField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'

const EMPTY = { amount: '', everything: false, reason: '', on: '' }

/** Seed that is thrown away, with the reason. */
export function DiscardForm({ lot, draftName, onClose }: ActionFormProps) {
  const form = useCardForm({ draftName, empty: EMPTY, writes: 'lot.discard', onClose })
  const { lotId } = lot
  const { amount, everything, reason } = form.typed
  return (
    <CardForm
      title="Discard"
      sendWord={everything ? 'Discard the whole lot' : 'Discard'}
      {...form.frame}
      onSend={() =>
        form.send({ lotId, on: form.dayOf('on'), amount: everything ? 'everything' : amount, reason })
      }
      onChoose={form.choice('amount').onChange}
    >
      {!everything && <AmountField label="How much" {...form.field('amount')} lotId={lotId} />}
      <TextField
        label="Why"
        size="record"
        {...form.field('reason')}
        hint="such as: mould, weevils, too old to sprout"
      />
      <DayField {...form.day('on')} />
      <CheckField label="everything in this lot" {...form.check('everything')} />
    </CardForm>
  )
}
