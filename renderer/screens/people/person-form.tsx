import { Fragment } from 'react'
import { PersonRole } from '../../../db/contract/fields.ts'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { LANGUAGES } from '../../../db/messages/languages.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { CheckField, SelectField } from '../../shared/table-form/fields.tsx'

interface PersonFormProps {
  readonly person: PersonRecord
  readonly onClose: () => void
}

const TEXTS = [
  ['name', 'people.fact.name'],
  ['town', 'people.fact.town'],
  ['creditAs', 'people.fact.credit-as'],
  ['email', 'people.fact.email'],
  ['phone', 'people.fact.phone'],
  ['address', 'people.fact.address'],
  ['note', 'people.fact.note'],
] as const

/** What is known of a person, to be changed; what was before is kept and can be put back. */
export function PersonForm({ person, onClose }: PersonFormProps) {
  const { t } = useTexts()
  const { personId, name, town, creditAs, email, phone, address, note, language, mayWrite, roles } = person
  const known = { name, town, creditAs, email, phone, address, note, language, mayWrite, roles }
  const form = useCardForm({
    draftName: `person-${personId}`,
    empty: known,
    writes: 'person.change',
    onClose,
  })
  const { typed } = form
  return (
    <CardForm
      title={t('people.change-title', { name })}
      sendWord={t('people.save')}
      {...form.sending({ personId, ...typed })}
    >
      {TEXTS.map(([field, label]) => (
        <Fragment key={field}>
          {form.textField(field, t(label), {
            placeholder: field === 'creditAs' ? t('people.fact.credit-placeholder') : '',
          })}
        </Fragment>
      ))}
      <SelectField
        label={t('people.fact.language')}
        size="record"
        value={typed.language}
        options={[
          { value: '', label: t('people.fact.language-library') },
          ...LANGUAGES.map(({ code, name: label }) => ({ value: code, label })),
        ]}
        onChange={(language) => form.change({ language })}
      />
      {form.checkField('mayWrite', t('people.may-write'))}
      {PersonRole.options.map((role) => (
        <CheckField
          key={role}
          label={t(`people.role.${role}`)}
          checked={typed.roles.includes(role)}
          onChange={(on) =>
            form.change({
              roles: on ? [...typed.roles, role] : typed.roles.filter((each) => each !== role),
            })
          }
        />
      ))}
    </CardForm>
  )
}
