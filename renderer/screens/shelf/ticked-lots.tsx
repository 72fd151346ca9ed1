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
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { ContainerOfLots, MoveLots } from './actions/keeping-forms.tsx'
import { MOST_TICKED, type Ticks } from './use-ticks.ts'

type Doing = 'move' | 'container'
const DOINGS: readonly Doing[] = ['move', 'container']
const WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

/** What can be done with all lots that are ticked. */
export function TickedLots({ ticks }: { readonly ticks: Ticks }) {
  const { t } = useTexts()
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
    <section className="ticked-lots buttons" aria-label={t('shelf.ticked-lots')}>
      <p role="status">
        {lotIds.length === MOST_TICKED
          ? t('shelf.ticked-most', { lots: lotIds.length })
          : t('shelf.ticked', { lots: lotIds.length })}
      </p>
      {DOINGS.map((name) => (
        <button key={name} type="button" className="quiet-button" {...button(name)}>
          {t(`shelf.do-${name}`)}
        </button>
      ))}
      <ActionButton
        className="quiet-button"
        off={toTray.isPending}
        onClick={() => toTray.mutate({ items: lotIds.map((lotId) => ({ kind: 'label', lotId })) })}
      >
        {t('shelf.labels-to-tray')}
      </ActionButton>
      <ActionButton className="quiet-button" off={save.isPending} onClick={() => save.mutate()}>
        {t('shelf.save-table')}
      </ActionButton>
      <ActionButton className="quiet-button" off={book.isPending} onClick={() => book.mutate()}>
        {t('shelf.save-workbook')}
      </ActionButton>
      <Link href={stocktakeAddress(lotIds)}>{t('shelf.take-stock-of-them')}</Link>
      <button type="button" className="word-button" onClick={ticks.untickAll}>
        {t('shelf.untick-all')}
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
