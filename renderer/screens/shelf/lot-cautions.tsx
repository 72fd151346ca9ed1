import type { LotRecord } from '../../../db/contract/shelf-operations.ts'
import { CAUTION_WORDS } from '../../../db/domain/cautions/caution-text.ts'
import { capital } from '../../shared/format/words.ts'

/** What can hurt somebody or break a law, in plain text; and why the lot is kept back. */
export function LotCautions({ lot }: { readonly lot: LotRecord }) {
  if (lot.cautions.length === 0 && !lot.quarantined) return null
  const saidBelow = lot.cautions.some(({ text }) => lot.quarantineReason.includes(text))
  return (
    <section className="pane-part card-cautions" aria-label="Cautions">
      {lot.quarantined && (
        <p>
          <strong>In quarantine, not to be handed out.</strong> {saidBelow ? '' : lot.quarantineReason}
        </p>
      )}
      {lot.cautions.map(({ caution, note, text }) => (
        <p key={caution}>
          <strong>{capital(CAUTION_WORDS[caution])}.</strong> {text}
          {note !== '' && !text.includes(note) && <> ({note})</>}
        </p>
      ))}
    </section>
  )
}
