import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

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
