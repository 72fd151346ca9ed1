import { useInfiniteQuery } from '@tanstack/react-query'
import type { Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

const AT_ONCE = 30
/** How many names of a printing are listed. */
const NAMED = 6

type Batch = Value<'print.list'>['batches'][number]

/** What was printed, latest first; any of it can be put into the tray again. */
export function PrintHistory() {
  const { t } = useTexts()
  const history = useInfiniteQuery({
    queryKey: ['print.list', AT_ONCE],
    queryFn: ({ pageParam }) =>
      call('print.list', { limit: AT_ONCE, ...(pageParam === null ? {} : { before: pageParam }) }),
    initialPageParam: null as number | null,
    getNextPageParam: (last) => (last.batches.length < AT_ONCE ? undefined : last.batches.at(-1)?.batchId),
  })
  const sheets = useRead('label-sheet.list', {}).data?.sheets ?? []
  const again = useWrite('print.repeat')
  const batches = history.data?.pages.flatMap((page) => page.batches) ?? []
  return (
    <section aria-labelledby="printed-before">
      <h2 id="printed-before">{t('print.history')}</h2>
      {history.error !== null && <ProblemText problem={history.error.problem} />}
      {again.error !== null && <ProblemText problem={again.error.problem} />}
      {history.isSuccess && batches.length === 0 && <p className="soft">{t('print.history-none')}</p>}
      <ol className="ruled">
        {batches.map((batch) => (
          <Printed
            key={batch.batchId}
            batch={batch}
            sheet={sheets.find(({ sheet }) => sheet === batch.sheet)?.name ?? ''}
            busy={again.isPending}
            onAgain={() => again.mutate({ batchId: batch.batchId })}
          />
        ))}
      </ol>
      {history.hasNextPage && (
        <ActionButton
          className="quiet-button"
          off={history.isFetchingNextPage}
          onClick={() => void history.fetchNextPage()}
        >
          {t('print.history-more')}
        </ActionButton>
      )}
    </section>
  )
}

interface PrintedProps {
  readonly batch: Batch
  readonly sheet: string
  readonly busy: boolean
  readonly onAgain: () => void
}

function Printed({ batch, sheet, busy, onAgain }: PrintedProps) {
  const format = useFormat()
  const { t } = useTexts()
  const names = batch.items.map(({ title }) => title)
  const first = names.slice(0, NAMED).join(', ')
  const when = format.moment(batch.printedAt)
  return (
    <li className="print-item">
      <p>
        <strong>{batch.words}</strong> <time dateTime={batch.printedAt}>{when}</time>
        {sheet !== '' && <span className="soft"> · {sheet}</span>}
      </p>
      <ActionButton className="word-button" off={busy} onClick={onAgain}>
        {t('print.again')}
        <span className="only-aloud">: {t('print.again-what', { what: batch.words, when })}</span>
      </ActionButton>
      <p className="print-item-why small">
        {names.length > NAMED
          ? t('print.names-and-more', { names: first, more: names.length - NAMED })
          : first}
      </p>
      {batch.items.some(({ heldBack }) => heldBack !== null) && (
        <p className="print-item-why small soft">{t('print.held-back')}</p>
      )}
    </li>
  )
}
