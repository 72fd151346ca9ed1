import type { LotRole } from '../../../../db/contract/fields.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { AmountField } from '../../../shared/table-form/amount-field.tsx'
import { SelectField, TextField } from '../../../shared/table-form/fields.tsx'
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
export function SplitForm({ lot, draftName, onClose }: ActionFormProps) {
  const form = useCardForm({ draftName, empty: EMPTY, writes: 'lot.split', onClose })
  const { typed } = form
  const elsewhere = typed.role === 'duplicate-elsewhere'
  const send = () =>
    form.send({
      lotId: lot.lotId,
      ...typed,
      on: form.dayOf('on'),
      placeId: elsewhere ? null : typed.placeId,
      heldBy: elsewhere ? typed.heldBy : '',
    })
  return (
    <CardForm
      title="Split into a new lot"
      sendWord="Split it off"
      {...form.frame}
      onSend={send}
      onChoose={form.choice('amount').onChange}
    >
      <AmountField
        label={`How much (it holds ${lot.quantity.words})`}
        {...form.field('amount')}
        lotId={lot.lotId}
      />
      <SelectField label="The new lot is" size="record" options={ROLES} {...form.choice('role')} />
      {elsewhere ? (
        <TextField label="Who holds it" size="record" {...form.field('heldBy')} />
      ) : (
        <PlaceField label="Where it goes" none="nowhere yet" {...form.choice('placeId')} />
      )}
      <TextField label="Note" size="record" {...form.field('note')} />
      <DayField {...form.day('on')} />
    </CardForm>
  )
}
