import type { WithdrawalPurpose } from '../../../db/contract/fields.ts'
import { CheckField, DateField, SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { fieldsOf } from '../../shared/table-form/refusals.ts'
import type { HandOutDraft } from './hand-out-draft.ts'

interface VisitTermsFieldsProps {
  readonly draft: HandOutDraft
  readonly today: string
  readonly onChange: (change: Partial<HandOutDraft>) => void
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
  const field = fieldsOf(draft, onChange)
  return (
    <div className="visit-pins fields" data-steps-apart="">
      <SelectField label="What for" size="record" options={PURPOSES} {...field('purpose')} />
      <TextField label="Brings back" size="record" {...field('promised')} placeholder="nothing promised" />
      <DateField label="By" size="record" {...field('promisedBy')} />
      <DateField label="Handed out" size="record" {...field('on')} today={today} />
      <CheckField
        label="Print a slip to take along"
        {...field('slip')}
        checked={draft.slip}
        meaning="Waits in the print tray once the visit is saved."
      />
    </div>
  )
}
