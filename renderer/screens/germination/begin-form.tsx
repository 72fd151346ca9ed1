import type { TestPlan } from '../../../db/contract/germination-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { capital } from '../../shared/format/words.ts'
import { CheckField } from '../../shared/table-form/fields.tsx'

interface BeginFormProps {
  readonly plan: TestPlan
  readonly onBegun: (testId: number) => void
}

/** Begins a test, filled in as is suggested for the lot: Enter begins it. */
export function BeginForm({ plan, onBegun }: BeginFormProps) {
  const { conditions, layout, unit } = plan
  const form = useCardForm({
    draftName: `begin/${plan.lotId}`,
    empty: {
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
    },
    writes: 'germination.start',
  })
  const { typed } = form
  const { follows } = plan
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
  const input = readable
    ? {
        lotId: plan.lotId,
        on: form.dayOf('on'),
        replicates: Array.from({ length: replicates }, () => each),
        medium: typed.medium,
        temperature: typed.temperature,
        firstDay,
        finalDay,
        fromStock: typed.fromStock,
        followsTestId: typed.nextStage ? (follows?.testId ?? null) : null,
        note: typed.note,
      }
    : null
  return (
    <CardForm
      title="Begin a test"
      sendWord="Begin the test"
      {...form.sending(input, ({ testId }) => onBegun(testId))}
    >
      {form.textField('replicates', 'Replicates', {
        hint: `1 to ${MOST_REPLICATES}: dishes or rolls side by side`,
      })}
      {form.textField('each', `${capital(unit.many)} in each`, {
        path: 'replicates.0',
        words: spentInWords(replicates, each, plan),
      })}
      {form.textField('medium', 'In', {
        hint: conditions.media.length > 1 ? `or ${conditions.media.slice(1).join(', ')}` : '',
      })}
      <div className="card-form-wide">{form.textField('temperature', 'Temperature')}</div>
      {form.textField('firstDay', 'First count on day', { hint: 'left empty: only the last one' })}
      {form.textField('finalDay', 'Last count on day')}
      {form.dayField('on')}
      {form.textField('note', 'Note')}
      {follows !== null && (
        <div className="card-form-wide">
          <CheckField
            label={`the next stage: ${follows.words}`}
            checked={typed.nextStage}
            onChange={(nextStage) =>
              form.change(
                nextStage ? { nextStage, replicates: '1', each: String(follows.groupSize) } : { nextStage },
              )
            }
          />
        </div>
      )}
      {form.checkField('fromStock', `the ${unit.many} come out of this lot`)}
    </CardForm>
  )
}

const MOST_REPLICATES = 16

function spentInWords(replicates: number | null, each: number | null, plan: TestPlan): string {
  if (replicates === null || each === null || plan.available === 0) return ''
  const spent = replicates * each
  return `${spent} of the ${plan.available}: ${Math.round((100 * spent) / plan.available)} % of the lot`
}
