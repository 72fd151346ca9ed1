import { readNumber } from '../../../../db/domain/amounts/read-number.ts'
import { USUAL_DRYING_GOAL } from '../../../../db/domain/moisture/drying.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { useSavedForm } from '../../../shared/card-form/use-saved-form.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import { TextField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'

const EMPTY = { grams: '', from: '', to: String(USUAL_DRYING_GOAL) }

/** At which mass the seed is dry, and how much drying gel that takes; writes nothing. */
export function DryingForm({ draftName, onClose }: ActionFormProps) {
  const { typed, change } = useSavedForm(draftName, EMPTY)
  const [grams, from, to] = [numberOf(typed.grams), numberOf(typed.from), numberOf(typed.to)]
  const ready = grams !== null && from !== null && to !== null
  const plan = useRead('moisture.plan-drying', ready ? { grams, from, to } : null)
  return (
    <CardForm
      title="Dry it"
      sendWord="Done"
      busy={false}
      error={plan.error}
      onSend={onClose}
      onClose={onClose}
    >
      <TextField
        label="The seed weighs, grams"
        step="grams"
        size="record"
        value={typed.grams}
        onChange={(value) => change({ grams: value })}
      />
      <TextField
        label="Moisture now, %"
        step="from"
        size="record"
        value={typed.from}
        onChange={(value) => change({ from: value })}
      />
      <TextField
        label="Moisture wanted, %"
        step="to"
        size="record"
        value={typed.to}
        onChange={(value) => change({ to: value })}
      />
      <div className="card-form-wide" role="status">
        {plan.data !== undefined &&
          [plan.data.words, ...plan.data.assumptions, ...plan.data.cautions].map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
      </div>
    </CardForm>
  )
}

function numberOf(typed: string): number | null {
  const read = readNumber(typed)
  return read.kind === 'number' ? read.value : null
}
