import { Fragment } from 'react'
import { PersonRole } from '../../../db/contract/fields.ts'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { CheckField } from '../../shared/table-form/fields.tsx'

interface PersonFormProps {
  readonly person: PersonRecord
  readonly onClose: () => void
}

const TEXTS = [
  ['name', 'Name'],
  ['town', 'Town'],
  ['creditAs', 'To be named as'],
  ['email', 'E-mail'],
  ['phone', 'Telephone'],
  ['address', 'Address'],
  ['note', 'Note'],
] as const

/** What is known of a person, to be changed; what was before is kept and can be put back. */
export function PersonForm({ person, onClose }: PersonFormProps) {
  const { personId, name, town, creditAs, email, phone, address, note, mayWrite, roles } = person
  const known = { name, town, creditAs, email, phone, address, note, mayWrite, roles }
  const form = useCardForm({
    draftName: `person-${personId}`,
    empty: known,
    writes: 'person.change',
    onClose,
  })
  const { typed } = form
  return (
    <CardForm
      title={`Change what is known of ${name}`}
      sendWord="Keep the change"
      {...form.sending({ personId, ...typed })}
    >
      {TEXTS.map(([field, label]) => (
        <Fragment key={field}>
          {form.textField(field, label, { placeholder: field === 'creditAs' ? 'empty: a donor' : '' })}
        </Fragment>
      ))}
      {form.checkField('mayWrite', 'We may write to them')}
      {PersonRole.options.map((role) => (
        <CheckField
          key={role}
          label={role}
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
