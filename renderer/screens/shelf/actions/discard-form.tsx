import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../../shared/card-form/use-today.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import { AmountField } from '../../../shared/table-form/amount-field.tsx'
import { CheckField } from '../../../shared/table-form/check-field.tsx'
import { TextField } from '../../../shared/table-form/text-field.tsx'
import type { ActionFormProps } from './action-form-props.ts'

/** Seed that is thrown away, with the reason. */
export function DiscardForm({ lot, keptAs, onClose }: ActionFormProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm(keptAs, { amount: '', everything: false, reason: '', on: '' })
  const write = useWrite('lot.discard')
  const send = () =>
    write.mutate(
      {
        lotId: lot.lotId,
        on: typed.on || today,
        amount: typed.everything ? 'everything' : typed.amount,
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
      title="Discard"
      sendWord={typed.everything ? 'Discard the whole lot' : 'Discard'}
      busy={write.isPending}
      error={write.error}
      shownAtField={['amount', 'reason', 'on']}
      onSend={send}
      onClose={onClose}
      onChoose={(amount) => change({ amount })}
    >
      {!typed.everything && (
        <AmountField
          label="How much"
          value={typed.amount}
          onChange={(amount) => change({ amount })}
          lotId={lot.lotId}
          problem={problemAt(write.error, 'amount')}
        />
      )}
      <TextField
        label="Why"
        step="reason"
        size="record"
        value={typed.reason}
        onChange={(reason) => change({ reason })}
        hint="such as: mould, weevils, too old to sprout"
        problem={problemAt(write.error, 'reason')}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
      <CheckField
        label="everything in this lot"
        step="everything"
        checked={typed.everything}
        onChange={(everything) => change({ everything })}
      />
    </CardForm>
  )
}
