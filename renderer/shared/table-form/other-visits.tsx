import { useFormat } from '../format/use-format.ts'
import type { OtherDraft } from './use-draft.ts'

interface OtherVisitsProps<D> {
  readonly others: readonly OtherDraft<D>[]
  readonly inWords: (draft: D) => string
  readonly onGoOnWith: (other: OtherDraft<D>) => void
  readonly onDiscard: (other: OtherDraft<D>) => void
}

/** Unfinished visits that no window is working on, to go on with or to let go: the newest, and the rest folded away. */
export function OtherVisits<D>({ others, ...doing }: OtherVisitsProps<D>) {
  const [newest, ...rest] = others
  if (newest === undefined) return null
  return (
    <div className="other-visits">
      <OtherVisit other={newest} {...doing} />
      {rest.length > 0 && (
        <details>
          <summary>{rest.length === 1 ? 'one more unfinished' : `${rest.length} more unfinished`}</summary>
          {rest.map((other) => (
            <OtherVisit key={other.draftId} other={other} {...doing} />
          ))}
        </details>
      )}
    </div>
  )
}

interface OtherVisitProps<D> extends Omit<OtherVisitsProps<D>, 'others'> {
  readonly other: OtherDraft<D>
}

function OtherVisit<D>({ other, inWords, onGoOnWith, onDiscard }: OtherVisitProps<D>) {
  const format = useFormat()
  return (
    <div className="row">
      <p>
        Unfinished: {inWords(other.draft)}
        {other.keptAt === '' ? '' : `, kept ${format.moment(other.keptAt)}`}
      </p>
      <p className="buttons">
        <button type="button" className="word-button" onClick={() => onGoOnWith(other)}>
          go on with it
        </button>
        <button type="button" className="word-button" onClick={() => onDiscard(other)}>
          let it go
        </button>
      </p>
    </div>
  )
}
