import type { LotRecord } from '../../../db/contract/shelf-operations.ts'
import { ROLE_WORDS } from '../../shared/format/words.ts'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'

/** The tab of the card with the lot's number, and the heading below it. */
export function LotHead({ lot }: { readonly lot: LotRecord }) {
  return (
    <header>
      <p className="card-tab">
        <span className="only-aloud">Lot </span>
        <strong>{lot.lotNumber}</strong>
        <span className="card-tab-role">{ROLE_WORDS[lot.role]}</span>
      </p>
      <div className="card-head card-title">
        <h2 tabIndex={-1}>{lot.variety}</h2>
        <p className="soft">
          {lot.crop}, <i lang="la">{lot.species}</i>
          {lot.synonyms.length > 0 && <>; also known as {lot.synonyms.join(', ')}</>}
        </p>
        {lot.quarantined && <StateMark mark="quarantine" />}
      </div>
    </header>
  )
}
