import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { ProblemError } from '../shared/client/problem-error.ts'
import { useRead } from '../shared/client/use-read.ts'
import { useWrite } from '../shared/client/use-write.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import { ActionButton } from '../shared/parts/action-button.tsx'
import { ProblemText } from '../shared/parts/problem-text.tsx'
import { StartCollection } from './start-collection.tsx'

/** A keeper without a mouse begins at what is wrong, and again where trying found something else; a ref callback. */
function focusHeading(heading: HTMLElement | null): void {
  heading?.focus()
}

/** Has the host open the file once more: it may be back, or its other window closed. */
function TryAgain() {
  const { t } = useTexts()
  const queries = useQueryClient()
  const trying = useMutation({
    mutationFn: () => queries.refetchQueries({ queryKey: ['collection.get'] }),
    onSuccess: () => void queries.invalidateQueries(),
  })
  return (
    <ActionButton className="button" off={trying.isPending} onClick={() => trying.mutate()}>
      {t(trying.isPending ? 'app.opening-it' : 'app.try-again')}
    </ActionButton>
  )
}

/** Stands in place of every screen while no collection is open: why, and the two ways on. */
export function NoCollection({ why }: { readonly why: ProblemError }) {
  const { t } = useTexts()
  const isDamaged = why.problem.code === 'file-damaged'
  const demo = useWrite('collection.open-demo')
  const queries = useQueryClient()
  const openDemo = () => demo.mutate({}, { onSuccess: () => void queries.resetQueries() })
  return (
    <section className="no-collection stack-4">
      <h1 key={why.problem.code} tabIndex={-1} ref={focusHeading}>
        {t('app.none-open')}
      </h1>
      <ProblemText problem={why.problem} />
      {!isDamaged && <TryAgain />}
      <LastGoodBackup isDamaged={isDamaged} />
      <h2>{t('app.start-one')}</h2>
      <StartCollection />
      <h2>{t('app.look-round')}</h2>
      <p>{t('app.what-demo-is')}</p>
      <ActionButton className="quiet-button" off={demo.isPending} onClick={openDemo}>
        {t(demo.isPending ? 'app.opening-demo' : 'app.open-demo')}
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
  const { t } = useTexts()
  const list = useRead('backup.list', {}).data
  const restore = useWrite('backup.restore')
  const queries = useQueryClient()
  const good = list?.backups.find(({ file }) => file === list.lastGood)
  if (list === undefined) return null
  if (good === undefined) {
    return isDamaged ? <p>{t('app.no-backup', { folder: list.folder })}</p> : null
  }
  const send = () => restore.mutate({ file: good.file }, { onSuccess: () => void queries.resetQueries() })
  return (
    <>
      <h2>{t('app.last-backup')}</h2>
      <p>{t('app.backup-made', { at: { moment: good.at } })}</p>
      <ActionButton className="button" off={restore.isPending} onClick={send}>
        {t(restore.isPending ? 'app.restoring' : 'app.restore')}
      </ActionButton>
      {restore.error !== null && <ProblemText problem={restore.error.problem} />}
    </>
  )
}
