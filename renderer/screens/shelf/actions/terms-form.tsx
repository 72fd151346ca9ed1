import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import { LimitsFields } from '../../../shared/limits-form/limits-fields.tsx'
import { LIMIT_STEPS, limitsOf, typedLimits } from '../../../shared/limits-form/typed-limits.ts'
import type { ActionFormProps } from './action-form-props.ts'

/** Who may have seed of the gift and what may be told of it, for all lots of the accession. */
export function TermsForm({ lot: { accessionId, limits }, ...kept }: ActionFormProps) {
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: typedLimits(limits), writes: 'accession.change-terms' })
  const problems = LIMIT_STEPS.map((step) => [step, form.problem(`limits.${step}`)])
  return (
    <CardForm
      title={t('terms.terms')}
      sendWord={t('terms.save')}
      {...form.sending({ accessionId, limits: limitsOf(form.typed) })}
    >
      <LimitsFields limits={form.typed} onChange={form.change} problems={Object.fromEntries(problems)} />
    </CardForm>
  )
}
