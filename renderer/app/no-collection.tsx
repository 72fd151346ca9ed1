import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { ProblemError } from '../shared/client/problem-error.ts'
import { useRead } from '../shared/client/use-read.ts'
import { useWrite } from '../shared/client/use-write.ts'
import { useFormat } from '../shared/format/use-format.ts'
import { ActionButton } from '../shared/parts/action-button.tsx'
import { ProblemText } from '../shared/parts/problem-text.tsx'
import { StartCollection } from './start-collection.tsx'

/** A keeper without a mouse begins at what is wrong, and again where trying found something else; a ref callback. */
function focusHeading(heading: HTMLElement | null): void {
  heading?.focus()
}

/** Has the host open the file once more: it may be back, or its other window closed. */
function TryAgain() {
  const queries = useQueryClient()
  const trying = useMutation({
    mutationFn: () => queries.refetchQueries({ queryKey: ['collection.get'] }),
    onSuccess: () => void queries.invalidateQueries(),
  })
  return (
    <ActionButton className="button" off={trying.isPending} onClick={() => trying.mutate()}>
      {trying.isPending ? 'Opening it…' : 'Try again'}
    </ActionButton>
  )
}

/** Stands in place of every screen while no collection is open: why, and the two ways on. */
export function NoCollection({ why }: { readonly why: ProblemError }) {
  const isDamaged = why.problem.code === 'file-damaged'
  const demo = useWrite('collection.open-demo')
  const queries = useQueryClient()
  const openDemo = () => demo.mutate({}, { onSuccess: () => void queries.resetQueries() })
  return (
    <section className="no-collection stack-4">
      <h1 key={why.problem.code} tabIndex={-1} ref={focusHeading}>
        No collection is open
      </h1>
      <ProblemText problem={why.problem} />
      {!isDamaged && <TryAgain />}
      <LastGoodBackup isDamaged={isDamaged} />
      <h2>Start a collection of your own</h2>
      <StartCollection />
      <h2>Or look round first</h2>
      <p>
        The demo is the collection of an invented town. Nothing in it is real, and nothing of yours gets into
        it.
      </p>
      <ActionButton className="quiet-button" off={demo.isPending} onClick={openDemo}>
        {demo.isPending ? 'Opening the demo…' : 'Open the demo'}
      </ActionButton>
      {demo.error !== null && <ProblemText problem={demo.error.problem} />}
    </section>
  )
}

interface LastGoodBackupProps {
  readonly isDamaged: boolean
}

/** Offers the newest whole backup of a collection that would not open; where a damaged one has none, says where one is looked for. */
function LastGoodBackup({ isDamaged }: LastGoodBackupProps) {
  const list = useRead('backup.list', {}).data
  const restore = useWrite('backup.restore')
  const queries = useQueryClient()
  const format = useFormat()
  const good = list?.backups.find(({ file }) => file === list.lastGood)
  if (list === undefined) return null
  if (good === undefined) {
    return isDamaged ? (
      <p>
        No whole backup of it lies in {list.folder}. If you have one on a stick or another computer, copy it
        there and load this page again.
      </p>
    ) : null
  }
  const send = () => restore.mutate({ file: good.file }, { onSuccess: () => void queries.resetQueries() })
  return (
    <>
      <h2>Go on with the last whole backup</h2>
      <p>
        It was made on {format.moment(good.at)}. It is restored into a new file; the file that would not open
        stays as it is.
      </p>
      <ActionButton className="button" off={restore.isPending} onClick={send}>
        {restore.isPending ? 'Restoring…' : 'Restore that backup'}
      </ActionButton>
      {restore.error !== null && <ProblemText problem={restore.error.problem} />}
    </>
  )
}
