import { useState } from 'react'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'
import { PEOPLE } from '../../shared/table-form/person-fields.tsx'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'

interface MergePeopleProps {
  readonly person: PersonRecord
  readonly onClose: () => void
}

/** Joins another record of the same person into this one, after both were looked at side by side. */
export function MergePeople({ person, onClose }: MergePeopleProps) {
  const { t } = useTexts()
  const [text, setText] = useState('')
  const [joinId, setJoinId] = useState<number | null>(null)
  const other = useRead('person.get', joinId === null ? null : { personId: joinId }).data
  const write = useWrite('person.merge')
  const join = () => {
    if (joinId !== null) write.mutate({ keepId: person.personId, joinId }, { onSuccess: onClose })
  }
  return (
    <CardForm
      title={t('people.join')}
      sendWord={joinId === null ? t('people.join-first') : t('people.join-send', { name: person.name })}
      busy={write.isPending || joinId === null}
      error={write.error}
      onSend={join}
      onClose={onClose}
    >
      <div className="card-form-wide">
        <SuggestField
          label={t('people.join-other')}
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
          nothingFound={(typed) => t('people.join-nobody', { name: typed })}
          placeholder={t('people.join-placeholder')}
        />
      </div>
      {joinId !== null && other && <SideBySide kept={person} joined={other} />}
    </CardForm>
  )
}

const factsIn = (
  t: Texts['text'],
): readonly (readonly [label: string, fact: (person: PersonRecord) => string])[] => [
  [t('people.fact.name'), ({ name }) => name],
  [t('people.fact.town'), ({ town }) => town],
  [t('people.fact.credit-as'), ({ creditAs }) => creditAs],
  [t('people.fact.email'), ({ email }) => email],
  [t('people.fact.phone'), ({ phone }) => phone],
  [t('people.fact.note'), ({ note }) => note],
  [
    t('people.fact.history'),
    ({ gave, took, broughtBack }) =>
      t('people.history', { gave: gave.length, took: took.length, broughtBack: broughtBack.length }),
  ],
]

function SideBySide({ kept, joined }: { readonly kept: PersonRecord; readonly joined: PersonRecord }) {
  const { t } = useTexts()
  return (
    <RowTable
      className="card-form-wide"
      caption={<caption className="soft">{t('people.join-what')}</caption>}
      rowHeads
      rows={factsIn(t)}
      keyOf={([label]) => label}
      columns={[
        ['', ([label]) => label],
        [t('people.join-stays'), ([, fact]) => fact(kept) || '–'],
        [t('people.join-goes'), ([, fact]) => fact(joined) || '–'],
      ]}
    />
  )
}
