import { useState } from 'react'
import { useLocation } from 'wouter'
import type { PersonRole } from '../../../db/contract/fields.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import './people.css'
import { PeopleList } from './people-list.tsx'
import { PersonCard } from './person-card.tsx'

const ROLES: readonly (PersonRole | '')[] = ['', 'donor', 'member', 'grower']
const PAGE = 100
const MOST = 500
const FIND_AFTER_MS = 80

/** People: everybody in the book on the left, the card of the one that is chosen on the right. */
export function PeopleScreen({ personId }: { readonly personId?: number }) {
  const { t } = useTexts()
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
      <h1 className="only-aloud">{t('people.title')}</h1>
      <section className="panes-list" aria-label={t('people.everybody')}>
        <div className="stack-2">
          <TextField
            label={t('people.find-name')}
            value={text}
            onChange={setText}
            placeholder={t('people.find-placeholder')}
          />
          <SelectField
            label={t('people.find-show')}
            value={role}
            options={ROLES.map((value) => ({
              value,
              label: t(`people.filter.${value === '' ? 'all' : value}`),
            }))}
            onChange={setRole}
          />
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
          <p className="soft">{t('people.choose')}</p>
        ) : (
          <>
            <button type="button" className="word-button people-back" onClick={() => go('/people')}>
              {t('people.back')}
            </button>
            <PersonCard key={personId} personId={personId} />
          </>
        )}
      </div>
    </div>
  )
}
