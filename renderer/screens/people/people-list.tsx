import { Link } from 'wouter'
import type { ListedPerson } from '../../../db/contract/people-operations.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { focusAlong, UP_AND_DOWN } from '../../shared/focus/focus-along.ts'
import { useTexts } from '../../shared/format/use-texts.ts'

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
  const { t } = useTexts()
  const shown = Math.max(
    0,
    people.findIndex(({ personId }) => personId === chosen),
  )
  return (
    <>
      <p className="soft" role="status">
        {total > 0
          ? t('people.count', { count: total })
          : t(narrowed ? 'people.nobody-fits' : 'people.nobody')}
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
              <span className="soft">{placeAndRoles(person, t)}</span>
              <span className="soft">{countsInWords(person, t)}</span>
            </Link>
          </li>
        ))}
      </ul>
      {onMore && (
        <button type="button" className="word-button" onClick={onMore}>
          {t('people.more')}
        </button>
      )}
    </>
  )
}

function placeAndRoles({ town, roles, alsoAs }: ListedPerson, t: Texts['text']): string {
  const also = alsoAs.length === 0 ? '' : t('people.also-as', { names: { list: alsoAs } })
  return [town, ...roles.map((role) => t(`people.role.${role}`)), also]
    .filter((part) => part !== '')
    .join(' · ')
}

function countsInWords({ gave, took, broughtBack }: ListedPerson, t: Texts['text']): string {
  const parts = [
    gave === 0 ? '' : t('people.in-list.gave', { count: gave }),
    took === 0 ? '' : t('people.in-list.took', { count: took }),
    broughtBack === 0 ? '' : t('people.in-list.brought-back', { count: broughtBack }),
  ].filter((part) => part !== '')
  return parts.length === 0 ? t('people.in-list.nothing') : parts.join(', ')
}
