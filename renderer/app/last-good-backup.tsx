import { useQueryClient } from '@tanstack/react-query'
import { useRead } from '../shared/client/use-read.ts'
import { useWrite } from '../shared/client/use-write.ts'
import { useFormat } from '../shared/format/use-format.ts'
import { ActionButton } from '../shared/parts/action-button.tsx'
import { ProblemText } from '../shared/parts/problem-text.tsx'

interface LastGoodBackupProps {
  readonly isDamaged: boolean
}

/** Offers the newest whole backup of a collection that would not open; where a damaged one has none, says where one is looked for. */
export function LastGoodBackup({ isDamaged }: LastGoodBackupProps) {
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
