import type { ReactNode } from 'react'
import { Link } from 'wouter'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { PromiseMark } from '../../shared/promise-mark/promise-mark.tsx'

/** What went both ways: given, taken and promised, brought back; and what was changed of the card. */
export function PersonHistory({ person }: { readonly person: PersonRecord }) {
  const format = useFormat()
  const { gave, took, broughtBack, changes } = person
  return (
    <>
      <Part title="Gave" none="Nothing given yet." count={gave.length}>
        {gave.map((each) => (
          <li key={each.accessionId}>
            <Link href={lotAddress(each.lotId)}>{each.number}</Link> {each.variety},{' '}
            {format.day(each.receivedOn)}
          </li>
        ))}
      </Part>
      <Part title="Took" none="Nothing taken yet." count={took.length}>
        {took.map((visit) => (
          <li key={visit.withdrawalId}>
            {format.day(visit.on)}:{' '}
            {visit.lots
              .map(({ lotNumber, variety, words }) => `${variety} ${lotNumber} (${words})`)
              .join(', ')}
            {visit.promise && (
              <p className="row">
                <PromiseMark state={visit.promise.state} />
                <span>
                  {visit.promise.words}
                  {visit.promise.by === null ? '' : ` by ${format.day(visit.promise.by)}`}
                  {visit.promise.state === 'let-go' ? `; ${visit.promise.waiverReason}` : ''}
                </span>
              </p>
            )}
          </li>
        ))}
      </Part>
      <Part title="Brought back" none="Nothing brought back yet." count={broughtBack.length}>
        {broughtBack.map((each) => (
          <li key={each.lotId}>
            <Link href={lotAddress(each.lotId)}>{each.lotNumber}</Link> {each.variety}, {format.day(each.on)},
            holds {each.words}
          </li>
        ))}
      </Part>
      {changes.length > 0 && (
        <Part title="Changed on this card" none="" count={changes.length}>
          {changes.map(({ at, words, takenBack }) => (
            <li key={`${at} ${words}`}>
              {format.moment(at)}: {words}
              {takenBack ? ' (taken back)' : ''}
            </li>
          ))}
        </Part>
      )}
    </>
  )
}

interface PartProps {
  readonly title: string
  readonly none: string
  readonly count: number
  readonly children: ReactNode
}

function Part({ title, none, count, children }: PartProps) {
  return (
    <section className="person-part" aria-label={title}>
      <h3>{title}</h3>
      {count === 0 ? <p className="soft">{none}</p> : <ul>{children}</ul>}
    </section>
  )
}

/** Other records of this person, which can stand for themselves again. */
export function MergedRecords({ person }: { readonly person: PersonRecord }) {
  const write = useWrite('entry.undo')
  if (person.joined.length === 0) return null
  return (
    <section className="person-part" aria-label="Joined records">
      <h3>Also in the book as</h3>
      <ul>
        {person.joined.map(({ personId, entryId, name, town, email, phone, address, note }) => (
          <li key={personId}>
            <strong>{name}</strong>{' '}
            {[town, email, phone, address, note].filter((part) => part !== '').join(' · ')}{' '}
            <button type="button" className="word-button" onClick={() => write.mutate({ entryId })}>
              separate again<span className="only-aloud"> {name}</span>
            </button>
          </li>
        ))}
      </ul>
      {write.error && <ProblemText problem={write.error.problem} />}
    </section>
  )
}
