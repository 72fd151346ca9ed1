import { useQueryClient } from '@tanstack/react-query'
import { type ButtonHTMLAttributes, useEffect, useState } from 'react'
import type { BackupComparison } from '../../../db/contract/collection-operations.ts'
import type { Value } from '../../../db/contract/contract.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'

type Listed = Value<'backup.list'>

const MOST_SHOWN = 8
/** While a backup is made, how far it is is asked so often, milliseconds. */
const LOOKED_AGAIN_MS = 400
const BYTES_IN_MB = 1_000_000

/** The backups there are, where they go, what one of them would bring back, and restoring it into a new file. */
export function Backups() {
  const list = useRead('backup.list', {})
  const { open, button, close } = useOpenForm<string>()
  const { data, refetch } = list
  useEffect(() => {
    if (data?.underWay == null) return
    const next = setTimeout(() => void refetch(), LOOKED_AGAIN_MS)
    return () => clearTimeout(next)
  }, [data, refetch])
  if (list.data === undefined)
    return list.error === null ? null : <ProblemText problem={list.error.problem} />
  return (
    <section className="page-part stack-2" aria-label="Backups">
      <h2>Backups</h2>
      <p className="soft">
        Made by itself soon after the app starts and every few hours, before a file is read in, and before a
        newer version changes the collection. The ten newest stay, then one a day for a week, one a week for a
        month, one a month for a year. They lie in <span>{list.data.folder}</span>
      </p>
      {list.data.trouble !== null && (
        <p className="note" role="alert">
          The last one could not be made: {list.data.trouble}
        </p>
      )}
      {list.data.underWay !== null && <UnderWay {...list.data.underWay} />}
      <BackupList listed={list.data} button={button} />
      {open !== null && <Restore key={open} file={open} onClose={() => close(open)} />}
      <Keeping key={`${list.data.secondFolder} ${list.data.limitMb}`} listed={list.data} />
    </section>
  )
}

/** How far the backup is that is being made. */
function UnderWay({ doing, copied }: NonNullable<Listed['underWay']>) {
  const far =
    doing === 'copying' ? `${Math.floor(100 * copied)} % copied` : 'copied, now read back and checked'
  return <p role="status">A backup is being made: {far}. Nothing else waits for it.</p>
}

interface BackupListProps {
  readonly listed: Listed
  /** What the button needs that opens a backup. */
  readonly button: (file: string) => ButtonHTMLAttributes<HTMLButtonElement>
}

function BackupList({ listed, button }: BackupListProps) {
  const format = useFormat()
  const [all, setAll] = useState(false)
  if (listed.backups.length === 0) return <p>There is none yet.</p>
  const shown = all ? listed.backups : listed.backups.slice(0, MOST_SHOWN)
  return (
    <>
      <ul className="bullets">
        {shown.map(({ file, at, why, bytes, where }) => (
          <li key={file}>
            {format.moment(at)}, {why}, {format.number(Math.round(bytes / 100_000) / 10)} MB
            {where === 'second-folder' ? ', in the second folder' : ''}{' '}
            <button
              type="button"
              className="word-button"
              aria-label={`look into it: the backup of ${format.moment(at)}, ${why}`}
              {...button(file)}
            >
              look into it
            </button>
          </li>
        ))}
      </ul>
      {shown.length < listed.backups.length && (
        <p>
          <button type="button" className="word-button" onClick={() => setAll(true)}>
            show all {format.number(listed.backups.length)}
          </button>
        </p>
      )}
    </>
  )
}

/** What a backup would bring back, and the step that does it. */
function Restore({ file, onClose }: { readonly file: string; readonly onClose: () => void }) {
  const compared = useRead('backup.compare', { file })
  const queries = useQueryClient()
  const restore = useWrite('backup.restore', () => void queries.resetQueries())
  return (
    <CardForm
      title="What this backup holds"
      sendWord="Restore it into a new file and open that"
      busy={restore.isPending || compared.data === undefined}
      error={restore.error ?? compared.error}
      onSend={() => restore.mutate({ file })}
      onClose={onClose}
    >
      {compared.data === undefined ? (
        compared.error === null && <p className="card-form-wide">Opening the backup and checking it…</p>
      ) : (
        <BackupDifference compared={compared.data} />
      )}
    </CardForm>
  )
}

/** Where else backups go, and how much they may take. */
function Keeping({ listed }: { readonly listed: Listed }) {
  const format = useFormat()
  const form = useCardForm({
    empty: { secondFolder: listed.secondFolder, limitMb: String(listed.limitMb ?? '') },
    writes: 'backup.change-rule',
  })
  const taken = listed.backups
    .filter(({ where }) => where === 'own-folder')
    .reduce((sum, { bytes }) => sum + bytes, 0)
  const folder = form.field('secondFolder')
  const away = listed.secondFolder !== '' && !listed.secondThere
  return (
    <CardForm
      title="A second place for backups"
      sendWord="Keep backups so"
      {...form.sending({ ...form.typed, limitMb: Number(form.typed.limitMb) })}
    >
      <div className="card-form-wide">
        <TextField
          label="A folder on a stick or another disk"
          {...folder}
          problem={
            folder.problem ??
            (away ? 'It is not there just now. Connect its disk before the next backup.' : undefined)
          }
          hint="its whole path; empty: none. Whoever holds the stick can read everything in the book."
        />
      </div>
      {form.textField('limitMb', 'Megabytes that backups may take in each folder', {
        hint: `they take ${format.number(Math.ceil(taken / BYTES_IN_MB))} now; the three newest always stay`,
      })}
    </CardForm>
  )
}

/** What differs between a backup and the open collection, in words. */
function BackupDifference({ compared }: { readonly compared: BackupComparison }) {
  const format = useFormat()
  const { onlyOpen, onlyBackup, lots, lotsDiffering } = compared
  const alike = onlyOpen.count === 0 && onlyBackup.count === 0 && lotsDiffering === 0
  return (
    <div className="card-form-wide stack-2">
      {!compared.sameLibrary && <p>This is a backup of another collection: {compared.libraryName}.</p>}
      <p>
        It was last written in on {format.moment(compared.lastWrittenAt)} and was checked just now: it is
        whole.
      </p>
      {alike && <p>It holds what the open collection holds.</p>}
      <Only
        only={onlyOpen}
        one="entry of today’s book is not in it:"
        many="entries of today’s book are not in it:"
      />
      <Only
        only={onlyBackup}
        one="entry is in it that today’s book does not have:"
        many="entries are in it that today’s book does not have:"
      />
      {lotsDiffering > 0 && (
        <RowTable
          caption={<caption>Lots that hold something else: {format.number(lotsDiffering)}</caption>}
          rowHeads
          rows={lots}
          keyOf={({ number }) => number}
          columns={[
            ['Lot', ({ number }) => number],
            ['now', ({ open }) => open],
            ['in the backup', ({ backup }) => backup],
          ]}
        />
      )}
      <p>
        Restoring replaces nothing: it makes a new file and opens that. The collection that is open now stays
        where it is.
      </p>
    </div>
  )
}

interface OnlyProps {
  readonly only: BackupComparison['onlyOpen']
  readonly one: string
  readonly many: string
}

function Only({ only, one, many }: OnlyProps) {
  const format = useFormat()
  if (only.count === 0) return null
  return (
    <>
      <p>{format.many(only.count, one, many)}</p>
      <ul className="bullets">
        {only.latest.map(({ at, said }) => (
          <li key={`${at} ${said}`}>
            {format.moment(at)}: {said}
          </li>
        ))}
        {only.latest.length < only.count && (
          <li>and {format.number(only.count - only.latest.length)} more</li>
        )}
      </ul>
    </>
  )
}
