import type { BackupComparison } from '../../../db/contract/backup-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'

/** What differs between a backup and the open collection, in words. */
export function BackupDifference({ compared }: { readonly compared: BackupComparison }) {
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
        words={
          onlyOpen.count === 1
            ? 'entry of today’s book is not in it:'
            : 'entries of today’s book are not in it:'
        }
      />
      <Only
        only={onlyBackup}
        words={
          onlyBackup.count === 1
            ? 'entry is in it that today’s book does not have:'
            : 'entries are in it that today’s book does not have:'
        }
      />
      {lotsDiffering > 0 && (
        <table className="plain-table">
          <caption>Lots that hold something else: {format.number(lotsDiffering)}</caption>
          <thead>
            <tr>
              <th scope="col">Lot</th>
              <th scope="col">now</th>
              <th scope="col">in the backup</th>
            </tr>
          </thead>
          <tbody>
            {lots.map(({ number, open, backup }) => (
              <tr key={number}>
                <th scope="row">{number}</th>
                <td>{open}</td>
                <td>{backup}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p>
        Restoring replaces nothing: it makes a new file and opens that. The collection that is open now stays
        where it is.
      </p>
    </div>
  )
}

function Only({ only, words }: { readonly only: BackupComparison['onlyOpen']; readonly words: string }) {
  const format = useFormat()
  if (only.count === 0) return null
  return (
    <>
      <p>
        {format.number(only.count)} {words}
      </p>
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
