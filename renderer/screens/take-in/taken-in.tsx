import { useEffect, useRef, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { LabelPrint } from '../../shared/labels/label-print.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { decisionTold } from './gift-decision-fields.tsx'
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
  const { t, say } = useTexts()
  const next = useRef<HTMLButtonElement>(null)
  const [printing, setPrinting] = useState(false)
  useEffect(() => next.current?.focus(), [])
  const takenGifts = visit.gifts.filter(({ decision }) => decision === 'take-in')
  const kept = visit.gifts.filter(({ decision }) => decision !== 'take-in')
  return (
    <section className="taken-in stack-5" aria-label={t('take-in.taken-in')}>
      <h1>{t('take-in.taken-in-title', { count: visit.taken.length, donor: visit.donor })}</h1>
      <ol className="stack-3 taken-in-list fields">
        {visit.taken.map((taken, index) => (
          <li key={taken.lotId} className="envelope flap">
            <p className="new-number">{taken.lotNumber}</p>
            <p className="envelope-name">{takenGifts[index]?.variety}</p>
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
      {kept.length > 0 && (
        <ul className="stack-2" aria-label={t('take-in.without-number')}>
          {kept.map((gift) => (
            <li key={gift.id}>
              <strong>{gift.variety}</strong> {say(decisionTold(gift))}
            </li>
          ))}
        </ul>
      )}
      <p className="buttons">
        <button ref={next} type="button" className="button table-button" onClick={onNextDonor}>
          {t('take-in.next')}
        </button>
        {!printing && visit.taken.length > 0 && (
          <button type="button" className="quiet-button table-button" onClick={() => setPrinting(true)}>
            {t('take-in.print-labels')}
          </button>
        )}
      </p>
      {printing && (
        <LabelPrint
          title={t('take-in.labels', { count: visit.taken.length })}
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
