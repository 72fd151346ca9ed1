import { Link } from 'wouter'
import { lotAddress } from '../../shared/addresses.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { DuplicateFacts } from '../../shared/duplicates/duplicate-facts.tsx'
import { useTexts } from '../../shared/format/use-texts.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** The safety duplicates that others hold: what is due first, then holder by holder. */
export function KeptElsewhere() {
  const { t } = useTexts()
  const list = useRead('duplicate.list', {})
  if (list.error !== null) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined) return <p className="soft waiting">{t('storage.opening')}</p>
  const { duplicates, due } = list.data
  const sorted = duplicates.toSorted(
    (a, b) => Number(b.due.length > 0) - Number(a.due.length > 0) || a.holder.localeCompare(b.holder),
  )
  return (
    <Card className="card" name={t('elsewhere.kept-elsewhere')}>
      <header className="card-head">
        <h2 tabIndex={-1}>{t('elsewhere.kept-elsewhere')}</h2>
        <p>{t('elsewhere.how-many', { lots: duplicates.length, due })}</p>
        <details className="more">
          <summary>{t('elsewhere.why')}</summary>
          <p>{t('elsewhere.why-duplicates')}</p>
        </details>
      </header>
      {sorted.map((duplicate) => (
        <section key={duplicate.lotId} className="pane-part" aria-label={duplicate.lotNumber}>
          <h3>
            <Link href={lotAddress(duplicate.lotId)}>{duplicate.lotNumber}</Link> {duplicate.variety},{' '}
            {duplicate.crop}
          </h3>
          <DuplicateFacts duplicate={duplicate} />
        </section>
      ))}
    </Card>
  )
}
