import { useState } from 'react'
import { useLocation } from 'wouter'
import type { PersonRole } from '../../../db/contract/fields.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import './people.css'
import { PeopleList } from './people-list.tsx'
import { PersonCard } from './person-card.tsx'

const ROLES: readonly { readonly value: PersonRole | ''; readonly label: string }[] = [
  { value: '', label: 'everybody' },
  { value: 'donor', label: 'donors' },
  { value: 'member', label: 'members' },
  { value: 'grower', label: 'growers' },
]
const PAGE = 100
const MOST = 500
const FIND_AFTER_MS = 80

/** People: everybody in the book on the left, the card of the one that is chosen on the right. */
export function PeopleScreen({ personId }: { readonly personId?: number }) {
  const [text, setText] = useState('')
  const [role, setRole] = useState<PersonRole | ''>('')
  const [limit, setLimit] = useState(PAGE)
  const [, go] = useLocation()
  const settled = useSettled(text, FIND_AFTER_MS)
  const list = useRead(
    'person.list',
    { text: settled, limit, ...(role === '' ? {} : { role }) },
    { keepLast: true },
  )
  return (
    <div className="panes people" data-card-open={personId !== undefined}>
      <h1 className="only-aloud">People</h1>
      <section className="panes-list" aria-label="Everybody in the book">
        <div className="stack-2">
          <TextField label="Name" value={text} onChange={setText} placeholder="a few letters" />
          <SelectField label="Show" value={role} options={ROLES} onChange={setRole} />
        </div>
        {list.error && <ProblemText problem={list.error.problem} />}
        {list.data && (
          <PeopleList
            {...list.data}
            narrowed={settled !== '' || role !== ''}
            chosen={personId}
            onMore={list.data.people.length < Math.min(list.data.total, MOST) ? () => setLimit(MOST) : null}
          />
        )}
      </section>
      <div className="panes-card">
        {personId === undefined ? (
          <p className="soft">Choose somebody to see what they gave, took and promised.</p>
        ) : (
          <>
            <button type="button" className="word-button people-back" onClick={() => go('/people')}>
              Back to everybody
            </button>
            <PersonCard key={personId} personId={personId} />
          </>
        )}
      </div>
    </div>
  )
}
