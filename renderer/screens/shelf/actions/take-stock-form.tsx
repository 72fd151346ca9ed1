import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { AmountField } from '../../../shared/table-form/amount-field.tsx'
import { CheckField, TextField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'

const EMPTY = { found: '', nothing: false, reason: '', on: '' }

/** What was found by weighing or counting; the difference is written with its reason. */
export function TakeStockForm({ lot, draftName, onClose }: ActionFormProps) {
  const form = useCardForm({ draftName, empty: EMPTY, writes: 'lot.record-count', onClose })
  const { lotId } = lot
  const { found, nothing, reason } = form.typed
  return (
    <CardForm
      title="Take stock"
      sendWord="Write down what was found"
      {...form.frame}
      onSend={() => form.send({ lotId, on: form.dayOf('on'), found: nothing ? 'nothing' : found, reason })}
      onChoose={form.choice('found').onChange}
    >
      {!nothing && (
        <AmountField
          label={`Found (the book says ${lot.quantity.words})`}
          {...form.field('found')}
          lotId={lotId}
        />
      )}
      <TextField
        label="Why it differs"
        size="record"
        {...form.field('reason')}
        hint="such as: weighed on the better scale, spilled, never written down"
      />
      <DayField {...form.day('on')} />
      <CheckField label="nothing is left" {...form.check('nothing')} />
    </CardForm>
  )
}
