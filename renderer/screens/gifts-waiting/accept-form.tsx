import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { GiftFormProps } from './gift-form-props.ts'

const NO_PLACE = { value: '', label: 'decided later' }

/** Takes a gift in: it gets its number. With steps still open it wants a reason. */
export function AcceptForm({ gift, keptAs, onClose }: GiftFormProps) {
  const today = useToday()
  const places = useRead('place.list', {}).data?.places ?? []
  const { variety, placeId } = gift.gift
  const { typed, change, letGo } = useKeptForm(keptAs, {
    amount: gift.amount,
    place: placeId === null ? '' : String(placeId),
    on: '',
    reason: '',
  })
  const write = useWrite('gift.accept')
  const open = gift.waitsFor.map(({ words }) => words).join(' and ')
  const changed = typed.amount !== gift.amount || typed.place !== (placeId === null ? '' : String(placeId))
  const send = () =>
    write.mutate(
      {
        giftId: gift.giftId,
        receivedOn: typed.on || today,
        reason: open === '' ? '' : typed.reason,
        ...(changed
          ? {
              gift: {
                ...gift.gift,
                amount: typed.amount,
                placeId: typed.place === '' ? null : Number(typed.place),
              },
            }
          : {}),
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
      title="Take it in"
      sendWord="Take it in"
      busy={write.isPending}
      error={write.error}
      shownAtField={['gift.amount', 'receivedOn', 'reason']}
      onSend={send}
      onClose={onClose}
      onChoose={(amount) => change({ amount })}
    >
      {open !== '' && (
        <div className="card-form-wide">
          <TextField
            label="Why with steps still open?"
            step="reason"
            size="record"
            value={typed.reason}
            onChange={(reason) => change({ reason })}
            hint={`Still open: ${open}. The reason is kept in the book.`}
            problem={problemAt(write.error, 'reason')}
          />
        </div>
      )}
      <AmountField
        label="Amount now"
        step="amount"
        value={typed.amount}
        onChange={(amount) => change({ amount })}
        cropId={
          'newVariety' in variety && 'cropId' in variety.newVariety ? variety.newVariety.cropId : undefined
        }
        problem={problemAt(write.error, 'gift.amount')}
      />
      <SelectField
        label="Goes to"
        step="place"
        size="record"
        value={typed.place}
        options={[NO_PLACE, ...places.map((each) => ({ value: String(each.placeId), label: each.path }))]}
        onChange={(place) => change({ place })}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'receivedOn')}
      />
    </CardForm>
  )
}
