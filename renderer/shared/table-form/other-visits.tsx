import { useFormat } from '../format/use-format.ts'
import type { DraftVisit, OtherDraft } from './use-draft.ts'

interface OtherVisitsProps<D> {
  readonly visit: Pick<DraftVisit<D, never>, 'others' | 'goOnWith' | 'discard'>
  readonly inWords: (draft: D) => string
}

/** Unfinished visits that no window is working on, to go on with or to let go: the newest, and the rest folded away. */
export function OtherVisits<D>({ visit, inWords }: OtherVisitsProps<D>) {
  const [newest, ...rest] = visit.others
  if (newest === undefined) return null
  return (
    <div className="other-visits">
      <OtherVisit visit={visit} inWords={inWords} other={newest} />
      {rest.length > 0 && (
        <details>
          <summary>{rest.length === 1 ? 'one more unfinished' : `${rest.length} more unfinished`}</summary>
          {rest.map((other) => (
            <OtherVisit key={other.draftId} visit={visit} inWords={inWords} other={other} />
          ))}
        </details>
      )}
    </div>
  )
}

interface OtherVisitProps<D> extends OtherVisitsProps<D> {
  readonly other: OtherDraft<D>
}

function OtherVisit<D>({ other, inWords, visit }: OtherVisitProps<D>) {
  const format = useFormat()
  return (
    <div className="row">
      <p>
        Unfinished: {inWords(other.draft)}
        {other.keptAt === '' ? '' : `, kept ${format.moment(other.keptAt)}`}
      </p>
      <p className="buttons">
        <button type="button" className="word-button" onClick={() => visit.goOnWith(other)}>
          go on with it
        </button>
        <button type="button" className="word-button" onClick={() => visit.discard(other)}>
          let it go
        </button>
      </p>
    </div>
  )
}
