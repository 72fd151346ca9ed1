import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { TextField } from '../../shared/table-form/fields.tsx'
import type { GiftFormProps } from './gift-form-props.ts'

/** Declines a gift; the reason stays in the book for the day when the donor asks. */
export function DeclineForm({ gift, draftName, onClose }: GiftFormProps) {
  const form = useCardForm({ draftName, empty: { reason: '' }, writes: 'gift.decline', onClose })
  return (
    <CardForm
      title="Decline it"
      sendWord="Decline this gift"
      {...form.frame}
      onSend={() => form.send({ giftId: gift.giftId, reason: form.typed.reason })}
    >
      <TextField
        label="Why"
        size="record"
        {...form.field('reason')}
        hint="The donor may ask one day. Kind words are kept too."
      />
    </CardForm>
  )
}
