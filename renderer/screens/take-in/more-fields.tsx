import { ROLE_WORDS } from '../../shared/format/words.ts'
import { CautionsField } from '../../shared/table-form/cautions-field.tsx'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { GiftPartProps } from './gift-fields.tsx'

const ROLES = (['working', 'reserve', 'reference'] as const).map((value) => ({
  value,
  label: ROLE_WORDS[value],
}))

/** What some gifts have to tell: where they grew, their story, what the donor asks for, and what to be careful about. */
export function MoreFields({ line, onChange, problems }: GiftPartProps) {
  return (
    <div className="more-fields stack-3">
      <TextField
        label="Where grown"
        step="grown-at"
        value={line.grownAt}
        onChange={(grownAt) => onChange({ grownAt })}
        problem={problems.grownAt}
      />
      <TextField
        label="In the donor’s words"
        step="donor-words"
        long
        value={line.donorWords ?? ''}
        onChange={(donorWords) => onChange({ donorWords })}
        problem={problems.donorWords}
        hint="What they told of it. The thank-you letter says it again."
      />
      <TextField
        label="Its story, as you write it"
        step="story"
        long
        value={line.story}
        onChange={(story) => onChange({ story })}
        problem={problems.story}
        hint="Goes on packets and lists, not into the letter. Shift+Enter begins a new line. No health or family details."
      />
      <TextField
        label="Terms of the gift"
        step="terms"
        value={line.terms}
        onChange={(terms) => onChange({ terms })}
        problem={problems.terms}
        placeholder="what the donor asks for"
      />
      <CautionsField {...line} onChange={onChange} problem={problems.cautionNote} />
      <SelectField
        label="Keep it as"
        step="role"
        value={line.role}
        options={ROLES}
        onChange={(role) => onChange({ role })}
      />
    </div>
  )
}
