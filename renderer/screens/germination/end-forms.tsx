import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { CheckField } from '../../shared/table-form/check-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'

interface EndFormProps {
  readonly test: TestRecord
  readonly onClose: () => void
  /** The test is over: a count that is half typed has no place any more. */
  readonly onDone: () => void
}

/** Ends the test: which seed that did not germinate counts as alive, and the day. */
export function FinishForm({ test, onClose, onDone }: EndFormProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm(`finish/${test.testId}`, {
    hard: false,
    fresh: false,
    on: '',
    note: '',
  })
  const write = useWrite('germination.finish')
  const choice = { hard: typed.hard, fresh: typed.fresh }
  const seen = useRead('germination.get', { testId: test.testId, choice }, { keepLast: true }).data?.result
  const { hard = 0, fresh = 0 } = test.result?.tally ?? {}
  const done = () => {
    letGo()
    onDone()
    onClose()
  }
  return (
    <CardForm
      title="End the test"
      sendWord="Put the result in force"
      busy={write.isPending}
      error={write.error}
      shownAtField={['on', 'note']}
      onSend={() =>
        write.mutate(
          { testId: test.testId, on: typed.on || today, choice, note: typed.note },
          { onSuccess: done },
        )
      }
      onClose={onClose}
    >
      {hard > 0 && (
        <CheckField
          label={`count the ${hard} hard as alive`}
          step="hard"
          checked={typed.hard}
          onChange={(value) => change({ hard: value })}
        />
      )}
      {fresh > 0 && (
        <CheckField
          label={`count the ${fresh} dormant as alive`}
          step="fresh"
          checked={typed.fresh}
          onChange={(value) => change({ fresh: value })}
        />
      )}
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
      <TextField
        label="Note"
        step="note"
        size="record"
        value={typed.note}
        onChange={(note) => change({ note })}
        problem={problemAt(write.error, 'note')}
      />
      <p className="card-form-wide" role="status">
        {seen == null ? '' : `It will say: ${seen.words}.`}
      </p>
    </CardForm>
  )
}

/** Gives the test up, with the reason; seed that stayed dry may go back. */
export function CancelForm({ test, onClose, onDone }: EndFormProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm(`cancel/${test.testId}`, {
    reason: '',
    seedsBack: false,
    on: '',
  })
  const write = useWrite('germination.cancel')
  const done = () => {
    letGo()
    onDone()
    onClose()
  }
  const mayGoBack = test.fromStock && test.counts.length === 0
  return (
    <CardForm
      title="Give the test up"
      sendWord="Give it up"
      busy={write.isPending}
      error={write.error}
      shownAtField={['reason', 'on']}
      onSend={() =>
        write.mutate(
          {
            testId: test.testId,
            on: typed.on || today,
            reason: typed.reason,
            seedsBack: mayGoBack && typed.seedsBack,
          },
          { onSuccess: done },
        )
      }
      onClose={onClose}
    >
      <TextField
        label="Why"
        step="reason"
        size="record"
        value={typed.reason}
        onChange={(reason) => change({ reason })}
        problem={problemAt(write.error, 'reason')}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
      {mayGoBack && (
        <CheckField
          label={`the ${test.sown} ${test.unit.many} stayed dry and go back into the packet`}
          step="seeds-back"
          checked={typed.seedsBack}
          onChange={(seedsBack) => change({ seedsBack })}
          meaning="Only seed that never touched water. Moist seed spoils what it is kept with."
        />
      )}
    </CardForm>
  )
}
