import { useEffect, useRef } from 'react'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { PersonRole } from '../../../db/contract/reference-operations.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { CheckField } from '../../shared/table-form/check-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'

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
  const { typed, change, letGo } = useKeptForm(`person-${personId}`, known)
  const write = useWrite('person.update')
  const form = useRef<HTMLDivElement>(null)
  useEffect(() => form.current?.querySelector('input')?.focus(), [])
  const done = () => {
    letGo()
    onClose()
  }
  return (
    <div ref={form}>
      <CardForm
        title={`Change what is known of ${name}`}
        sendWord="Keep the change"
        busy={write.isPending}
        error={write.error}
        shownAtField={TEXTS.map(([field]) => field)}
        onSend={() => write.mutate({ personId, ...typed }, { onSuccess: done })}
        onClose={onClose}
      >
        {TEXTS.map(([field, label]) => (
          <TextField
            key={field}
            label={label}
            size="record"
            value={typed[field]}
            onChange={(value) => change({ [field]: value })}
            placeholder={field === 'creditAs' ? 'empty: a donor' : ''}
            problem={problemAt(write.error, field)}
          />
        ))}
        <CheckField
          label="We may write to them"
          step="may-write"
          checked={typed.mayWrite}
          onChange={(agreed) => change({ mayWrite: agreed })}
        />
        {PersonRole.options.map((role) => (
          <CheckField
            key={role}
            label={role}
            step={role}
            checked={typed.roles.includes(role)}
            onChange={(on) =>
              change({ roles: on ? [...typed.roles, role] : typed.roles.filter((each) => each !== role) })
            }
          />
        ))}
      </CardForm>
    </div>
  )
}
