import { Link } from 'wouter'
import type { ListedPerson } from '../../../db/contract/people-operations.ts'
import { focusAlong, UP_AND_DOWN } from '../../shared/focus/focus-along.ts'
import { useFormat } from '../../shared/format/use-format.ts'

interface PeopleListProps {
  readonly people: readonly ListedPerson[]
  readonly total: number
  readonly narrowed: boolean
  readonly chosen: number | undefined
  /** Null where all that can be shown is shown. */
  readonly onMore: (() => void) | null
}

/** People by name: arrows move between them, Enter opens a card. */
export function PeopleList({ people, total, narrowed, chosen, onMore }: PeopleListProps) {
  const format = useFormat()
  const shown = Math.max(
    0,
    people.findIndex(({ personId }) => personId === chosen),
  )
  return (
    <>
      <p className="soft" role="status">
        {total === 0 ? nobody(narrowed) : total === 1 ? '1 person' : `${format.number(total)} people`}
      </p>
      <ul className="pane-rows" onKeyDown={(event) => focusAlong(event, UP_AND_DOWN)}>
        {people.map((person, index) => (
          <li key={person.personId}>
            <Link
              href={`/people/${person.personId}`}
              className="pane-row choice"
              tabIndex={index === shown ? 0 : -1}
              {...(person.personId === chosen ? { 'aria-current': 'true' as const } : {})}
            >
              <span className="strong">{person.name}</span>
              <span className="soft">{placeAndRoles(person)}</span>
              <span className="soft">{countsInWords(person)}</span>
            </Link>
          </li>
        ))}
      </ul>
      {onMore && (
        <button type="button" className="word-button" onClick={onMore}>
          show more of them
        </button>
      )}
    </>
  )
}

function nobody(narrowed: boolean): string {
  return narrowed
    ? 'Nobody fits. Try fewer letters, or show everybody.'
    : 'Nobody is in the book yet. People are added when they bring or take seed.'
}

function placeAndRoles({ town, roles, alsoAs }: ListedPerson): string {
  const also = alsoAs.length === 0 ? '' : `also as ${alsoAs.join(', ')}`
  return [town, roles.join(', '), also].filter((part) => part !== '').join(' · ')
}

function countsInWords({ gave, took, broughtBack }: ListedPerson): string {
  const parts = [
    gave === 0 ? '' : `gave ${gave}`,
    took === 0 ? '' : `took seed ${took === 1 ? 'once' : `${took} times`}`,
    broughtBack === 0 ? '' : `brought back ${broughtBack}`,
  ].filter((part) => part !== '')
  return parts.length === 0 ? 'nothing given or taken yet' : parts.join(', ')
}
