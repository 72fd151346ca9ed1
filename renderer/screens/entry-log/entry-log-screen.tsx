import { useInfiniteQuery } from '@tanstack/react-query'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { call } from '../../shared/client/call.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import './entry-log.css'

const AT_ONCE = 40

type Entry = Value<'entry.list'>['entries'][number]

/** All that was written in the book, newest first; what can be, can be taken back. */
export function EntryLogScreen() {
  const { t } = useTexts()
  const written = useInfiniteQuery({
    queryKey: ['entry.list', AT_ONCE],
    queryFn: ({ pageParam }) =>
      call('entry.list', { limit: AT_ONCE, ...(pageParam === null ? {} : { before: pageParam }) }),
    initialPageParam: null as number | null,
    getNextPageParam: (last) => (last.entries.length < AT_ONCE ? undefined : last.entries.at(-1)?.entryId),
  })
  const format = useFormat()
  const takeBack = useWrite('entry.undo')
  const entries = written.data?.pages.flatMap((page) => page.entries) ?? []
  const days = byDay(entries, format.dayOfMoment)
  const today = format.dayOfMoment(new Date().toISOString())
  return (
    <div className="page">
      <h1>{t('screen.written')}</h1>
      {written.error !== null && <ProblemText problem={written.error.problem} />}
      {takeBack.error !== null && <ProblemText problem={takeBack.error.problem} />}
      {written.isSuccess && entries.length === 0 && <p className="soft">{t('written.nothing-yet')}</p>}
      {days[0] !== undefined && days[0][0] !== today && <p className="soft">{t('written.nothing-today')}</p>}
      {days.map(([day, ofDay]) => (
        <section key={day}>
          <h2 className="written-day soft">{day}</h2>
          <ol className="ruled">
            {ofDay.map((entry) => (
              <WrittenEntry
                key={entry.entryId}
                entry={entry}
                busy={takeBack.isPending}
                onUndo={() => takeBack.mutate({ entryId: entry.entryId })}
              />
            ))}
          </ol>
        </section>
      ))}
      {written.hasNextPage && (
        <ActionButton
          className="quiet-button"
          off={written.isFetchingNextPage}
          onClick={() => void written.fetchNextPage()}
        >
          {t('written.show-earlier')}
        </ActionButton>
      )}
    </div>
  )
}

/** The entries under the day on which each was written, in the order given. */
function byDay(
  entries: readonly Entry[],
  dayOf: (iso: string) => string,
): readonly (readonly [string, Entry[]])[] {
  const days = new Map<string, Entry[]>()
  for (const entry of entries) {
    const day = dayOf(entry.recordedAt)
    days.set(day, [...(days.get(day) ?? []), entry])
  }
  return [...days]
}

interface WrittenEntryProps {
  readonly entry: Entry
  readonly busy: boolean
  readonly onUndo: () => void
}

function WrittenEntry({ entry, busy, onUndo }: WrittenEntryProps) {
  const { t } = useTexts()
  const format = useFormat()
  const lots = new Map(entry.lines.map(({ lotId, lotNumber }) => [lotId, lotNumber]))
  return (
    <li className="written">
      <time className="soft" dateTime={entry.recordedAt}>
        {format.time(entry.recordedAt)}
      </time>
      <p>
        {format.sentence(entry.said)}
        {entry.people.length > 0 && <span className="soft"> · {entry.people.join(', ')}</span>}
        {entry.by !== '' && <span className="soft"> · {t('entry.by', { name: entry.by })}</span>}
        {entry.station !== '' && (
          <span className="soft"> · {t('entry.at-station', { station: entry.station })}</span>
        )}
        {entry.overridden !== '' && <span className="soft"> · {entry.overridden}</span>}
        {entry.takenBack && <span className="soft"> ({t('written.undone')})</span>}
      </p>
      {entry.undoable && (
        <ActionButton className="word-button" off={busy} onClick={onUndo}>
          {t('written.undo')}
          <span className="only-aloud">: {format.sentence(entry.said)}</span>
        </ActionButton>
      )}
      {lots.size > 1 && <LotsOfEntry lots={lots} />}
    </li>
  )
}

const MOST_LOTS_SHOWN = 4

/** Every lot of an entry; many are folded, so that the keyboard need not pass through each. */
function LotsOfEntry({ lots }: { readonly lots: ReadonlyMap<number, string> }) {
  const { t } = useTexts()
  const links = (
    <span className="written-lots row small">
      {[...lots].map(([lotId, lotNumber]) => (
        <Link key={lotId} href={lotAddress(lotId)}>
          {lotNumber}
        </Link>
      ))}
    </span>
  )
  if (lots.size <= MOST_LOTS_SHOWN) return links
  return (
    <details className="written-many small soft">
      <summary>{t('written.lots', { lots: lots.size })}</summary>
      {links}
    </details>
  )
}
