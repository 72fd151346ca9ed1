import { useState } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { message } from '../../../db/messages/message.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { ReleaseForm } from '../../shared/card-form/release-form.tsx'
import { ALOUD } from '../../shared/format/aloud.tsx'
import { useTexts } from '../../shared/format/use-texts.ts'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'

type Quarantined = Value<'gift.list'>['quarantined'][number]

/** Lots that were taken in but are kept back until somebody looked; each is released right here. */
export function QuarantinedLots({ lots }: { readonly lots: readonly Quarantined[] }) {
  const { t } = useTexts()
  return (
    <section className="stack-2" aria-labelledby="in-quarantine">
      <h2 id="in-quarantine" tabIndex={-1}>
        {t('gifts.quarantine')}
      </h2>
      {lots.length === 0 ? (
        <p className="soft">{t('gifts.quarantine-none')}</p>
      ) : (
        <ul className="pane-rows ruled">
          {lots.map((lot) => (
            <QuarantinedLot key={lot.lotId} lot={lot} />
          ))}
        </ul>
      )}
    </section>
  )
}

function QuarantinedLot({ lot }: { readonly lot: Quarantined }) {
  const { pieces } = useTexts()
  const [releasing, setReleasing] = useState(false)
  return (
    <li className="stack-1">
      <p className="strong">
        <Link href={lotAddress(lot.lotId)}>{lot.lotNumber}</Link> {lot.variety}
      </p>
      <p className="row">
        <StateMark mark="quarantine" /> {lot.crop}
        {lot.reason === '' ? '' : ` · ${lot.reason}`}
      </p>
      {releasing ? (
        <ReleaseForm
          lotId={lot.lotId}
          reason=""
          draftName={`${lot.lotId}/quarantine`}
          onClose={() => setReleasing(false)}
        />
      ) : (
        <p>
          <button type="button" className="quiet-button" onClick={() => setReleasing(true)}>
            {pieces(message('gifts.quarantine-release', { lot: lot.lotNumber }), ALOUD)}
          </button>
        </p>
      )}
    </li>
  )
}
