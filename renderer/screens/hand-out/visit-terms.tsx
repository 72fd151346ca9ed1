import type { WithdrawalPurpose } from '../../../db/contract/fields.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { CheckField } from '../../shared/table-form/check-field.tsx'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { HandOutDraft, VisitTerms } from './hand-out-draft.ts'

interface VisitTermsFieldsProps {
  readonly draft: HandOutDraft
  readonly today: string
  readonly onChange: (change: Partial<VisitTerms>) => void
}

const PURPOSES: readonly { readonly value: WithdrawalPurpose; readonly label: string }[] = [
  { value: 'to-grow', label: 'to grow' },
  { value: 'to-return', label: 'to grow and bring seed back' },
  { value: 'grow-out', label: 'grow-out for the library' },
  { value: 'safety-duplicate', label: 'safety duplicate elsewhere' },
  { value: 'other', label: 'something else' },
]

/** What holds for the whole visit: what it is for, what comes back, and the day. */
export function VisitTermsFields({ draft, today, onChange }: VisitTermsFieldsProps) {
  const format = useFormat()
  return (
    <div className="visit-pins fields" data-steps-apart="">
      <SelectField
        label="What for"
        step="purpose"
        size="record"
        value={draft.purpose}
        options={PURPOSES}
        onChange={(purpose) => onChange({ purpose })}
      />
      <TextField
        label="Brings back"
        step="promised"
        size="record"
        value={draft.promised}
        onChange={(promised) => onChange({ promised })}
        placeholder="nothing promised"
      />
      <TextField
        label="By"
        step="promised-by"
        size="record"
        type="date"
        value={draft.promisedBy}
        words={draft.promisedBy === '' ? '' : format.day(draft.promisedBy)}
        onChange={(promisedBy) => onChange({ promisedBy })}
      />
      <TextField
        label="Handed out"
        step="on"
        size="record"
        type="date"
        value={draft.on === '' ? today : draft.on}
        words={draft.on === '' ? 'today' : format.day(draft.on)}
        onChange={(on) => onChange({ on: on === today ? '' : on })}
      />
      <CheckField
        label="Print a slip to take along"
        step="slip"
        checked={draft.slip}
        onChange={(slip) => onChange({ slip })}
        meaning="Waits in the print tray once the visit is saved."
      />
    </div>
  )
}
