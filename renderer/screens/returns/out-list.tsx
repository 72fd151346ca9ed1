import { type KeyboardEvent, useId, useState } from 'react'
import type { VisitOut } from '../../../db/contract/withdrawal-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PromiseMark } from '../../shared/promise-mark/promise-mark.tsx'
import { movedActive } from '../../shared/table-form/suggest-options.ts'

type LotOut = VisitOut['lots'][number]

interface OutListProps {
  readonly person: string
  readonly visits: readonly VisitOut[]
  readonly onPick: (lot: LotOut, visit: VisitOut) => void
  readonly onSomethingElse: () => void
}

const MOST_SHOWN = 8

/** What somebody has out, what is still promised first: arrows move, Enter says that it came back. */
export function OutList({ person, visits, onPick, onSomethingElse }: OutListProps) {
  const { t } = useTexts()
  const id = useId()
  const [at, setAt] = useState(0)
  const lots = visits.flatMap((visit) => visit.lots.map((lot) => ({ lot, visit })))
  const offered = lots.slice(0, MOST_SHOWN)
  const active = Math.min(at, offered.length)
  const take = (index: number) => {
    const chosen = offered[index]
    if (chosen === undefined) onSomethingElse()
    else onPick(chosen.lot, chosen.visit)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return
    const by = { ArrowDown: 1, ArrowUp: -1 } as const
    if (event.key !== 'Enter' && !(event.key in by)) return
    event.preventDefault()
    if (event.key === 'Enter') take(active)
    else setAt(movedActive(active, by[event.key as keyof typeof by], offered.length + 1))
  }
  return (
    <section className="stack-2" aria-label={t('returns.has-out', { person })}>
      <h2 id={`${id}-heading`}>{t('returns.has-out', { person })}</h2>
      <div
        className="out-list-lots"
        role="listbox"
        tabIndex={0}
        data-step="out"
        aria-labelledby={`${id}-heading`}
        aria-activedescendant={`${id}-${active}`}
        onKeyDown={onKeyDown}
      >
        {offered.map(({ lot, visit }, index) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the list hears the keys
          <div
            key={`${visit.withdrawalId}-${lot.lotId}`}
            id={`${id}-${index}`}
            className="out-lot choice"
            role="option"
            tabIndex={-1}
            aria-selected={index === active}
            onClick={() => take(index)}
          >
            <OutLot lot={lot} visit={visit} />
          </div>
        ))}
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: the list hears the keys */}
        <div
          id={`${id}-${offered.length}`}
          className="out-lot choice out-lot-else"
          role="option"
          tabIndex={-1}
          aria-selected={active === offered.length}
          onClick={onSomethingElse}
        >
          {offered.length < lots.length
            ? t('returns.other-of', { count: lots.length })
            : t('returns.something-else')}
        </div>
      </div>
    </section>
  )
}

function OutLot({ lot, visit }: { readonly lot: LotOut; readonly visit: VisitOut }) {
  const format = useFormat()
  const { t } = useTexts()
  const { promise, back } = visit
  const came = back.map(({ lotNumber }) => lotNumber)
  return (
    <>
      <span className="strong">{lot.variety}</span>
      <span className="soft">
        {lot.lotNumber} · {lot.words}, {format.day(visit.on)}
        {came.length > 0 && ` · ${t('returns.came-back-as', { lots: { list: came } })}`}
      </span>
      {promise && promise.state !== 'met' && (
        <span className="row">
          <PromiseMark state={promise.state} />{' '}
          <span>
            {promise.by === null
              ? promise.words
              : t('promise.by', { promise: promise.words, day: { day: promise.by } })}
          </span>
        </span>
      )}
    </>
  )
}
