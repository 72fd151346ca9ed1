import type { TestPlan } from '../../../db/contract/germination-operations.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { capital } from '../../shared/format/words.ts'
import { CheckField } from '../../shared/table-form/check-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'

interface BeginFormProps {
  readonly plan: TestPlan
  readonly onBegun: (testId: number) => void
}

/** Begins a test, filled in as is suggested for the lot: Enter begins it. */
export function BeginForm({ plan, onBegun }: BeginFormProps) {
  const { conditions, layout, unit } = plan
  const today = useToday()
  const { typed, change, letGo } = useKeptForm(`begin/${plan.lotId}`, {
    replicates: String(Math.max(1, layout.length)),
    each: String(layout[0] ?? ''),
    medium: conditions.media[0] ?? '',
    temperature: conditions.temperature,
    firstDay: conditions.firstDay === null ? '' : String(conditions.firstDay),
    finalDay: String(conditions.finalDay),
    fromStock: true,
    nextStage: false,
    note: '',
    on: '',
  })
  const { follows } = plan
  const write = useWrite('germination.begin')
  const replicates = wholeNumber(typed.replicates)
  const each = wholeNumber(typed.each)
  const finalDay = wholeNumber(typed.finalDay)
  const firstDay = typed.firstDay.trim() === '' ? null : wholeNumber(typed.firstDay)
  const readable =
    replicates !== null &&
    replicates <= MOST_REPLICATES &&
    each !== null &&
    finalDay !== null &&
    (firstDay !== null || typed.firstDay.trim() === '')
  const send = () => {
    if (!readable) return
    write.mutate(
      {
        lotId: plan.lotId,
        on: typed.on || today,
        replicates: Array.from({ length: replicates }, () => each),
        medium: typed.medium,
        temperature: typed.temperature,
        firstDay,
        finalDay,
        fromStock: typed.fromStock,
        followsTestId: typed.nextStage ? (follows?.testId ?? null) : null,
        note: typed.note,
      },
      {
        onSuccess: ({ testId }) => {
          letGo()
          onBegun(testId)
        },
      },
    )
  }
  return (
    <CardForm
      title="Begin a test"
      sendWord="Begin the test"
      busy={write.isPending || !readable}
      error={write.error}
      shownAtField={SHOWN}
      onSend={send}
    >
      <TextField
        label="Replicates"
        step="replicates"
        size="record"
        value={typed.replicates}
        onChange={(value) => change({ replicates: value })}
        hint={`1 to ${MOST_REPLICATES}: dishes or rolls side by side`}
        problem={problemAt(write.error, 'replicates')}
      />
      <TextField
        label={`${capital(unit.many)} in each`}
        step="each"
        size="record"
        value={typed.each}
        onChange={(value) => change({ each: value })}
        words={spentInWords(replicates, each, plan)}
        problem={problemAt(write.error, 'replicates.0')}
      />
      <TextField
        label="In"
        step="medium"
        size="record"
        value={typed.medium}
        onChange={(medium) => change({ medium })}
        hint={conditions.media.length > 1 ? `or ${conditions.media.slice(1).join(', ')}` : ''}
        problem={problemAt(write.error, 'medium')}
      />
      <TextField
        label="Temperature"
        step="temperature"
        size="record"
        value={typed.temperature}
        onChange={(temperature) => change({ temperature })}
        words={typed.temperature.length > FITS_FIELD ? typed.temperature : ''}
        problem={problemAt(write.error, 'temperature')}
      />
      <TextField
        label="First count on day"
        step="first-day"
        size="record"
        value={typed.firstDay}
        onChange={(value) => change({ firstDay: value })}
        hint="left empty: only the last one"
        problem={problemAt(write.error, 'firstDay')}
      />
      <TextField
        label="Last count on day"
        step="final-day"
        size="record"
        value={typed.finalDay}
        onChange={(value) => change({ finalDay: value })}
        problem={problemAt(write.error, 'finalDay')}
      />
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
      {follows !== null && (
        <div className="card-form-wide">
          <CheckField
            label={`the next stage: ${follows.words}`}
            step="next-stage"
            checked={typed.nextStage}
            onChange={(nextStage) =>
              change(
                nextStage ? { nextStage, replicates: '1', each: String(follows.groupSize) } : { nextStage },
              )
            }
          />
        </div>
      )}
      <CheckField
        label={`the ${unit.many} come out of this lot`}
        step="from-stock"
        checked={typed.fromStock}
        onChange={(fromStock) => change({ fromStock })}
      />
    </CardForm>
  )
}

const MOST_REPLICATES = 16
/** Letters that a field of the card shows at once; more are said beneath. */
const FITS_FIELD = 30
const SHOWN = ['replicates', 'replicates.0', 'medium', 'temperature', 'firstDay', 'finalDay', 'on', 'note']

function spentInWords(replicates: number | null, each: number | null, plan: TestPlan): string {
  if (replicates === null || each === null || plan.available === 0) return ''
  const spent = replicates * each
  return `${spent} of the ${plan.available}: ${Math.round((100 * spent) / plan.available)} % of the lot`
}
