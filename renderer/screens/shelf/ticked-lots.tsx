import { useMutation } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { stocktakeAddress } from '../../shared/addresses.ts'
import { call } from '../../shared/client/call.ts'
import type { ProblemError } from '../../shared/client/problem-error.ts'
import { saveFile } from '../../shared/client/save-file.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { MoveLots } from './actions/move-lots.tsx'
import { MOST_TICKED, type Ticks } from './use-ticks.ts'

/** What can be done with all lots that are ticked. */
export function TickedLots({ ticks }: { readonly ticks: Ticks }) {
  const { lotIds } = ticks
  const [moving, setMoving] = useState(false)
  const moveButton = useRef<HTMLButtonElement>(null)
  const toTray = useWrite('tray.add')
  const save = useMutation<Value<'lot.export'>, ProblemError>({
    mutationFn: () => call('lot.export', { lotIds: [...lotIds] }),
    onSuccess: ({ fileName, csv }) => saveFile(fileName, 'text/csv', csv),
  })
  const error = toTray.error ?? save.error
  if (lotIds.length === 0) return null
  return (
    <section className="ticked-lots" aria-label="Ticked lots">
      <p className="ticked-count" role="status">
        {lotIds.length === 1 ? '1 lot ticked' : `${lotIds.length} lots ticked`}
        {lotIds.length === MOST_TICKED && <span className="soft">, as many as go at once</span>}
      </p>
      <button
        ref={moveButton}
        type="button"
        className="quiet-button"
        aria-expanded={moving}
        onClick={() => setMoving(!moving)}
      >
        Move
      </button>
      <button
        type="button"
        className="quiet-button"
        disabled={toTray.isPending}
        onClick={() => toTray.mutate({ items: lotIds.map((lotId) => ({ kind: 'label', lotId })) })}
      >
        Labels to the tray
      </button>
      <button type="button" className="quiet-button" disabled={save.isPending} onClick={() => save.mutate()}>
        Save as a table
      </button>
      <Link href={stocktakeAddress(lotIds)}>Take stock of them</Link>
      <button type="button" className="word-button" onClick={ticks.untickAll}>
        untick all
      </button>
      {error !== null && <ProblemText problem={error.problem} />}
      {moving && (
        <MoveLots
          lotIds={lotIds}
          from={null}
          keptAs="ticked/move"
          onClose={() => {
            setMoving(false)
            moveButton.current?.focus()
          }}
        />
      )}
    </section>
  )
}
