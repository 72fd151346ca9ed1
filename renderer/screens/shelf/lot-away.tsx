import type { LotRecord } from '../../../db/contract/stock-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { DuplicateFacts } from '../../shared/duplicates/duplicate-facts.tsx'
import { useTexts } from '../../shared/format/use-texts.ts'

/** A safety duplicate: what its holder agreed to and what is due; of one that came home, who held it. */
export function LotAway({ lot }: { readonly lot: LotRecord }) {
  const { t } = useTexts()
  const isAway = lot.role === 'duplicate-elsewhere'
  const [duplicate] = useRead('duplicate.list', isAway ? { lotId: lot.lotId } : null).data?.duplicates ?? []
  if (duplicate === undefined && lot.heldBefore.length === 0) return null
  return (
    <section className="pane-part" aria-label={t('elsewhere.kept-elsewhere')}>
      <h3>{t('elsewhere.kept-elsewhere')}</h3>
      {duplicate !== undefined && <DuplicateFacts duplicate={duplicate} />}
      {lot.heldBefore.map(({ holder, since, until }) => (
        <p key={until}>
          {t('elsewhere.held-before', { holder, since: { day: since }, until: { day: until } })}
        </p>
      ))}
    </section>
  )
}
