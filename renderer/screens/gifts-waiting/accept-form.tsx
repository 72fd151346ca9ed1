import { CardForm } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import type { GiftFormProps } from './gift-form-props.ts'

const NO_PLACE = { value: '', label: 'decided later' }

/** Takes a gift in: it gets its number. With steps still open it wants a reason. */
export function AcceptForm({ gift, draftName, onClose }: GiftFormProps) {
  const places = useRead('place.list', {}).data?.places ?? []
  const { variety, placeId } = gift.gift
  const form = useCardForm({
    draftName,
    empty: { amount: gift.amount, place: placeId === null ? '' : String(placeId), on: '', reason: '' },
    writes: 'gift.accept',
    onClose,
  })
  const { amount, place, reason } = form.typed
  const open = gift.waitsFor.map(({ words }) => words).join(' and ')
  const changed = amount !== gift.amount || place !== (placeId === null ? '' : String(placeId))
  const send = () =>
    form.send({
      giftId: gift.giftId,
      receivedOn: form.dayOf('on'),
      reason: open === '' ? '' : reason,
      ...(changed ? { gift: { ...gift.gift, amount, placeId: place === '' ? null : Number(place) } } : {}),
    })
  return (
    <CardForm
      title="Take it in"
      sendWord="Take it in"
      {...form.frame}
      onSend={send}
      onChoose={form.choice('amount').onChange}
    >
      {open !== '' && (
        <div className="card-form-wide">
          <TextField
            label="Why with steps still open?"
            size="record"
            {...form.field('reason')}
            hint={`Still open: ${open}. The reason is kept in the book.`}
          />
        </div>
      )}
      <AmountField
        label="Amount now"
        {...form.field('amount', 'gift.amount')}
        cropId={
          'newVariety' in variety && 'cropId' in variety.newVariety ? variety.newVariety.cropId : undefined
        }
      />
      <SelectField
        label="Goes to"
        size="record"
        options={[NO_PLACE, ...places.map((each) => ({ value: String(each.placeId), label: each.path }))]}
        {...form.choice('place')}
      />
      <DayField {...form.day('on', 'receivedOn')} />
    </CardForm>
  )
}
