import type { ReactNode } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'

type Person = Value<'lot.trace'>['people'][number]
type Taken = Person['had'][number]

interface PeopleTableProps<P extends Person> {
  readonly people: readonly P[]
  /** What stands in a column of its own behind those of every such table. */
  readonly more?: readonly (readonly [head: string, cell: (person: P) => ReactNode])[]
}

/** Who has some: what each took and how they can be told. */
export function PeopleTable<P extends Person>({ people, more = [] }: PeopleTableProps<P>) {
  const { t } = useTexts()
  if (people.length === 0) return null
  return (
    <RowTable
      label={t('trace.who')}
      rowHeads
      rows={people}
      keyOf={({ personId }) => personId}
      columns={[
        [
          t('trace.name'),
          ({ personId, name, town }) => (
            <>
              <Link href={`/people/${personId}`}>{name}</Link> <span className="soft">{town}</span>
            </>
          ),
        ],
        [t('trace.had'), ({ had }) => <WhatTheyTook had={had} />],
        [t('trace.may-write'), ({ mayWrite }) => t(mayWrite ? 'trace.by-letter' : 'trace.in-person')],
        ...more,
      ]}
    />
  )
}

/** What went out to people whose names are not known. */
export function Nameless({ nameless }: { readonly nameless: readonly Taken[] }) {
  const { t } = useTexts()
  if (nameless.length === 0) return null
  return (
    <div className="stack-1">
      <p>{t('trace.nameless', { times: nameless.length })}</p>
      <WhatTheyTook had={nameless} />
    </div>
  )
}

function WhatTheyTook({ had }: { readonly had: readonly Taken[] }) {
  const { t } = useTexts()
  return (
    <ul>
      {had.map(({ lotId, lotNumber: lot, words: amount, on, affected }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two hand-outs of one day may be alike
        <li key={`${lotId} ${on} ${index}`}>
          {t('trace.taken', { lot, amount, on: { day: on }, affected })}
        </li>
      ))}
    </ul>
  )
}
