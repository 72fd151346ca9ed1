import { useWrite } from '../client/use-write.ts'
import { TextField } from '../table-form/text-field.tsx'
import { CardForm, problemAt } from './card-form.tsx'
import { useKeptForm } from './use-kept-form.ts'

interface ReleaseFormProps {
  readonly lotId: number
  /** Why it was kept back; may be empty. */
  readonly reason: string
  readonly keptAs: string
  readonly onClose: () => void
}

/** Lets a lot in quarantine go again, once it was checked. */
export function ReleaseForm({ lotId, reason, keptAs, onClose }: ReleaseFormProps) {
  const { typed, change, letGo } = useKeptForm(keptAs, { checked: '' })
  const write = useWrite('lot.release')
  const done = () => {
    letGo()
    onClose()
  }
  return (
    <CardForm
      title="Release from quarantine"
      sendWord="Release it"
      busy={write.isPending}
      error={write.error}
      shownAtField={['checked']}
      onSend={() => write.mutate({ lotId, checked: typed.checked }, { onSuccess: done })}
      onClose={onClose}
    >
      <TextField
        label="What was checked, and found"
        step="checked"
        size="record"
        value={typed.checked}
        onChange={(checked) => change({ checked })}
        {...(reason === '' ? {} : { hint: `It was kept back because: ${reason}` })}
        problem={problemAt(write.error, 'checked')}
      />
    </CardForm>
  )
}
