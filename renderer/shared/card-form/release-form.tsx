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
export function ReleaseForm({ lotId, reason, ...kept }: ReleaseFormProps) {
  const form = useCardForm({ ...kept, empty: { checked: '' }, writes: 'lot.release' })
  const hint = reason === '' ? '' : `It was kept back because: ${reason}`
  return (
    <CardForm
      title="Release from quarantine"
      sendWord="Release it"
      {...form.sending({ lotId, checked: form.typed.checked })}
    >
      {form.textField('checked', 'What was checked, and found', { hint })}
    </CardForm>
  )
}
