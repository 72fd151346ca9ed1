import type { BackupComparison } from '../../../db/contract/backup-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'

/** What differs between a backup and the open collection, in words. */
export function BackupDifference({ compared }: { readonly compared: BackupComparison }) {
  const format = useFormat()
  const { onlyOpen, onlyBackup, lots, lotsDiffering } = compared
  const alike = onlyOpen.count === 0 && onlyBackup.count === 0 && lotsDiffering === 0
  return (
    <div className="card-form-wide settings-difference">
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
          className="settings-lots"
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
      <ul>
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
