import { WaitingStep } from '../../../db/contract/intake-operations.ts'
import { waitingCaution, waitingInWords } from '../../../db/domain/intake/waiting.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { fieldsOf } from '../../shared/table-form/refusals.ts'
import type { GiftPartProps } from './gift-fields.tsx'
import type { GiftLine } from './gift-line.ts'

type Decision = GiftLine['decision']

const STEPS = [
  { value: '' as const, label: 'nothing in particular' },
  ...WaitingStep.options.map((value) => ({ value, label: waitingInWords(value) })),
]

/** What a gift that is not taken in now is asked: what it waits for, or why it is declined. */
export function DecisionFields({ line, onChange, problems }: GiftPartProps) {
  const field = fieldsOf(line, onChange, problems)
  if (line.decision === 'take-in') return null
  if (line.decision === 'decline') {
    return (
      <TextField
        label="Why is it declined?"
        {...field('reason')}
        hint="Kept in the book without a number, for the day when the donor asks."
      />
    )
  }
  const caution = line.waitsFor === '' ? '' : waitingCaution(line.waitsFor)
  return (
    <>
      <SelectField label="What does it wait for?" options={STEPS} {...field('waitsFor')} />
      <p className="soft">{caution || 'It gets its number once it is taken in, under Gifts waiting.'}</p>
    </>
  )
}

const BUTTONS: readonly { readonly decision: Decision; readonly word: string }[] = [
  { decision: 'take-in', word: 'Take it in after all' },
  { decision: 'later', word: 'Later' },
  { decision: 'decline', word: 'Decline' },
]

/** The other things that can be done with a gift. */
export function DecisionButtons(props: {
  readonly decision: Decision
  readonly onDecide: (decision: Decision) => void
}) {
  return BUTTONS.filter(({ decision }) => decision !== props.decision).map(({ decision, word }) => (
    <button
      key={decision}
      type="button"
      className="quiet-button table-button"
      onClick={() => props.onDecide(decision)}
    >
      {word}
    </button>
  ))
}

/** What becomes of a gift that is not taken in now. */
export function decisionInWords(line: Pick<GiftLine, 'decision' | 'waitsFor' | 'reason'>): string {
  if (line.decision === 'decline') return `declined: ${line.reason}`
  return line.waitsFor === ''
    ? 'kept for later'
    : `kept for later: waits for ${waitingInWords(line.waitsFor)}`
}
