import { useState } from 'react'
import { Link } from 'wouter'
import { NEED_STATES, type NeedState } from '../../../db/domain/needs/need.ts'
import { message } from '../../../db/messages/message.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { useListAndCard } from '../../shared/panes/use-list-and-card.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SavedSeason } from '../../shared/season-draft/saved-season.tsx'
import { useSeason } from '../../shared/season-draft/use-season.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { useSettled } from '../../shared/table-form/use-settled.ts'
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
  const { t, pieces } = useTexts()
  const settled = useSettled(text, FIND_AFTER_MS)
  const narrowed = { text: settled, limit, ...(state === '' ? {} : { state }) }
  const list = useRead('regeneration.list', narrowed, { keepLast: true })
  const first = list.data?.needs[0]
  const { card, openCard } = useListAndCard(
    accessionId !== undefined,
    first && needAddress(first.accessionId),
  )
  if (list.error !== null) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined || visit.draft === null)
    return <p className="soft waiting">{t('needs.opening')}</p>
  const { chosen } = visit.draft
  const tick = (ticked: number) => visit.dispatch({ kind: 'ticked', accessionId: ticked })
  const { season, grade, counts, needs, total } = list.data
  return (
    <div className="panes regrow">
      <section className="panes-list" aria-label={t('needs.list')}>
        <header className="head-row regrow-head">
          <h1>{t('needs.season', { year: String(season.year) })}</h1>
          <span className="row">
            <Link href="/regrow/plan">{t('needs.season-plan')}</Link>
            <Link href="/regrow/season">{t('needs.season-notes')}</Link>
            <Link href={seasonListAddress()}>{t('needs.past-lists')}</Link>
          </span>
          <p className="soft">
            {t('needs.sown-about', { sowing: { day: season.sowing }, grade })}{' '}
            <button
              type="button"
              className="word-button"
              aria-expanded={changing}
              onClick={() => setChanging(!changing)}
            >
              {pieces(message('needs.change-season'), {
                aloud: (words) => (
                  <span key="aloud" className="only-aloud">
                    {words}
                  </span>
                ),
              })}
            </button>
          </p>
        </header>
        {changing && <SeasonForm grade={grade} onClose={() => setChanging(false)} />}
        <SavedSeason visit={visit} />
        <div className="fields">
          <TextField
            label={t('needs.find')}
            value={text}
            onChange={setText}
            placeholder={t('needs.find-hint')}
          />
          <SelectField
            label={t('needs.show')}
            value={state}
            options={[
              { value: '', label: t('needs.all-states') },
              ...NEED_STATES.map((value) => ({
                value,
                label: `${t(`needs.state.${value}`)} (${format.number(counts[value])})`,
              })),
            ]}
            onChange={setState}
          />
        </div>
        {needs.length === 0 ? (
          <p>{settled === '' && state === '' ? t('needs.none-yet') : t('needs.nothing-fits')}</p>
        ) : (
          <NeedList needs={needs} chosen={chosen} onTick={tick} onOpen={openCard} />
        )}
        {needs.length < Math.min(total, MOST) && (
          <button type="button" className="word-button" onClick={() => setLimit(MOST)}>
            {t('needs.show-more', { total })}
          </button>
        )}
        <SaveList year={season.year} season={visit.draft} dispatch={visit.dispatch} />
      </section>
      <section className="panes-card" aria-label={t('needs.need')} ref={card}>
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
