import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { GiftFormProps } from './gift-form-props.ts'

/** Declines a gift; the reason stays in the book for the day when the donor asks. */
export function DeclineForm({ gift, keptAs, onClose }: GiftFormProps) {
  const { typed, change, letGo } = useKeptForm(keptAs, { reason: '' })
  const write = useWrite('gift.decline')
  const done = () => {
    letGo()
    onClose()
  }
  return (
    <CardForm
      title="Decline it"
      sendWord="Decline this gift"
      busy={write.isPending}
      error={write.error}
      shownAtField={['reason']}
      onSend={() => write.mutate({ giftId: gift.giftId, reason: typed.reason }, { onSuccess: done })}
      onClose={onClose}
    >
      <TextField
        label="Why"
        step="reason"
        size="record"
        value={typed.reason}
        onChange={(reason) => change({ reason })}
        hint="The donor may ask one day. Kind words are kept too."
        problem={problemAt(write.error, 'reason')}
      />
    </CardForm>
  )
}
