import type { LotRole } from '../../../../db/contract/fields.ts'
import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../../shared/card-form/use-today.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import { AmountField } from '../../../shared/table-form/amount-field.tsx'
import { SelectField } from '../../../shared/table-form/select-field.tsx'
import { TextField } from '../../../shared/table-form/text-field.tsx'
import type { ActionFormProps } from './action-form-props.ts'
import { PlaceField } from './place-field.tsx'

interface Typed {
  readonly amount: string
  readonly role: LotRole
  readonly placeId: number | null
  readonly heldBy: string
  readonly note: string
  readonly on: string
}

const EMPTY: Typed = { amount: '', role: 'reserve', placeId: null, heldBy: '', note: '', on: '' }

const ROLES: readonly { readonly value: LotRole; readonly label: string }[] = [
  { value: 'reserve', label: 'reserve, kept for regrowing' },
  { value: 'working', label: 'working stock, handed out' },
  { value: 'reference', label: 'reference sample, kept to compare' },
  { value: 'duplicate-elsewhere', label: 'duplicate held elsewhere' },
]

/** Moves part of the lot into a new lot with a role of its own. */
export function SplitForm({ lot, keptAs, onClose }: ActionFormProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm(keptAs, EMPTY)
  const write = useWrite('lot.split')
  const elsewhere = typed.role === 'duplicate-elsewhere'
  const send = () =>
    write.mutate(
      {
        lotId: lot.lotId,
        ...typed,
        on: typed.on || today,
        placeId: elsewhere ? null : typed.placeId,
        heldBy: elsewhere ? typed.heldBy : '',
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
      title="Split into a new lot"
      sendWord="Split it off"
      busy={write.isPending}
      error={write.error}
      shownAtField={['amount', 'heldBy', 'note', 'on']}
      onSend={send}
      onClose={onClose}
      onChoose={(amount) => change({ amount })}
    >
      <AmountField
        label={`How much (it holds ${lot.quantity.words})`}
        value={typed.amount}
        onChange={(amount) => change({ amount })}
        lotId={lot.lotId}
        problem={problemAt(write.error, 'amount')}
      />
      <SelectField
        label="The new lot is"
        size="record"
        value={typed.role}
        options={ROLES}
        onChange={(role) => change({ role })}
      />
      {elsewhere ? (
        <TextField
          label="Who holds it"
          step="held-by"
          size="record"
          value={typed.heldBy}
          onChange={(heldBy) => change({ heldBy })}
          problem={problemAt(write.error, 'heldBy')}
        />
      ) : (
        <PlaceField
          label="Where it goes"
          none="nowhere yet"
          value={typed.placeId}
          onChange={(placeId) => change({ placeId })}
        />
      )}
      <TextField
        label="Note"
        step="note"
        size="record"
        value={typed.note}
        onChange={(note) => change({ note })}
        problem={problemAt(write.error, 'note')}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
    </CardForm>
  )
}
