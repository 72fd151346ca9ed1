import { useInfiniteQuery } from '@tanstack/react-query'
import type { Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

const AT_ONCE = 40

type Entry = Value<'entry.list'>['entries'][number]

/** All that was written in the book, newest first; what can be, can be taken back. */
export function WhatWasWritten() {
  const written = useInfiniteQuery({
    queryKey: ['entry.list', AT_ONCE],
    queryFn: ({ pageParam }) =>
      call('entry.list', { limit: AT_ONCE, ...(pageParam === null ? {} : { before: pageParam }) }),
    initialPageParam: null as number | null,
    getNextPageParam: (last) => (last.entries.length < AT_ONCE ? undefined : last.entries.at(-1)?.entryId),
  })
  const format = useFormat()
  const takeBack = useWrite('entry.take-back')
  const entries = written.data?.pages.flatMap((page) => page.entries) ?? []
  return (
    <section className="settings-written" aria-labelledby="what-was-written">
      <h2 id="what-was-written">What was written</h2>
      {written.error !== null && <ProblemText problem={written.error.problem} />}
      {takeBack.error !== null && <ProblemText problem={takeBack.error.problem} />}
      {written.isSuccess && entries.length === 0 && (
        <p className="soft">Nothing yet. Whatever is taken in, handed out or put right is listed here.</p>
      )}
      {byDay(entries, format.dayOfMoment).map(([day, ofDay]) => (
        <section key={day}>
          <h3 className="written-day">{day}</h3>
          <ol className="written-list">
            {ofDay.map((entry) => (
              <WrittenEntry
                key={entry.entryId}
                entry={entry}
                busy={takeBack.isPending}
                onTakeBack={() => takeBack.mutate({ entryId: entry.entryId })}
              />
            ))}
          </ol>
        </section>
      ))}
      {written.hasNextPage && (
        <button
          type="button"
          className="quiet-button"
          disabled={written.isFetchingNextPage}
          onClick={() => void written.fetchNextPage()}
        >
          Show earlier entries
        </button>
      )}
    </section>
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
  readonly onTakeBack: () => void
}

function WrittenEntry({ entry, busy, onTakeBack }: WrittenEntryProps) {
  const format = useFormat()
  return (
    <li className="written">
      <time className="written-when soft" dateTime={entry.recordedAt}>
        {format.time(entry.recordedAt)}
      </time>
      <p className="written-said">
        {entry.said}
        {entry.takenBack && <span className="soft"> (taken back)</span>}
      </p>
      {entry.undoable && (
        <button type="button" className="word-button" disabled={busy} onClick={onTakeBack}>
          take back<span className="only-aloud">: {entry.said}</span>
        </button>
      )}
    </li>
  )
}
