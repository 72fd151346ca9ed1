import type { LotRole } from '../../../../db/contract/fields.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { ROLE_WORDS } from '../../../shared/format/words.ts'
import { CheckField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'
import { PlaceField } from './place-field.tsx'

const NOT_COUNTED = { found: '', nothing: false, reason: '', on: '' }

/** What was found by weighing or counting; the difference is written with its reason. */
export function TakeStockForm({ lot: { lotId, quantity }, ...kept }: ActionFormProps) {
  const form = useCardForm({ ...kept, empty: NOT_COUNTED, writes: 'lot.record-count' })
  const { found, nothing, reason } = form.typed
  return (
    <CardForm
      title="Take stock"
      sendWord="Write down what was found"
      {...form.sending({ lotId, on: form.dayOf('on'), found: nothing ? 'nothing' : found, reason })}
      onChoose={form.choice('found').onChange}
    >
      {!nothing && form.amountField('found', `Found (the book says ${quantity.words})`, lotId)}
      {form.textField('reason', 'Why it differs', {
        hint: 'such as: weighed on the better scale, spilled, never written down',
      })}
      {form.dayField('on')}
      {form.checkField('nothing', 'nothing is left')}
    </CardForm>
  )
}

const KEPT = { amount: '', everything: false, reason: '', on: '' }

/** Seed that is thrown away, with the reason. */
export function DiscardForm({ lot: { lotId }, ...kept }: ActionFormProps) {
  const form = useCardForm({ ...kept, empty: KEPT, writes: 'lot.discard' })
  const { amount, everything, reason } = form.typed
  return (
    <CardForm
      title="Discard"
      sendWord={everything ? 'Discard the whole lot' : 'Discard'}
      {...form.sending({ lotId, on: form.dayOf('on'), amount: everything ? 'everything' : amount, reason })}
      onChoose={form.choice('amount').onChange}
    >
      {!everything && form.amountField('amount', 'How much', lotId)}
      {form.textField('reason', 'Why', { hint: 'such as: mould, weevils, too old to sprout' })}
      {form.dayField('on')}
      {form.checkField('everything', 'everything in this lot')}
    </CardForm>
  )
}

const ROLES: readonly { readonly value: LotRole; readonly label: string }[] = [
  { value: 'reserve', label: 'reserve, kept for regrowing' },
  { value: 'working', label: 'working stock, handed out' },
  { value: 'reference', label: 'reference sample, kept to compare' },
  { value: 'duplicate-elsewhere', label: 'duplicate held elsewhere' },
]

const NOT_SPLIT = {
  amount: '',
  role: 'reserve' as LotRole,
  placeId: null as number | null,
  heldBy: '',
  note: '',
  on: '',
}

/** Moves part of the lot into a new lot with a role of its own. */
export function SplitForm({ lot: { lotId, quantity }, ...kept }: ActionFormProps) {
  const form = useCardForm({ ...kept, empty: NOT_SPLIT, writes: 'lot.split' })
  const { typed } = form
  const place =
    typed.role === 'duplicate-elsewhere'
      ? { placeId: null, heldBy: typed.heldBy }
      : { placeId: typed.placeId, heldBy: '' }
  return (
    <CardForm
      title="Split into a new lot"
      sendWord="Split it off"
      {...form.sending({ lotId, ...typed, on: form.dayOf('on'), ...place })}
      onChoose={form.choice('amount').onChange}
    >
      {form.amountField('amount', `How much (it holds ${quantity.words})`, lotId)}
      {form.selectField('role', 'The new lot is', ROLES)}
      {typed.role === 'duplicate-elsewhere' ? (
        form.textField('heldBy', 'Who holds it')
      ) : (
        <PlaceField label="Where it goes" none="nowhere yet" {...form.choice('placeId')} />
      )}
      {form.textField('note', 'Note')}
      {form.dayField('on')}
    </CardForm>
  )
}

const NOTHING_POURED = { from: [] as readonly number[], note: '', on: '' }

/** Pours other lots of the accession into this one. */
export function MergeForm({ lot, ...kept }: ActionFormProps) {
  const form = useCardForm({ ...kept, empty: NOTHING_POURED, writes: 'lot.merge' })
  const { from, note } = form.typed
  const input = { intoLotId: lot.lotId, fromLotIds: [...from], on: form.dayOf('on'), note }
  return (
    <CardForm
      title={`Pour into ${lot.lotNumber}`}
      sendWord="Pour together"
      {...form.sending(from.length === 0 ? null : input)}
    >
      <fieldset className="stack-2 boxed card-form-wide">
        <legend>Lots that are poured in and left empty</legend>
        {lot.siblings.map(({ lotId, lotNumber, role, harvest, quantity }) => (
          <CheckField
            key={lotId}
            label={`${lotNumber}, ${ROLE_WORDS[role]}, ${harvest}: ${quantity.words}`}
            checked={from.includes(lotId)}
            onChange={(ticked) =>
              form.change({ from: ticked ? [...from, lotId] : from.filter((each) => each !== lotId) })
            }
          />
        ))}
      </fieldset>
      {form.textField('note', 'Note')}
      {form.dayField('on')}
    </CardForm>
  )
}
