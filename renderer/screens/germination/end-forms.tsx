import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { CheckField, TextField } from '../../shared/table-form/fields.tsx'

interface EndFormProps {
  readonly test: TestRecord
  readonly onClose: () => void
  /** The test is over: a count that is half typed has no place any more. */
  readonly onDone: () => void
}

/** Ends the test: which seed that did not germinate counts as alive, and the day. */
export function FinishForm({ test, onClose, onDone }: EndFormProps) {
  const form = useCardForm({
    draftName: `finish/${test.testId}`,
    empty: { hard: false, fresh: false, on: '', note: '' },
    writes: 'germination.finish',
    onClose,
  })
  const choice = { hard: form.typed.hard, fresh: form.typed.fresh }
  const seen = useRead('germination.get', { testId: test.testId, choice }, { keepLast: true }).data?.result
  const { hard = 0, fresh = 0 } = test.result?.tally ?? {}
  return (
    <CardForm
      title="End the test"
      sendWord="Put the result in force"
      {...form.frame}
      onSend={() =>
        form.send({ testId: test.testId, on: form.dayOf('on'), choice, note: form.typed.note }, () => {
          onDone()
          onClose()
        })
      }
    >
      {hard > 0 && <CheckField label={`count the ${hard} hard as alive`} {...form.check('hard')} />}
      {fresh > 0 && <CheckField label={`count the ${fresh} dormant as alive`} {...form.check('fresh')} />}
      <DayField {...form.day('on')} />
      <TextField label="Note" size="record" {...form.field('note')} />
      <p className="card-form-wide" role="status">
        {seen == null ? '' : `It will say: ${seen.words}.`}
      </p>
    </CardForm>
  )
}

/** Gives the test up, with the reason; seed that stayed dry may go back. */
export function CancelForm({ test, onClose, onDone }: EndFormProps) {
  const form = useCardForm({
    draftName: `cancel/${test.testId}`,
    empty: { reason: '', seedsBack: false, on: '' },
    writes: 'germination.cancel',
    onClose,
  })
  const mayGoBack = test.fromStock && test.counts.length === 0
  const send = () => {
    const { reason, seedsBack } = form.typed
    form.send(
      { testId: test.testId, on: form.dayOf('on'), reason, seedsBack: mayGoBack && seedsBack },
      () => {
        onDone()
        onClose()
      },
    )
  }
  return (
    <CardForm title="Give the test up" sendWord="Give it up" {...form.frame} onSend={send}>
      <TextField label="Why" size="record" {...form.field('reason')} />
      <DayField {...form.day('on')} />
      {mayGoBack && (
        <CheckField
          label={`the ${test.sown} ${test.unit.many} stayed dry and go back into the packet`}
          {...form.check('seedsBack')}
          meaning="Only seed that never touched water. Moist seed spoils what it is kept with."
        />
      )}
    </CardForm>
  )
}
