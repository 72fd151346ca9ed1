import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { useWrite } from '../../../shared/client/use-write.ts'
import { TextField } from '../../../shared/table-form/text-field.tsx'
import { useKeptForm } from '../use-kept-form.ts'
import type { ActionFormProps } from './lot-actions.tsx'

/** Keeps a lot from being handed out, or lets it go again once it was checked. */
export function QuarantineForm(props: ActionFormProps) {
  return props.lot.quarantined ? <ReleaseForm {...props} /> : <KeepBackForm {...props} />
}

function KeepBackForm({ lot, keptAs, onClose }: ActionFormProps) {
  const { typed, change, letGo } = useKeptForm(keptAs, { reason: '' })
  const write = useWrite('lot.quarantine')
  const done = () => {
    letGo()
    onClose()
  }
  return (
    <CardForm
      title="Quarantine"
      sendWord="Keep it back"
      busy={write.isPending}
      error={write.error}
      shownAtField={['reason']}
      onSend={() => write.mutate({ lotId: lot.lotId, reason: typed.reason }, { onSuccess: done })}
      onClose={onClose}
    >
      <TextField
        label="What is to be checked"
        step="reason"
        size="record"
        value={typed.reason}
        onChange={(reason) => change({ reason })}
        hint="Until then nobody is handed any of it."
        problem={problemAt(write.error, 'reason')}
      />
    </CardForm>
  )
}

function ReleaseForm({ lot, keptAs, onClose }: ActionFormProps) {
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
      onSend={() => write.mutate({ lotId: lot.lotId, checked: typed.checked }, { onSuccess: done })}
      onClose={onClose}
    >
      <TextField
        label="What was checked, and found"
        step="checked"
        size="record"
        value={typed.checked}
        onChange={(checked) => change({ checked })}
        {...(lot.quarantineReason === ''
          ? {}
          : { hint: `It was kept back because: ${lot.quarantineReason}` })}
        problem={problemAt(write.error, 'checked')}
      />
    </CardForm>
  )
}
