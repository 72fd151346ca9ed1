import { useFormat } from '../format/use-format.ts'
import type { OtherDraft } from './use-draft.ts'

interface OtherVisitsProps<D> {
  readonly others: readonly OtherDraft<D>[]
  readonly inWords: (draft: D) => string
  readonly onGoOnWith: (other: OtherDraft<D>) => void
  readonly onLetGo: (other: OtherDraft<D>) => void
}

/** Unfinished visits of other windows, to go on with or to let go. */
export function OtherVisits<D>({ others, inWords, onGoOnWith, onLetGo }: OtherVisitsProps<D>) {
  const format = useFormat()
  return others.map((other) => (
    <p key={other.draftId} className="other-visit">
      <span>
        Unfinished: {inWords(other.draft)}
        {other.keptAt === '' ? '' : `, kept ${format.moment(other.keptAt)}`}.
      </span>{' '}
      <button type="button" className="word-button" onClick={() => onGoOnWith(other)}>
        go on with it
      </button>
      <button type="button" className="word-button" onClick={() => onLetGo(other)}>
        let it go
      </button>
    </p>
  ))
}
