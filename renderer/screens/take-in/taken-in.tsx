import { useEffect, useRef, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { LabelPrint } from '../../shared/labels/label-print.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import type { GiftLine } from './gift-line.ts'

/** A visit that was saved: what the collection answered, beside what was typed. */
export interface SavedVisit {
  readonly donor: string
  readonly gifts: readonly GiftLine[]
  readonly taken: Value<'intake.record'>['taken']
}

interface TakenInProps {
  readonly visit: SavedVisit
  readonly onNextDonor: () => void
}

/** The new numbers of a saved visit, with the labels to print and the next donor one key away. */
export function TakenIn({ visit, onNextDonor }: TakenInProps) {
  const next = useRef<HTMLButtonElement>(null)
  const [printing, setPrinting] = useState(false)
  useEffect(() => next.current?.focus(), [])
  const many = visit.taken.length === 1 ? 'one gift' : `${visit.taken.length} gifts`
  return (
    <section className="taken-in" aria-label="Taken in">
      <h1>
        Taken in: {many} from {visit.donor}
      </h1>
      <ol className="envelopes taken-in-list">
        {visit.taken.map((taken, index) => (
          <li key={taken.lotId} className="envelope">
            <p className="taken-in-number">{taken.lotNumber}</p>
            <p className="envelope-name">{visit.gifts[index]?.variety}</p>
            <p>{taken.words}</p>
            {taken.quarantined && <StateMark mark="quarantine" />}
            {taken.warnings.map((warning) => (
              <p key={warning} className="table-field-warning">
                {warning}
              </p>
            ))}
          </li>
        ))}
      </ol>
      <p className="table-buttons">
        <button ref={next} type="button" className="button table-button" onClick={onNextDonor}>
          Next donor
        </button>
        {!printing && (
          <button type="button" className="quiet-button table-button" onClick={() => setPrinting(true)}>
            Print labels
          </button>
        )}
      </p>
      {printing && (
        <LabelPrint
          title={visit.taken.length === 1 ? 'Its label' : 'Labels of this visit'}
          lotIds={visit.taken.map(({ lotId }) => lotId)}
          contents=""
          onClose={() => {
            setPrinting(false)
            next.current?.focus()
          }}
        />
      )}
    </section>
  )
}
