import { Link } from 'wouter'
import { traceAddress } from '../../shared/addresses.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { RecallLinks } from '../../shared/recalls/recall-links.tsx'

/** The way from a lot's card to what hangs together with it, and the recalls that took it in. */
export function LotTraceLinks({ lotId }: { readonly lotId: number }) {
  const { t } = useTexts()
  return (
    <section className="pane-part" aria-label={t('trace.on-card')}>
      <p>
        <Link href={traceAddress(lotId)}>{t('trace.link')}</Link>
      </p>
      <RecallLinks lotId={lotId} />
    </section>
  )
}
