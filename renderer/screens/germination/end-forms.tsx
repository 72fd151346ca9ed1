import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { seedsOf } from '../../shared/format/seeds-of.ts'
import { useTexts } from '../../shared/format/use-texts.ts'

interface EndFormProps {
  readonly test: TestRecord
  readonly onClose: () => void
  /** The test is over: a count that is half typed has no place any more. */
  readonly onDone: () => void
}

/** Ends the test: which seed that did not germinate counts as alive, and the day. */
export function FinishForm({ test, onClose, onDone }: EndFormProps) {
  const { t } = useTexts()
  const { testId } = test
  const form = useCardForm({
    draftName: `finish/${testId}`,
    empty: { hard: false, fresh: false, on: '', note: '' },
    writes: 'germination.finish',
    onClose,
  })
  const choice = { hard: form.typed.hard, fresh: form.typed.fresh }
  const seen = useRead('germination.get', { testId, choice }, { keepLast: true }).data?.result
  const { hard = 0, fresh = 0 } = test.result?.tally ?? {}
  return (
    <CardForm
      title={t('germination.end')}
      sendWord={t('germination.save-result')}
      {...form.sending({ testId, on: form.dayOf('on'), choice, note: form.typed.note }, () => {
        onDone()
        onClose()
      })}
    >
      {hard > 0 && form.checkField('hard', t('germination.hard-alive', { hard }))}
      {fresh > 0 && form.checkField('fresh', t('germination.fresh-alive', { fresh }))}
      {form.dayField('on')}
      {form.textField('note', t('germination.note'))}
      <p className="card-form-wide" role="status">
        {seen == null ? '' : t('germination.will-say', { result: seen.words })}
      </p>
    </CardForm>
  )
}

/** Gives the test up, with the reason; seed that stayed dry may go back. */
export function CancelForm({ test, onClose, onDone }: EndFormProps) {
  const { t } = useTexts()
  const { testId } = test
  const form = useCardForm({
    draftName: `cancel/${testId}`,
    empty: { reason: '', seedsBack: false, on: '' },
    writes: 'germination.cancel',
    onClose,
  })
  const mayGoBack = test.fromStock && test.counts.length === 0
  const { reason, seedsBack } = form.typed
  const input = { testId, on: form.dayOf('on'), reason, seedsBack: mayGoBack && seedsBack }
  return (
    <CardForm
      title={t('germination.give-up-title')}
      sendWord={t('germination.give-up')}
      {...form.sending(input, () => {
        onDone()
        onClose()
      })}
    >
      {form.textField('reason', t('germination.give-up-why'))}
      {form.dayField('on')}
      {mayGoBack &&
        form.checkField(
          'seedsBack',
          t('germination.seeds-back', { seeds: seedsOf(test.sown, test.unit) }),
          t('germination.seeds-back-hint'),
        )}
    </CardForm>
  )
}
