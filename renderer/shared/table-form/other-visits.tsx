import type { Message } from '../../../db/messages/message.ts'
import { useTexts } from '../format/use-texts.ts'
import type { DraftVisit, OtherDraft } from './use-draft.ts'

interface OtherVisitsProps<D> {
  readonly visit: Pick<DraftVisit<D, never>, 'others' | 'goOnWith' | 'discard'>
  readonly inWords: (draft: D) => Message | string
}

/** Unfinished visits that no window is working on, to go on with or to let go: the newest, and the rest folded away. */
export function OtherVisits<D>({ visit, inWords }: OtherVisitsProps<D>) {
  const { t } = useTexts()
  const [newest, ...rest] = visit.others
  if (newest === undefined) return null
  return (
    <div className="other-visits">
      <OtherVisit visit={visit} inWords={inWords} other={newest} />
      {rest.length > 0 && (
        <details>
          <summary>{t('table.more-unfinished', { more: rest.length })}</summary>
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
  const { t } = useTexts()
  const words = inWords(other.draft)
  return (
    <div className="row">
      <p>
        {other.keptAt === ''
          ? t('table.unfinished', { visit: words })
          : t('table.unfinished-kept', { visit: words, kept: { moment: other.keptAt } })}
      </p>
      <p className="buttons">
        <button type="button" className="word-button" onClick={() => visit.goOnWith(other)}>
          {t('table.go-on')}
        </button>
        <button type="button" className="word-button" onClick={() => visit.discard(other)}>
          {t('table.let-go')}
        </button>
      </p>
    </div>
  )
}
