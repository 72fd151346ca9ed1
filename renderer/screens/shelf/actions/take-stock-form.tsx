import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../../shared/card-form/use-today.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import { AmountField } from '../../../shared/table-form/amount-field.tsx'
import { CheckField } from '../../../shared/table-form/check-field.tsx'
import { TextField } from '../../../shared/table-form/text-field.tsx'
import type { ActionFormProps } from './action-form-props.ts'

/** What was found by weighing or counting; the difference is written with its reason. */
export function TakeStockForm({ lot, keptAs, onClose }: ActionFormProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm(keptAs, { found: '', nothing: false, reason: '', on: '' })
  const write = useWrite('lot.take-stock')
  const send = () =>
    write.mutate(
      {
        lotId: lot.lotId,
        on: typed.on || today,
        found: typed.nothing ? 'nothing' : typed.found,
        reason: typed.reason,
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
      title="Take stock"
      sendWord="Write down what was found"
      busy={write.isPending}
      error={write.error}
      shownAtField={['found', 'reason', 'on']}
      onSend={send}
      onClose={onClose}
      onChoose={(found) => change({ found })}
    >
      {!typed.nothing && (
        <AmountField
          label={`Found (the book says ${lot.quantity.words})`}
          value={typed.found}
          onChange={(found) => change({ found })}
          lotId={lot.lotId}
          problem={problemAt(write.error, 'found')}
        />
      )}
      <TextField
        label="Why it differs"
        step="reason"
        size="record"
        value={typed.reason}
        onChange={(reason) => change({ reason })}
        hint="such as: weighed on the better scale, spilled, never written down"
        problem={problemAt(write.error, 'reason')}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
      <CheckField
        label="nothing is left"
        step="nothing"
        checked={typed.nothing}
        onChange={(nothing) => change({ nothing })}
      />
    </CardForm>
  )
}
