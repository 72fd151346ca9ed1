import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link } from 'wouter'
import { call } from '../../shared/client/call.ts'
import { inBase64 } from '../../shared/client/file-bytes.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { FileField } from '../../shared/parts/file-field.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { GoingOut } from './going-out.tsx'

/** What goes out and comes in as a whole, as files. */
export function ImportExportScreen() {
  return (
    <div className="page stack-5">
      <div className="head-row">
        <h1>In and out</h1>
        <Link href="/settings">Back to Settings</Link>
      </div>
      <GoingOut />
      <ComingIn />
    </div>
  )
}

/** Files from others: lists, passports, and a whole collection. */
function ComingIn() {
  return (
    <section className="page-part stack-4" aria-labelledby="coming-in">
      <h2 id="coming-in">Coming in</h2>
      <ul className="stack-4">
        <li className="stack-2">
          <h3>A list, or passports of accessions</h3>
          <p className="soft">
            A workbook or CSV file, also of Multi-Crop Passport Descriptors: every descriptor is looked at,
            and what does not fit is shown before anything is written.
          </p>
          <Link href="/take-in/list">Take a list in</Link>
        </li>
        <PackageBack />
      </ul>
    </section>
  )
}

/** Reads a data package into a collection in which nothing was written yet. */
function PackageBack() {
  const format = useFormat()
  const queries = useQueryClient()
  const about = useRead('collection.get', {})
  const read = useMutation({
    mutationFn: async (file: File) => call('package.import', { content: await inBase64(file) }),
    onSuccess: () => queries.invalidateQueries(),
  })
  const written = about.data !== undefined && about.data.accessions + about.data.people > 0
  return (
    <li className="stack-2">
      <h3>A whole collection</h3>
      {written && read.data === undefined ? (
        <p className="soft">
          A data package is read into a new collection only, and something was written in this one: start a
          new collection, then come back here.
        </p>
      ) : (
        <FileField
          label="The data package (.zip), as it was saved under Going out"
          accept=".zip,application/zip"
          off={read.isPending || read.data !== undefined}
          onPick={read.mutate}
        />
      )}
      {read.error !== null && <ProblemText problem={read.error.problem} />}
      <div role="status">
        {read.isPending && <p>Reading it back…</p>}
        {read.data !== undefined && (
          <p>
            {read.data.said}: {format.many(read.data.rows, 'row')} in {format.many(read.data.tables, 'table')}
            .
          </p>
        )}
      </div>
    </li>
  )
}
