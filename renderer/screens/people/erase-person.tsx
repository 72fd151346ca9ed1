import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { focusWayBack } from '../../shared/card-form/focus-first-field.ts'
import { useWrite } from '../../shared/client/use-write.ts'

interface ErasePersonProps {
  readonly person: PersonRecord
  readonly onClose: () => void
}

/** Says what erasing takes out and what it leaves, before it is done. */
export function ErasePerson({ person, onClose }: ErasePersonProps) {
  const write = useWrite('person.erase')
  return (
    <div ref={focusWayBack}>
      <CardForm
        title={`Erase who ${person.name} is`}
        sendWord="Erase for good"
        busy={write.isPending}
        error={write.error}
        onSend={() => write.mutate({ personId: person.personId }, { onSuccess: onClose })}
        onClose={onClose}
      >
        <div className="card-form-wide">
          <p>
            Name, town, contact, notes and earlier values go, also from what was written, from lists read in
            and from unfinished work. What was given, taken and brought back stays, under a number, so that
            every lot keeps its history and its sum.
          </p>
          <p>
            This cannot be taken back. Only a backup made before still holds the person: such backups lie in
            the Backups folder and in the second folder until they age out or you delete them. After restoring
            one, erase the person again.
          </p>
        </div>
      </CardForm>
    </div>
  )
}
