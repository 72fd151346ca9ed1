import { useState } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { message } from '../../../db/messages/message.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { CheckReturnForm, WhatIsKnown } from '../../shared/card-form/check-return-form.tsx'
import { ALOUD } from '../../shared/format/aloud.tsx'
import { useTexts } from '../../shared/format/use-texts.ts'

type ToCheck = Value<'return.list-to-check'>['returns'][number]

/** Returns and harvests that wait, longest first; each is checked right here. */
export function ReturnsToCheck({ returns }: { readonly returns: readonly ToCheck[] }) {
  const { t } = useTexts()
  return (
    <section className="stack-2" aria-labelledby="to-check">
      <h2 id="to-check" tabIndex={-1}>
        {t('returns.to-check')}
      </h2>
      {returns.length === 0 ? (
        <p className="soft">{t('returns.to-check-none')}</p>
      ) : (
        <ul className="pane-rows ruled">
          {returns.map((back) => (
            <ReturnToCheck key={back.lotId} back={back} />
          ))}
        </ul>
      )}
    </section>
  )
}

function ReturnToCheck({ back }: { readonly back: ToCheck }) {
  const { t, pieces } = useTexts()
  const [checking, setChecking] = useState(false)
  const { lotId, lotNumber, variety, crop, person, on, reason } = back
  return (
    <li className="stack-1">
      <p className="strong">
        <Link href={lotAddress(lotId)}>{lotNumber}</Link> {variety}
      </p>
      <p className="soft">{t('returns.to-check-line', { crop, person, day: { day: on } })}</p>
      {checking ? (
        <CheckReturnForm
          lotId={lotId}
          reason={reason}
          back={back}
          draftName={`${lotId}/check`}
          onClose={() => setChecking(false)}
        />
      ) : (
        <>
          <WhatIsKnown reason={reason} back={back} />
          <p>
            <button type="button" className="quiet-button" onClick={() => setChecking(true)}>
              {pieces(message('returns.check-lot', { lot: lotNumber }), ALOUD)}
            </button>
          </p>
        </>
      )}
    </li>
  )
}
