import type { ReactNode } from 'react'
import { Link } from 'wouter'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { message } from '../../../db/messages/message.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ALOUD } from '../../shared/format/aloud.tsx'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { PromiseMark } from '../../shared/promise-mark/promise-mark.tsx'

/** What went both ways: given, taken and promised, brought back; and what was changed of the card. */
export function PersonHistory({ person }: { readonly person: PersonRecord }) {
  const format = useFormat()
  const { t, pieces } = useTexts()
  const { gave, took, broughtBack, changes } = person
  return (
    <>
      <Part title={t('people.gave')} none={t('people.gave-none')} count={gave.length}>
        {gave.map((each) => (
          <li key={each.accessionId}>
            <Link href={lotAddress(each.lotId)}>{each.number}</Link> {each.variety},{' '}
            {format.day(each.receivedOn)}
          </li>
        ))}
      </Part>
      <Part title={t('people.took')} none={t('people.took-none')} count={took.length}>
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
                  {visit.promise.by === null
                    ? visit.promise.words
                    : t('promise.by', { promise: visit.promise.words, day: { day: visit.promise.by } })}
                  {visit.promise.state === 'waived' ? `; ${visit.promise.waiverReason}` : ''}
                </span>
              </p>
            )}
          </li>
        ))}
      </Part>
      <Part title={t('people.brought-back')} none={t('people.brought-back-none')} count={broughtBack.length}>
        {broughtBack.map((each) => (
          <li key={each.lotId}>
            {pieces<ReactNode>(
              message('people.brought-back-line', {
                lot: each.lotNumber,
                variety: each.variety,
                day: { day: each.on },
                amount: each.words,
              }),
              {
                link: (number) => (
                  <Link key="lot" href={lotAddress(each.lotId)}>
                    {number}
                  </Link>
                ),
              },
            )}
          </li>
        ))}
      </Part>
      {changes.length > 0 && (
        <Part title={t('people.changed-before')} none="" count={changes.length}>
          {changes.map(({ at, words, takenBack }) => (
            <li key={`${at} ${words}`}>
              {format.moment(at)}: {takenBack ? t('people.undone', { what: words }) : words}
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
  const { t, pieces } = useTexts()
  const write = useWrite('entry.undo')
  if (person.joined.length === 0) return null
  return (
    <section className="person-part" aria-label={t('people.joined-region')}>
      <h3>{t('people.joined-records')}</h3>
      <ul>
        {person.joined.map(({ personId, entryId, name, town, email, phone, address, note }) => (
          <li key={personId}>
            <strong>{name}</strong>{' '}
            {[town, email, phone, address, note].filter((part) => part !== '').join(' · ')}{' '}
            <button type="button" className="word-button" onClick={() => write.mutate({ entryId })}>
              {pieces(message('people.separate', { name }), ALOUD)}
            </button>
          </li>
        ))}
      </ul>
      {write.error && <ProblemText problem={write.error.problem} />}
    </section>
  )
}
