import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { ReleaseForm } from '../../../shared/card-form/release-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { TextField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'

/** Keeps a lot from being handed out, or lets it go again once it was checked. */
export function QuarantineForm(props: ActionFormProps) {
  const { lot, draftName, onClose } = props
  if (!lot.quarantined) return <KeepBackForm {...props} />
  return (
    <ReleaseForm lotId={lot.lotId} reason={lot.quarantineReason} draftName={draftName} onClose={onClose} />
  )
}

function KeepBackForm({ lot, draftName, onClose }: ActionFormProps) {
  const form = useCardForm({ draftName, empty: { reason: '' }, writes: 'lot.quarantine', onClose })
  return (
    <CardForm
      title="Quarantine"
      sendWord="Keep it back"
      {...form.frame}
      onSend={() => form.send({ lotId: lot.lotId, reason: form.typed.reason })}
    >
      <TextField
        label="What is to be checked"
        size="record"
        {...form.field('reason')}
        hint="Until then nobody is handed any of it."
      />
    </CardForm>
  )
}
