import type { CallInput } from '../../../db/contract/contract.ts'
import { RECALL_OUTCOMES, type RecallOutcome } from '../../../db/domain/shared/closed-sets.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useTexts } from '../../shared/format/use-texts.ts'

export type OutcomeOf = CallInput<'recall.record-outcome'>['of']

interface OutcomeFormProps {
  readonly recallId: number
  readonly of: OutcomeOf
  /** What it is noted of. */
  readonly name: string
  readonly onClose: () => void
}

/** What came of a recall for a lot, a person, or as a whole. */
export function OutcomeForm({ recallId, of, name, onClose }: OutcomeFormProps) {
  const { t } = useTexts()
  const form = useCardForm({
    draftName: `recall/${recallId}/${JSON.stringify(of)}`,
    empty: { outcome: 'told' as RecallOutcome, on: '', note: '' },
    writes: 'recall.record-outcome',
    onClose,
  })
  const { outcome, note } = form.typed
  return (
    <CardForm
      title={t('recall.outcome', { name })}
      sendWord={t('recall.keep-outcome')}
      {...form.sending({ recallId, of, outcome, note, on: form.dayOf('on') })}
    >
      {form.selectField(
        'outcome',
        t('recall.outcome-kind'),
        RECALL_OUTCOMES.map((value) => ({ value, label: t(`recall.outcome-${value}`) })),
      )}
      {form.dayField('on')}
      {form.textField('note', t('recall.outcome-note'))}
    </CardForm>
  )
}
