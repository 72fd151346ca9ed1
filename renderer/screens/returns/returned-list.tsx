import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
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
  return (
    <ol className="stack-3" aria-label="Taken back">
      {taken.map((each) => (
        <li key={each.lot.lotId} className="envelope flap">
          <ReturnedLot {...each} />
        </li>
      ))}
    </ol>
  )
}

function ReturnedLot({ lot, person, variety, parentNumber, promiseKept }: TakenBack) {
  const [printing, setPrinting] = useState(false)
  return (
    <>
      <p className="new-number">{lot.lotNumber}</p>
      <p className="envelope-name">{variety}</p>
      <div className="envelope-words">
        <p>{lot.words}</p>
        <p className="soft">
          from {parentNumber}, grown by {person}
        </p>
        {promiseKept !== '' && <p>Promise kept: {promiseKept}</p>}
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
            print label<span className="only-aloud"> of {lot.lotNumber}</span>
          </button>
        </p>
      )}
      {printing && (
        <LabelPrint
          title={`Label of ${lot.lotNumber}`}
          lotIds={[lot.lotId]}
          contents=""
          onClose={() => setPrinting(false)}
        />
      )}
    </>
  )
}
