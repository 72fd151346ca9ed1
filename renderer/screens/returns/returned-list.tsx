import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { message } from '../../../db/messages/message.ts'
import { ALOUD } from '../../shared/format/aloud.tsx'
import { useTexts } from '../../shared/format/use-texts.ts'
import { LabelPrint } from '../../shared/labels/label-print.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'

/** A lot that came back: its new number, what it was grown from, and the promise that it kept. */
export interface TakenBack {
  readonly lot: Value<'return.record'>['taken']
  readonly person: string
  readonly variety: string
  readonly parentNumber: string
  readonly promiseKept: string
}

/** The lots that came back on this visit, newest first, each with its label to print. */
export function ReturnedList({ taken }: { readonly taken: readonly TakenBack[] }) {
  const { t } = useTexts()
  return (
    <ol className="stack-3" aria-label={t('returns.taken-back')}>
      {taken.map((each) => (
        <li key={each.lot.lotId} className="envelope flap">
          <ReturnedLot {...each} />
        </li>
      ))}
    </ol>
  )
}

function ReturnedLot({ lot, person, variety, parentNumber, promiseKept }: TakenBack) {
  const { t, pieces } = useTexts()
  const [printing, setPrinting] = useState(false)
  return (
    <>
      <p className="new-number">{lot.lotNumber}</p>
      <p className="envelope-name">{variety}</p>
      <div className="envelope-words">
        <p>{lot.words}</p>
        <p className="soft">{t('returns.grown-by', { parent: parentNumber, person })}</p>
        {promiseKept !== '' && <p>{t('returns.kept-promise', { promise: promiseKept })}</p>}
        {lot.quarantined && <StateMark mark="quarantine" />}
        {lot.warnings.map((warning) => (
          <p key={warning} className="table-field-warning">
            {warning}
          </p>
        ))}
      </div>
      {!printing && (
        <p className="envelope-doing">
          <button type="button" className="word-button" onClick={() => setPrinting(true)}>
            {pieces(message('returns.label', { lot: lot.lotNumber }), ALOUD)}
          </button>
        </p>
      )}
      {printing && (
        <LabelPrint
          title={t('returns.label-of', { lot: lot.lotNumber })}
          lotIds={[lot.lotId]}
          contents=""
          onClose={() => setPrinting(false)}
        />
      )}
    </>
  )
}
