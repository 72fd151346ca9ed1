import { TextField } from '../table-form/fields.tsx'
import { CardForm } from './card-form.tsx'
import { useCardForm } from './use-card-form.ts'

interface ReleaseFormProps {
  readonly lotId: number
  /** Why it was kept back; may be empty. */
  readonly reason: string
  readonly draftName: string
  readonly onClose: () => void
}

/** Lets a lot in quarantine go again, once it was checked. */
export function ReleaseForm({ lotId, reason, draftName, onClose }: ReleaseFormProps) {
  const form = useCardForm({ draftName, empty: { checked: '' }, writes: 'lot.release', onClose })
  return (
    <CardForm
      title="Release from quarantine"
      sendWord="Release it"
      {...form.frame}
      onSend={() => form.send({ lotId, checked: form.typed.checked })}
    >
      <TextField
        label="What was checked, and found"
        size="record"
        {...form.field('checked')}
        {...(reason === '' ? {} : { hint: `It was kept back because: ${reason}` })}
      />
    </CardForm>
  )
}
