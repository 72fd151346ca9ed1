import type { TestPlan } from '../../../db/contract/germination-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { CheckField } from '../../shared/table-form/fields.tsx'

interface BeginFormProps {
  readonly plan: TestPlan
  readonly onBegun: (testId: number) => void
}

/** Begins a test, filled in as is suggested for the lot: Enter begins it. */
export function BeginForm({ plan, onBegun }: BeginFormProps) {
  const { t } = useTexts()
  const { conditions, layout } = plan
  const unit = plan.unit.one
  const form = useCardForm({
    draftName: `begin/${plan.lotId}`,
    empty: {
      replicates: String(Math.max(1, layout.length)),
      each: String(layout[0] ?? ''),
      medium: String(conditions.media[0] ?? ''),
      temperature: String(conditions.temperature),
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
  const spent = replicates === null || each === null || plan.available === 0 ? 0 : replicates * each
  const spentFacts = { spent, available: plan.available, part: { part: spent / plan.available } }
  return (
    <CardForm
      title={t('germination.begin-title')}
      sendWord={t('germination.begin')}
      {...form.sending(input, ({ testId }) => onBegun(testId))}
    >
      {form.textField('replicates', t('germination.replicates'), {
        hint: t('germination.replicates-hint', { most: MOST_REPLICATES }),
      })}
      {form.textField('each', t('germination.in-each', { unit }), {
        path: 'replicates.0',
        words: spent === 0 ? '' : t('germination.spent', spentFacts),
      })}
      {form.textField('medium', t('germination.medium'), {
        hint:
          conditions.media.length > 1
            ? t('germination.medium-others', { media: { list: conditions.media.slice(1), as: 'or' } })
            : '',
      })}
      <div className="card-form-wide">{form.textField('temperature', t('germination.temperature'))}</div>
      {form.textField('firstDay', t('germination.first-day'), { hint: t('germination.first-day-hint') })}
      {form.textField('finalDay', t('germination.final-day'))}
      {form.dayField('on')}
      {form.textField('note', t('germination.note'))}
      {follows !== null && (
        <div className="card-form-wide">
          <CheckField
            label={t('germination.as-next-stage', { sum: follows.words })}
            checked={typed.nextStage}
            onChange={(nextStage) =>
              form.change(
                nextStage ? { nextStage, replicates: '1', each: String(follows.groupSize) } : { nextStage },
              )
            }
          />
        </div>
      )}
      {form.checkField('fromStock', t('germination.come-out', { unit }))}
    </CardForm>
  )
}

const MOST_REPLICATES = 16
