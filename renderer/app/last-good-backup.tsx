import { useQueryClient } from '@tanstack/react-query'
import { useRead } from '../shared/client/use-read.ts'
import { useWrite } from '../shared/client/use-write.ts'
import { useFormat } from '../shared/format/use-format.ts'
import { ProblemText } from '../shared/parts/problem-text.tsx'

/** Offers the newest whole backup of a collection that would not open. Nothing where there is none. */
export function LastGoodBackup() {
  const list = useRead('backup.list', {}).data
  const restore = useWrite('backup.restore')
  const queries = useQueryClient()
  const format = useFormat()
  const good = list?.backups.find(({ file }) => file === list.lastGood)
  if (good === undefined) return null
  const send = () => restore.mutate({ file: good.file }, { onSuccess: () => void queries.resetQueries() })
  return (
    <>
      <h2>Go on with the last whole backup</h2>
      <p>
        It was made on {format.moment(good.at)}. It is restored into a new file; the file that would not open
        stays as it is.
      </p>
      <button type="button" className="button" disabled={restore.isPending} onClick={send}>
        {restore.isPending ? 'Restoring…' : 'Restore that backup'}
      </button>
      {restore.error !== null && <ProblemText problem={restore.error.problem} />}
    </>
  )
}
