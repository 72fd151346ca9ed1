import { useTexts } from '../format/use-texts.ts'
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
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: { checked: '' }, writes: 'lot.release' })
  const hint = reason === '' ? '' : t('card-form.kept-back-because', { reason })
  return (
    <CardForm
      title={t('card-form.release-title')}
      sendWord={t('card-form.release')}
      {...form.sending({ lotId, checked: form.typed.checked })}
    >
      {form.textField('checked', t('card-form.what-was-checked'), { hint })}
    </CardForm>
  )
}
