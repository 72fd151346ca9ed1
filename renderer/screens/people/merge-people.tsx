import { useState } from 'react'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { PEOPLE } from '../../shared/table-form/person-fields.tsx'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'

interface MergePeopleProps {
  readonly person: PersonRecord
  readonly onClose: () => void
}

/** Joins another record of the same person into this one, after both were looked at side by side. */
export function MergePeople({ person, onClose }: MergePeopleProps) {
  const [text, setText] = useState('')
  const [joinId, setJoinId] = useState<number | null>(null)
  const other = useRead('person.get', joinId === null ? null : { personId: joinId }).data
  const write = useWrite('person.merge')
  const join = () => {
    if (joinId !== null) write.mutate({ keepId: person.personId, joinId }, { onSuccess: onClose })
  }
  return (
    <CardForm
      title="Join with another record"
      sendWord={joinId === null ? 'Find the other record first' : `Join, and keep ${person.name}`}
      busy={write.isPending || joinId === null}
      error={write.error}
      onSend={join}
      onClose={onClose}
    >
      <div className="card-form-wide">
        <SuggestField
          label="The other record"
          text={text}
          chosen={joinId !== null}
          onText={(typed) => {
            setText(typed)
            setJoinId(null)
          }}
          source={PEOPLE}
          onPick={({ personId, name }) => {
            setText(name)
            setJoinId(personId)
          }}
          nothingFound={(typed) => `Nobody called ${typed} is in the book.`}
          placeholder="a few letters of the name"
        />
      </div>
      {joinId !== null && other && <SideBySide kept={person} joined={other} />}
    </CardForm>
  )
}

const FACTS = [
  ['name', 'Name'],
  ['town', 'Town'],
  ['creditAs', 'Named as'],
  ['email', 'E-mail'],
  ['phone', 'Telephone'],
  ['note', 'Note'],
] as const

function SideBySide({ kept, joined }: { readonly kept: PersonRecord; readonly joined: PersonRecord }) {
  return (
    <table className="plain-table card-form-wide">
      <caption className="soft">
        The left one is shown from now on, with the history of both. The ledger stays as it was written.
      </caption>
      <thead>
        <tr>
          <td />
          <th scope="col">stays</th>
          <th scope="col">is joined into it</th>
        </tr>
      </thead>
      <tbody>
        {FACTS.map(([field, label]) => (
          <tr key={field}>
            <th scope="row">{label}</th>
            <td>{kept[field] || '–'}</td>
            <td>{joined[field] || '–'}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">History</th>
          <td>{historyInWords(kept)}</td>
          <td>{historyInWords(joined)}</td>
        </tr>
      </tbody>
    </table>
  )
}

function historyInWords({ gave, took, broughtBack }: PersonRecord): string {
  return `${gave.length} given, ${took.length} taken, ${broughtBack.length} brought back`
}
