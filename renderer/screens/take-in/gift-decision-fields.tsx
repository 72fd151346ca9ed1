import { WaitingStep } from '../../../db/contract/intake-operations.ts'
import { waitingCaution, waitingTold } from '../../../db/domain/intake/waiting.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { fieldsOf } from '../../shared/table-form/refusals.ts'
import type { GiftPartProps } from './gift-fields.tsx'
import type { GiftLine } from './gift-line.ts'

type Decision = GiftLine['decision']

/** What a gift that is not taken in now is asked: what it waits for, or why it is declined. */
export function DecisionFields({ line, onChange, problems }: GiftPartProps) {
  const { t, say } = useTexts()
  const field = fieldsOf(line, onChange, problems)
  if (line.decision === 'take-in') return null
  if (line.decision === 'decline') {
    return <TextField label={t('take-in.reason')} {...field('reason')} hint={t('take-in.reason-hint')} />
  }
  const caution = line.waitsFor === '' ? null : waitingCaution(line.waitsFor)
  const waits = WaitingStep.options.map((value) => ({ value, label: say(waitingTold(value)) }))
  const steps = [{ value: '' as const, label: t('take-in.nothing-waited') }, ...waits]
  return (
    <>
      <SelectField label={t('take-in.waits-for')} options={steps} {...field('waitsFor')} />
      <p className="soft">{caution === null ? t('take-in.waits-hint') : say(caution)}</p>
    </>
  )
}

const DECISIONS: readonly Decision[] = ['take-in', 'later', 'decline']

/** The other things that can be done with a gift. */
export function DecisionButtons(props: {
  readonly decision: Decision
  readonly onDecide: (decision: Decision) => void
}) {
  const { t } = useTexts()
  return DECISIONS.filter((decision) => decision !== props.decision).map((decision) => (
    <button
      key={decision}
      type="button"
      className="quiet-button table-button"
      onClick={() => props.onDecide(decision)}
    >
      {t(`take-in.decision.${decision}`)}
    </button>
  ))
}

/** What becomes of a gift that is not taken in now. */
export function decisionTold(line: Pick<GiftLine, 'decision' | 'waitsFor' | 'reason'>): Message {
  if (line.decision === 'decline') return message('take-in.declined', { reason: line.reason })
  return line.waitsFor === ''
    ? message('take-in.kept-later')
    : message('take-in.kept-waits', { step: waitingTold(line.waitsFor) })
}
