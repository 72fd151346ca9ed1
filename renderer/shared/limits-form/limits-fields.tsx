import { SHARED_WITH } from '../../../db/domain/shared/closed-sets.ts'
import { useTexts } from '../format/use-texts.ts'
import { CheckField, DateField, SelectField, TextField } from '../table-form/fields.tsx'
import { fieldsOf, type StepProblems } from '../table-form/refusals.ts'
import type { LimitStep, TypedLimits } from './typed-limits.ts'

interface LimitsFieldsProps {
  readonly limits: TypedLimits
  readonly onChange: (change: Partial<TypedLimits>) => void
  readonly problems: StepProblems<LimitStep>
}

const ALLOWED = [
  ['publishStory', 'publish-story'],
  ['publishName', 'publish-name'],
  ['mayBeSold', 'may-be-sold'],
] as const

/** Who may have seed of a gift, what may be told of it, and what that rests on. */
export function LimitsFields({ limits, onChange, problems }: LimitsFieldsProps) {
  const { t } = useTexts()
  const field = fieldsOf(limits, onChange, problems)
  return (
    <>
      <SelectField
        label={t('terms.who')}
        options={SHARED_WITH.map((value) => ({ value, label: t(`terms.who.${value}`) }))}
        {...field('share')}
      />
      {ALLOWED.map(([name, word]) => (
        <CheckField
          key={name}
          label={t(`terms.${word}`)}
          step={name}
          checked={limits[name]}
          onChange={field(name).onChange}
        />
      ))}
      <TextField label={t('terms.agreed-with')} {...field('agreement')} />
      <DateField
        label={t('terms.agreed-until')}
        hint={t('terms.agreed-until-hint')}
        {...field('agreementEnds')}
      />
      <TextField
        label={t('terms.label-text')}
        hint={t('terms.label-text-hint')}
        long
        {...field('communityLabel')}
      />
      <TextField label={t('terms.label-address')} {...field('communityLink')} />
    </>
  )
}
