import { useMutation } from '@tanstack/react-query'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { stocktakeAddress } from '../../shared/addresses.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { call } from '../../shared/client/call.ts'
import { bytesOf } from '../../shared/client/file-bytes.ts'
import type { ProblemError } from '../../shared/client/problem-error.ts'
import { saveFile } from '../../shared/client/save-file.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { ContainerOfLots, MoveLots } from './actions/keeping-forms.tsx'
import { MOST_TICKED, type Ticks } from './use-ticks.ts'

type Doing = 'move' | 'container'
const DOINGS: readonly (readonly [Doing, string])[] = [
  ['move', 'Move'],
  ['container', 'Container'],
]
const WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

/** What can be done with all lots that are ticked. */
export function TickedLots({ ticks }: { readonly ticks: Ticks }) {
  const { lotIds } = ticks
  const { open, button, close } = useOpenForm<Doing>()
  const toTray = useWrite('tray.add')
  const save = useMutation<Value<'lot.export'>, ProblemError>({
    mutationFn: () => call('lot.export', { lotIds: [...lotIds] }),
    onSuccess: ({ fileName, csv }) => saveFile(fileName, 'text/csv', csv),
  })
  const book = useMutation<Value<'lot.workbook'>, ProblemError>({
    mutationFn: () => call('lot.workbook', { lotIds: [...lotIds] }),
    onSuccess: ({ fileName, content }) => saveFile(fileName, WORKBOOK, bytesOf(content)),
  })
  const error = toTray.error ?? save.error ?? book.error
  if (lotIds.length === 0) return null
  return (
    <section className="ticked-lots buttons" aria-label="Ticked lots">
      <p role="status">
        {lotIds.length === 1 ? '1 lot ticked' : `${lotIds.length} lots ticked`}
        {lotIds.length === MOST_TICKED && <span className="soft">, as many as go at once</span>}
      </p>
      {DOINGS.map(([name, word]) => (
        <button key={name} type="button" className="quiet-button" {...button(name)}>
          {word}
        </button>
      ))}
      <ActionButton
        className="quiet-button"
        off={toTray.isPending}
        onClick={() => toTray.mutate({ items: lotIds.map((lotId) => ({ kind: 'label', lotId })) })}
      >
        Labels to the tray
      </ActionButton>
      <ActionButton className="quiet-button" off={save.isPending} onClick={() => save.mutate()}>
        Save as a table
      </ActionButton>
      <ActionButton className="quiet-button" off={book.isPending} onClick={() => book.mutate()}>
        Save as a workbook
      </ActionButton>
      <Link href={stocktakeAddress(lotIds)}>Take stock of them</Link>
      <button type="button" className="word-button" onClick={ticks.untickAll}>
        untick all
      </button>
      {error !== null && <ProblemText problem={error.problem} />}
      {open === 'move' && (
        <MoveLots lotIds={lotIds} from={null} draftName="ticked/move" onClose={() => close('move')} />
      )}
      {open === 'container' && (
        <ContainerOfLots lotIds={lotIds} draftName="ticked/container" onClose={() => close('container')} />
      )}
    </section>
  )
}
