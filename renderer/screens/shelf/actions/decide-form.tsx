import { usualPolicy } from '../../../../db/domain/keeping/keeping.ts'
import { ACCESSION_POLICIES, BREEDING_STATUSES } from '../../../../db/domain/shared/closed-sets.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import { SelectField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'

/** How the accession was bred, and whether it is kept and regrown, only passed on, or closed. */
export function DecideForm({ lot, ...kept }: ActionFormProps) {
  const { t } = useTexts()
  const { breeding, policy } = lot.keeping
  const form = useCardForm({
    ...kept,
    empty: { breeding, policy, on: '', reason: '' },
    writes: 'accession.decide-keeping',
  })
  const { typed } = form
  return (
    <CardForm
      title={t('keeping.do-decide')}
      sendWord={t('keeping.save')}
      {...form.sending({ accessionId: lot.accessionId, ...typed, on: form.dayOf('on') })}
    >
      <SelectField
        label={t('keeping.bred')}
        value={typed.breeding}
        options={BREEDING_STATUSES.map((value) => ({ value, label: t(`keeping.bred-${value}`) }))}
        onChange={(to) => form.change({ breeding: to, policy: usualPolicy(to) })}
      />
      {form.selectField(
        'policy',
        t('keeping.policy'),
        ACCESSION_POLICIES.map((value) => ({ value, label: t(`keeping.policy-${value}`) })),
        usualPolicy(typed.breeding) === 'pass-on' ? t('keeping.why-pass-on') : '',
      )}
      {form.dayField('on')}
      {form.textField('reason', t('keeping.reason'))}
    </CardForm>
  )
}
