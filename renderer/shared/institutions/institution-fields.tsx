import { useTexts } from '../format/use-texts.ts'
import { DateField, TextField } from '../table-form/fields.tsx'
import type { TypedInstitution } from './institution-draft.ts'

interface InstitutionFieldsProps {
  readonly typed: TypedInstitution
  readonly onChange: (change: Partial<TypedInstitution>) => void
  readonly problem?: (field: keyof TypedInstitution) => string | undefined
}

/** What they asked for and when, what was signed, and what went with the seed. All of it may stay empty. */
export function InstitutionFields({ typed, onChange, problem = () => undefined }: InstitutionFieldsProps) {
  const { t } = useTexts()
  const field = (name: keyof TypedInstitution) => ({
    size: 'record' as const,
    value: typed[name],
    onChange: (value: string) => onChange({ [name]: value }),
    problem: problem(name),
  })
  return (
    <>
      <DateField label={t('elsewhere.asked-on')} {...field('askedOn')} />
      <div className="card-form-wide stack-3">
        <TextField long label={t('elsewhere.intended-use')} {...field('intendedUse')} />
        <TextField
          long
          label={t('elsewhere.agreement-signed')}
          hint={t('elsewhere.agreement-signed-hint')}
          {...field('agreement')}
        />
        <TextField
          long
          label={t('elsewhere.plant-health')}
          hint={t('elsewhere.plant-health-hint')}
          {...field('plantHealth')}
        />
      </div>
      <DateField label={t('elsewhere.sent-on')} {...field('sentOn')} />
    </>
  )
}
