import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { call } from '../../shared/client/call.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { say } from '../../shared/foot-line/said.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { CheckField } from '../../shared/table-form/fields.tsx'

interface ErasePersonProps {
  readonly person: PersonRecord
  readonly onClose: () => void
}

/** Says what erasing takes out, asks about what may mean a plant, and then offers to let go of the older backups. */
export function ErasePerson({ person, onClose }: ErasePersonProps) {
  const write = useWrite('person.erase')
  const traces = useRead('person.list-traces', write.isSuccess ? null : { personId: person.personId })
  const [masked, setMasked] = useState<ReadonlySet<string>>(new Set())
  if (write.isSuccess) return <OlderBackups onClose={onClose} />
  const send = () => write.mutate({ personId: person.personId, mask: [...masked] })
  return (
    <CardForm
      title={`Erase who ${person.name} is`}
      sendWord="Erase for good"
      busy={write.isPending || traces.data === undefined}
      error={write.error ?? traces.error}
      onSend={send}
      onClose={onClose}
    >
      <div className="card-form-wide">
        <p>
          Name, town, contact, notes and earlier values go, from every text of the book and from unfinished
          work. What was given, taken and brought back stays, under a number, so that every lot keeps its
          history and its sum.
        </p>
        {traces.data !== undefined && traces.data.total > 0 && (
          <Traces found={traces.data} masked={masked} onMask={setMasked} />
        )}
        <p>
          This cannot be taken back. Backups made before still hold the person: you are asked about them next.
        </p>
      </div>
    </CardForm>
  )
}

interface TracesProps {
  readonly found: Value<'person.list-traces'>
  readonly masked: ReadonlySet<string>
  readonly onMask: (masked: ReadonlySet<string>) => void
}

/** Texts with a word of the name that may be a plant's or somebody else's, each to be ticked by the keeper. */
function Traces({ found, masked, onMask }: TracesProps) {
  const format = useFormat()
  const { traces, total } = found
  const toggle = (traceId: string, on: boolean) => {
    const next = new Set(masked)
    if (on) next.add(traceId)
    else next.delete(traceId)
    onMask(next)
  }
  return (
    <fieldset className="erase-traces boxed">
      <legend>
        {total === 1 ? 'One text stays' : `${format.number(total)} texts stay`} as they are, since a word in
        them may be a plant’s or somebody else’s. Tick those that speak of this person.
      </legend>
      {traces.map(({ traceId, where, text }) => (
        <CheckField
          key={traceId}
          label={`${where}: ${text}`}
          checked={masked.has(traceId)}
          onChange={(on) => toggle(traceId, on)}
        />
      ))}
      {traces.length < total && (
        <p>The first {format.number(traces.length)} are shown. Change the others where they stand.</p>
      )}
    </fieldset>
  )
}

/** Says that older backups hold who was erased, and replaces them by a new one where the keeper wants it. */
function OlderBackups({ onClose }: { readonly onClose: () => void }) {
  const queries = useQueryClient()
  const format = useFormat()
  const count = useRead('backup.list', {}).data?.backups.length
  const older = count === 1 ? 'There is one backup' : `There are ${format.number(count ?? 0)} backups`
  const renew = useMutation({
    mutationFn: () => call('backup.create', { deleteOlder: true }),
    onSuccess: ({ file, deleted }) => {
      say({ said: `Backed up to ${file}, and deleted ${deleted} older` })
      void queries.invalidateQueries({ queryKey: ['backup.list'] })
      onClose()
    },
  })
  return (
    <CardForm
      title="Erased. Older backups still hold the person"
      sendWord="Make a new backup and delete the old ones"
      busy={renew.isPending}
      error={renew.error}
      onSend={() => renew.mutate()}
      onClose={onClose}
    >
      <p className="card-form-wide">
        {older} from before in the Backups folder and the second folder, until they age out. Once a new one is
        read back and whole, the old ones can be deleted. Copies that you put elsewhere stay: delete those
        yourself. After restoring an old one, erase the person again.
      </p>
    </CardForm>
  )
}
