import { WITHDRAWAL_PURPOSES } from '../../../db/domain/shared/closed-sets.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { NO_INSTITUTION } from '../../shared/institutions/institution-draft.ts'
import { InstitutionFields } from '../../shared/institutions/institution-fields.tsx'
import { CheckField, DateField, SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { fieldsOf } from '../../shared/table-form/refusals.ts'
import type { HandOutDraft } from './hand-out-draft.ts'

interface VisitTermsFieldsProps {
  readonly draft: HandOutDraft
  readonly today: string
  readonly onChange: (change: Partial<HandOutDraft>) => void
}

/** What holds for the whole visit: what it is for, what comes back, and the day. */
export function VisitTermsFields({ draft, today, onChange }: VisitTermsFieldsProps) {
  const field = fieldsOf(draft, onChange)
  const { t } = useTexts()
  const dueDates = useRead('collection.get', {}).data?.settings.dueDates ?? false
  const purposes = WITHDRAWAL_PURPOSES.map((value) => ({ value, label: t(`hand-out.purpose.${value}`) }))
  return (
    <div className="visit-pins fields" data-steps-apart="">
      <SelectField label={t('hand-out.purpose')} size="record" options={purposes} {...field('purpose')} />
      {draft.purpose === 'other' && (
        <CheckField
          label={t('elsewhere.to-an-institution')}
          checked={Boolean(draft.institution)}
          onChange={(ticked) => onChange({ institution: ticked ? NO_INSTITUTION : null })}
        />
      )}
      {draft.purpose === 'other' && draft.institution && (
        <InstitutionFields
          typed={draft.institution}
          onChange={(change) =>
            onChange({ institution: { ...NO_INSTITUTION, ...draft.institution, ...change } })
          }
        />
      )}
      <TextField
        label={t('hand-out.brings-back')}
        size="record"
        {...field('promised')}
        placeholder={t('hand-out.nothing-promised')}
      />
      {(dueDates || draft.promisedBy !== '') && (
        <DateField label={t('hand-out.by')} size="record" {...field('promisedBy')} />
      )}
      <DateField label={t('hand-out.on')} size="record" {...field('on')} today={today} />
      <CheckField
        label={t('hand-out.slip')}
        {...field('slip')}
        checked={draft.slip}
        meaning={t('hand-out.slip-means')}
      />
    </div>
  )
}
