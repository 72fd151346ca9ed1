import { useState } from 'react'
import { Link } from 'wouter'
import { NEED_STATES, type NeedState } from '../../../db/domain/needs/need.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { STATE_WORDS } from '../../shared/format/words.ts'
import { useListAndCard } from '../../shared/panes/use-list-and-card.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SavedSeason } from '../../shared/season-draft/saved-season.tsx'
import { useSeason } from '../../shared/season-draft/use-season.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import { GRADE_WORDS } from './grade-words.ts'
import { NeedCard } from './need-card.tsx'
import { NeedList } from './need-list.tsx'
import './regrow.css'
import { needAddress, seasonListAddress } from './regrow-address.ts'
import { SaveList, SeasonForm } from './season-forms.tsx'

const PAGE = 50
const MOST = 500
const FIND_AFTER_MS = 80

/** What to regrow this season: the ranked list on the left, and on the right why, and what waiting costs. */
export function RegrowScreen({ accessionId }: { readonly accessionId?: number }) {
  const [text, setText] = useState('')
  const [state, setState] = useState<NeedState | ''>('')
  const [limit, setLimit] = useState(PAGE)
  const [changing, setChanging] = useState(false)
  const visit = useSeason()
  const format = useFormat()
  const settled = useSettled(text, FIND_AFTER_MS)
  const narrowed = { text: settled, limit, ...(state === '' ? {} : { state }) }
  const list = useRead('regeneration.list', narrowed, { keepLast: true })
  const first = list.data?.needs[0]
  const { card, openCard } = useListAndCard(
    accessionId !== undefined,
    first && needAddress(first.accessionId),
  )
  if (list.error !== null) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined || visit.draft === null) return <p className="soft waiting">Opening…</p>
  const { chosen } = visit.draft
  const tick = (ticked: number) => visit.dispatch({ kind: 'ticked', accessionId: ticked })
  const { season, grade, counts, needs, total } = list.data
  return (
    <div className="panes regrow">
      <section className="panes-list" aria-label="List">
        <header className="head-row regrow-head">
          <h1>Season {season.year}</h1>
          <span className="row">
            <Link href="/regrow/plan">Season plan</Link>
            <Link href="/regrow/season">Season notes</Link>
            <Link href={seasonListAddress()}>Past season lists</Link>
          </span>
          <p className="soft">
            Sown about {format.day(season.sowing)}, for {GRADE_WORDS[grade]}.{' '}
            <button
              type="button"
              className="word-button"
              aria-expanded={changing}
              onClick={() => setChanging(!changing)}
            >
              Change<span className="only-aloud"> when and for what</span>
            </button>
          </p>
        </header>
        {changing && <SeasonForm grade={grade} onClose={() => setChanging(false)} />}
        <SavedSeason visit={visit} />
        <div className="fields">
          <TextField label="Find" value={text} onChange={setText} placeholder="a few letters" />
          <SelectField
            label="Show"
            value={state}
            options={[
              { value: '', label: 'all states' },
              ...NEED_STATES.map((value) => ({
                value,
                label: `${STATE_WORDS[value]} (${format.number(counts[value])})`,
              })),
            ]}
            onChange={setState}
          />
        </div>
        {needs.length === 0 ? (
          <p>
            {settled === '' && state === ''
              ? 'There is no accession yet. Take in brings seed into the drawer.'
              : 'Nothing fits that. Take letters away, or show all states.'}
          </p>
        ) : (
          <NeedList needs={needs} chosen={chosen} onTick={tick} onOpen={openCard} />
        )}
        {needs.length < Math.min(total, MOST) && (
          <button type="button" className="word-button" onClick={() => setLimit(MOST)}>
            {`Show more of ${format.number(total)}`}
          </button>
        )}
        <SaveList year={season.year} season={visit.draft} dispatch={visit.dispatch} />
      </section>
      <section className="panes-card" aria-label="Need" ref={card}>
        {accessionId !== undefined && (
          <NeedCard
            key={accessionId}
            accessionId={accessionId}
            chosen={chosen.includes(accessionId)}
            onTick={() => tick(accessionId)}
            nextYear={season.year + 1}
          />
        )}
      </section>
    </div>
  )
}
