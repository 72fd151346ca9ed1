import { Link } from 'wouter'
import type { SeasonListHead } from '../../../db/contract/regeneration-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { PaneRows } from '../../shared/panes/pane-rows.tsx'
import { useListAndCard } from '../../shared/panes/use-list-and-card.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { GRADE_WORDS } from './grade-words.ts'
import './regrow.css'
import { Card } from '../../shared/panes/card.tsx'
import { needAddress, seasonListAddress } from './regrow-address.ts'

/** Saved season lists on the left; on the right what one chose, and what became of it. */
export function SeasonListsScreen({ listId }: { readonly listId?: number }) {
  const format = useFormat()
  const read = useRead('season-list.list', {})
  const first = read.data?.lists[0]
  const { card, openCard } = useListAndCard(listId !== undefined, first && seasonListAddress(first.listId))
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return <p className="soft waiting">Opening…</p>
  const { lists } = read.data
  return (
    <div className="panes regrow regrow-past">
      <section className="panes-list" aria-label="List">
        <header className="head-row regrow-head">
          <h1>Season lists</h1>
          <Link href={needAddress()}>Back to this season</Link>
        </header>
        {lists.length === 0 && (
          <p>No list is saved yet. On Regrow, tick what is to be grown and save the list of the season.</p>
        )}
        <PaneRows
          label="Saved lists"
          rows={lists.map((list) => ({
            address: seasonListAddress(list.listId),
            content: (
              <>
                <span className="strong">Season {list.season}</span>
                <span className="soft">
                  saved {format.day(list.on)} · {list.chosen} of {list.accessions} to grow
                </span>
              </>
            ),
          }))}
          onOpen={openCard}
        />
      </section>
      <section className="panes-card" aria-label="What became of it" ref={card}>
        {listId !== undefined && lists.length > 0 && <OneList key={listId} listId={listId} />}
      </section>
    </div>
  )
}

function OneList({ listId }: { readonly listId: number }) {
  const format = useFormat()
  const read = useRead('season-list.get', { listId })
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return <p className="soft">Opening…</p>
  const { list, lines } = read.data
  return (
    <Card className="card" name={`Season ${list.season}`}>
      <header className="card-head need-head">
        <h2 tabIndex={-1}>Season {list.season}</h2>
        <p>{headInWords(list, format.day(list.on))}</p>
      </header>
      <div className="pane-part list-table-frame">
        <RowTable
          className="list-table"
          label={`Season ${list.season}, then and now`}
          rowHeads
          rows={lines}
          keyOf={({ accessionId }) => accessionId}
          columns={[
            [
              'Variety',
              ({ accessionId, variety, chosen }) => (
                <>
                  <Link href={needAddress(accessionId)}>{variety}</Link>
                  <span className="soft">{chosen ? 'to grow' : 'left for later'}</span>
                </>
              ),
            ],
            [
              'Then',
              ({ stateThen, livingThen, keepThen }) => (
                <>
                  <StateMark mark={stateThen} />
                  <span className="soft">{`${format.number(livingThen)} of ${format.number(keepThen)}`}</span>
                </>
              ),
            ],
            ['What became of it', ({ became }) => became],
            [
              'Now',
              ({ stateNow, livingNow }) => (
                <>
                  <StateMark mark={stateNow} />
                  <span className="soft">{format.number(livingNow)} living</span>
                </>
              ),
            ],
          ]}
        />
      </div>
    </Card>
  )
}

function headInWords(list: SeasonListHead, day: string): string {
  const note = list.note === '' ? '' : ` ${list.note}`
  return `Saved ${day}, for ${GRADE_WORDS[list.grade]}: ${list.chosen} of ${list.accessions} to grow.${note}`
}
