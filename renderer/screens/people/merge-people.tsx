import { useState } from 'react'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'
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

const FACTS: readonly (readonly [label: string, fact: (person: PersonRecord) => string])[] = [
  ['Name', ({ name }) => name],
  ['Town', ({ town }) => town],
  ['Named as', ({ creditAs }) => creditAs],
  ['E-mail', ({ email }) => email],
  ['Telephone', ({ phone }) => phone],
  ['Note', ({ note }) => note],
  ['History', historyInWords],
]

function SideBySide({ kept, joined }: { readonly kept: PersonRecord; readonly joined: PersonRecord }) {
  return (
    <RowTable
      className="card-form-wide"
      caption={
        <caption className="soft">
          The left one is shown from now on, with the history of both. The ledger stays as it was written.
        </caption>
      }
      rowHeads
      rows={FACTS}
      keyOf={([label]) => label}
      columns={[
        ['', ([label]) => label],
        ['stays', ([, fact]) => fact(kept) || '–'],
        ['is joined into it', ([, fact]) => fact(joined) || '–'],
      ]}
    />
  )
}

function historyInWords({ gave, took, broughtBack }: PersonRecord): string {
  return `${gave.length} given, ${took.length} taken, ${broughtBack.length} brought back`
}
