import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { ReleaseForm } from '../../../shared/card-form/release-form.tsx'
import { useKeptForm } from '../../../shared/card-form/use-kept-form.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import { TextField } from '../../../shared/table-form/text-field.tsx'
import type { ActionFormProps } from './action-form-props.ts'

/** Keeps a lot from being handed out, or lets it go again once it was checked. */
export function QuarantineForm(props: ActionFormProps) {
  const { lot, keptAs, onClose } = props
  if (!lot.quarantined) return <KeepBackForm {...props} />
  return <ReleaseForm lotId={lot.lotId} reason={lot.quarantineReason} keptAs={keptAs} onClose={onClose} />
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
