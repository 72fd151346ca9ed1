import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link } from 'wouter'
import { call } from '../../shared/client/call.ts'
import { inBase64 } from '../../shared/client/file-bytes.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { FileField } from '../../shared/parts/file-field.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { GoingOut } from './going-out.tsx'

/** What goes out and comes in as a whole, as files. */
export function ImportExportScreen() {
  const { t } = useTexts()
  return (
    <div className="page stack-5">
      <div className="head-row">
        <h1>{t('files.title')}</h1>
        <Link href="/settings">{t('files.back')}</Link>
      </div>
      <GoingOut />
      <ComingIn />
    </div>
  )
}

/** Files from others: lists, passports, and a whole collection. */
function ComingIn() {
  const { t } = useTexts()
  return (
    <section className="page-part stack-4" aria-labelledby="coming-in">
      <h2 id="coming-in">{t('files.in')}</h2>
      <ul className="stack-4">
        <li className="stack-2">
          <h3>{t('files.list')}</h3>
          <p className="soft">{t('files.list-about')}</p>
          <Link href="/take-in/list">{t('files.list-go')}</Link>
        </li>
        <PackageBack />
      </ul>
    </section>
  )
}

/** Reads a data package into a collection in which nothing was written yet. */
function PackageBack() {
  const { t } = useTexts()
  const queries = useQueryClient()
  const about = useRead('collection.get', {})
  const read = useMutation({
    mutationFn: async (file: File) => call('package.import', { content: await inBase64(file) }),
    onSuccess: () => queries.invalidateQueries(),
  })
  const written = about.data !== undefined && about.data.accessions + about.data.people > 0
  return (
    <li className="stack-2">
      <h3>{t('files.package-back')}</h3>
      {written && read.data === undefined ? (
        <p className="soft">{t('files.package-back-not')}</p>
      ) : (
        <FileField
          label={t('files.package-back-file')}
          accept=".zip,application/zip"
          off={read.isPending || read.data !== undefined}
          onPick={read.mutate}
        />
      )}
      {read.error !== null && <ProblemText problem={read.error.problem} />}
      <div role="status">
        {read.isPending && <p>{t('files.package-reading')}</p>}
        {read.data !== undefined && (
          <p>
            {t('files.package-read', {
              said: read.data.said,
              rows: read.data.rows,
              tables: read.data.tables,
            })}
          </p>
        )}
      </div>
    </li>
  )
}
