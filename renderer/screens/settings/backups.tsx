import { useQueryClient } from '@tanstack/react-query'
import { type ButtonHTMLAttributes, useEffect, useState } from 'react'
import type { BackupComparison } from '../../../db/contract/collection-operations.ts'
import type { Value } from '../../../db/contract/contract.ts'
import { message } from '../../../db/messages/message.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t, pieces } = useTexts()
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
    <section className="page-part stack-2" aria-label={t('settings.backups')}>
      <h2>{t('settings.backups')}</h2>
      <p className="soft">
        {pieces(message('settings.backups-rule', { folder: list.data.folder }), {
          folder: (name) => <span key="folder">{name}</span>,
        })}
      </p>
      {list.data.trouble !== null && (
        <p className="note" role="alert">
          {t('settings.backup-failed', { trouble: list.data.trouble })}
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
  const { t } = useTexts()
  const percent = Math.floor(100 * copied)
  return <p role="status">{t('settings.backup-under-way', { doing, percent })}</p>
}

interface BackupListProps {
  readonly listed: Listed
  /** What the button needs that opens a backup. */
  readonly button: (file: string) => ButtonHTMLAttributes<HTMLButtonElement>
}

function BackupList({ listed, button }: BackupListProps) {
  const { t } = useTexts()
  const [all, setAll] = useState(false)
  if (listed.backups.length === 0) return <p>{t('settings.no-backup')}</p>
  const shown = all ? listed.backups : listed.backups.slice(0, MOST_SHOWN)
  return (
    <>
      <ul className="bullets">
        {shown.map(({ file, at, why, bytes, where }) => (
          <li key={file}>
            {t('settings.backup-line', {
              at: { moment: at },
              why,
              megabytes: Math.round(bytes / 100_000) / 10,
              where: where === 'second-folder' ? 'second' : 'own',
            })}{' '}
            <button
              type="button"
              className="word-button"
              aria-label={t('settings.look-into-aloud', { at: { moment: at }, why })}
              {...button(file)}
            >
              {t('settings.look-into')}
            </button>
          </li>
        ))}
      </ul>
      {shown.length < listed.backups.length && (
        <p>
          <button type="button" className="word-button" onClick={() => setAll(true)}>
            {t('settings.show-all', { backups: listed.backups.length })}
          </button>
        </p>
      )}
    </>
  )
}

/** What a backup would bring back, and the step that does it. */
function Restore({ file, onClose }: { readonly file: string; readonly onClose: () => void }) {
  const { t } = useTexts()
  const compared = useRead('backup.compare', { file })
  const queries = useQueryClient()
  const restore = useWrite('backup.restore', () => void queries.resetQueries())
  return (
    <CardForm
      title={t('settings.backup-holds')}
      sendWord={t('settings.restore')}
      busy={restore.isPending || compared.data === undefined}
      error={restore.error ?? compared.error}
      onSend={() => restore.mutate({ file })}
      onClose={onClose}
    >
      {compared.data === undefined ? (
        compared.error === null && <p className="card-form-wide">{t('settings.opening-backup')}</p>
      ) : (
        <BackupDifference compared={compared.data} />
      )}
    </CardForm>
  )
}

/** Where else backups go, and how much they may take. */
function Keeping({ listed }: { readonly listed: Listed }) {
  const { t } = useTexts()
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
      title={t('settings.second-place')}
      sendWord={t('settings.keep-so')}
      {...form.sending({ ...form.typed, limitMb: Number(form.typed.limitMb) })}
    >
      <div className="card-form-wide">
        <TextField
          label={t('settings.second-folder')}
          {...folder}
          problem={folder.problem ?? (away ? t('settings.second-away') : undefined)}
          hint={t('settings.second-folder-hint')}
        />
      </div>
      {form.textField('limitMb', t('settings.limit'), {
        hint: t('settings.limit-hint', { megabytes: Math.ceil(taken / BYTES_IN_MB) }),
      })}
    </CardForm>
  )
}

/** What differs between a backup and the open collection, in words. */
function BackupDifference({ compared }: { readonly compared: BackupComparison }) {
  const { t } = useTexts()
  const { onlyOpen, onlyBackup, lots, lotsDiffering } = compared
  const alike = onlyOpen.count === 0 && onlyBackup.count === 0 && lotsDiffering === 0
  return (
    <div className="card-form-wide stack-2">
      {!compared.sameLibrary && <p>{t('settings.other-collection', { name: compared.libraryName })}</p>}
      <p>{t('settings.backup-whole', { at: { moment: compared.lastWrittenAt } })}</p>
      {alike && <p>{t('settings.backup-alike')}</p>}
      <Only only={onlyOpen} what={t('settings.only-open', { entries: onlyOpen.count })} />
      <Only only={onlyBackup} what={t('settings.only-backup', { entries: onlyBackup.count })} />
      {lotsDiffering > 0 && (
        <RowTable
          caption={<caption>{t('settings.lots-differ', { lots: lotsDiffering })}</caption>}
          rowHeads
          rows={lots}
          keyOf={({ number }) => number}
          columns={[
            [t('shelf.lot'), ({ number }) => number],
            [t('settings.now'), ({ open }) => open],
            [t('settings.in-backup'), ({ backup }) => backup],
          ]}
        />
      )}
      <p>{t('settings.restoring-replaces-nothing')}</p>
    </div>
  )
}

interface OnlyProps {
  readonly only: BackupComparison['onlyOpen']
  /** How many there are, and what of them. */
  readonly what: string
}

function Only({ only, what }: OnlyProps) {
  const { t } = useTexts()
  const format = useFormat()
  if (only.count === 0) return null
  return (
    <>
      <p>{what}</p>
      <ul className="bullets">
        {only.latest.map(({ at, said }) => (
          <li key={`${at} ${said}`}>
            {format.moment(at)}: {said}
          </li>
        ))}
        {only.latest.length < only.count && (
          <li>{t('settings.more', { entries: only.count - only.latest.length })}</li>
        )}
      </ul>
    </>
  )
}
