import { Link } from 'wouter'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PaneRows } from '../../shared/panes/pane-rows.tsx'
import { useListAndCard } from '../../shared/panes/use-list-and-card.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import './regrow.css'
import { Card } from '../../shared/panes/card.tsx'
import { needAddress, seasonListAddress } from './regrow-address.ts'

/** Saved season lists on the left; on the right what one chose, and what became of it. */
export function SeasonListsScreen({ listId }: { readonly listId?: number }) {
  const { t } = useTexts()
  const read = useRead('season-list.list', {})
  const first = read.data?.lists[0]
  const { card, openCard } = useListAndCard(listId !== undefined, first && seasonListAddress(first.listId))
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return <p className="soft waiting">{t('needs.opening')}</p>
  const { lists } = read.data
  return (
    <div className="panes regrow regrow-past">
      <section className="panes-list" aria-label={t('needs.list')}>
        <header className="head-row regrow-head">
          <h1>{t('needs.lists')}</h1>
          <Link href={needAddress()}>{t('needs.back-to-season')}</Link>
        </header>
        {lists.length === 0 && <p>{t('needs.no-list')}</p>}
        <PaneRows
          label={t('needs.saved-lists')}
          rows={lists.map((list) => ({
            address: seasonListAddress(list.listId),
            content: (
              <>
                <span className="strong">{t('needs.season', { year: String(list.season) })}</span>
                <span className="soft">
                  {t('needs.list-head', { on: { day: list.on }, chosen: list.chosen, all: list.accessions })}
                </span>
              </>
            ),
          }))}
          onOpen={openCard}
        />
      </section>
      <section className="panes-card" aria-label={t('needs.became')} ref={card}>
        {listId !== undefined && lists.length > 0 && <OneList key={listId} listId={listId} />}
      </section>
    </div>
  )
}

function OneList({ listId }: { readonly listId: number }) {
  const { t } = useTexts()
  const read = useRead('season-list.get', { listId })
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return <p className="soft">{t('needs.opening')}</p>
  const { list, lines } = read.data
  return (
    <Card className="card" name={t('needs.season', { year: String(list.season) })}>
      <header className="card-head need-head">
        <h2 tabIndex={-1}>{t('needs.season', { year: String(list.season) })}</h2>
        <p>
          {t('needs.list-summary', {
            on: { day: list.on },
            grade: list.grade,
            chosen: list.chosen,
            all: list.accessions,
          })}{' '}
          {list.note}
        </p>
      </header>
      <div className="pane-part list-table-frame">
        <RowTable
          className="list-table"
          label={t('needs.then-and-now', { year: String(list.season) })}
          rowHeads
          rows={lines}
          keyOf={({ accessionId }) => accessionId}
          columns={[
            [
              t('needs.variety'),
              ({ accessionId, variety, chosen }) => (
                <>
                  <Link href={needAddress(accessionId)}>{variety}</Link>
                  <span className="soft">{chosen ? t('needs.to-grow') : t('needs.left-for-later')}</span>
                </>
              ),
            ],
            [
              t('needs.then'),
              ({ stateThen, livingThen, keepThen }) => (
                <>
                  <StateMark mark={stateThen} />
                  <span className="soft">{t('needs.living-of', { living: livingThen, keep: keepThen })}</span>
                </>
              ),
            ],
            [
              t('needs.became'),
              ({ became }) => (became.length === 0 ? t('season.became-nothing') : became.join('; ')),
            ],
            [
              t('needs.now'),
              ({ stateNow, livingNow }) => (
                <>
                  <StateMark mark={stateNow} />
                  <span className="soft">{t('needs.living-now', { living: livingNow })}</span>
                </>
              ),
            ],
          ]}
        />
      </div>
    </Card>
  )
}
