import { resolve } from 'node:path'
import type { BackupComparison } from '../../contract/collection-operations.ts'
import type { ParsedInput } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import { countInWords, type Manner, massToType } from '../../domain/amounts/in-words.ts'
import { milligrams } from '../../domain/amounts/mass.ts'
import { countedUnit } from '../../domain/crops/counted-unit.ts'
import { asKept } from '../../messages/message.ts'
import { openSound } from '../../migrations/backup-files.ts'
import type { Sqlite } from '../../migrations/connection.ts'
import { MIGRATIONS_FOLDER, newestVersion } from '../../migrations/file-format.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'

const COUNTED = [
  ['accessions', 'accession'],
  ['lots', 'lot'],
  ['people', 'person'],
  ['lines in the ledger', 'movement'],
  ['entries', 'entry'],
] as const
const MOST_SAID = 10
const MOST_LOTS = 50

/** What a backup lacks of the open book and has beside it. Refuses one that is damaged or of an older version. */
export function compareBackup(
  reading: Reading,
  input: ParsedInput<'backup.compare'>,
): Untold<BackupComparison> {
  const file = resolve(input.file)
  const backup = openSound(file)
  try {
    if (Number(backup.pragma('user_version', { simple: true })) < newestVersion(MIGRATIONS_FOLDER)) {
      refuse('collection-read-only', 'This backup was written by an older version and cannot be compared.', {
        field: 'file',
        todo: 'Restore it into a new file to look at it: your open collection stays as it is.',
      })
    }
    return compared(reading, backup, file)
  } finally {
    backup.close()
  }
}

function compared(reading: Reading, backup: Sqlite, file: string): Untold<BackupComparison> {
  const open = reading.sqlite
  const one = (sqlite: Sqlite, sql: string) => sqlite.prepare(sql).pluck().get()
  const [here, there] = [entriesOf(open), entriesOf(backup)]
  const lots = differingLots(open, backup, settingsOf(reading))
  return {
    file,
    sameLibrary: one(open, 'SELECT uuid FROM collection') === one(backup, 'SELECT uuid FROM collection'),
    libraryName: String(one(backup, 'SELECT library_name FROM collection')),
    lastWrittenAt: String(one(backup, 'SELECT recorded_at FROM entry ORDER BY id DESC LIMIT 1')),
    counts: COUNTED.map(([what, table]) => ({
      what,
      open: Number(one(open, `SELECT count(*) FROM ${table}`)),
      backup: Number(one(backup, `SELECT count(*) FROM ${table}`)),
    })),
    onlyOpen: missingFrom(there, here),
    onlyBackup: missingFrom(here, there),
    lots: lots.slice(0, MOST_LOTS),
    lotsDiffering: lots.length,
  }
}

type Entries = ReadonlyMap<string, { readonly at: string; readonly said: string }>

function entriesOf(sqlite: Sqlite): Entries {
  const rows = sqlite.prepare('SELECT key, recorded_at AS at, said FROM entry ORDER BY id DESC').all() as {
    key: string
    at: string
    said: string
  }[]
  return new Map(rows.map(({ key, at, said }) => [key, { at, said }]))
}

function missingFrom(other: Entries, these: Entries): Untold<BackupComparison['onlyOpen']> {
  const only = [...these]
    .filter(([key]) => !other.has(key))
    .map(([, { at, said }]) => ({ at, said: asKept(said) }))
  return { count: only.length, latest: only.slice(0, MOST_SAID) }
}

/** Lots that do not hold the same, each as exactly as it is kept. */
function differingLots(open: Sqlite, backup: Sqlite, manner: Manner): BackupComparison['lots'] {
  const held = (sqlite: Sqlite) =>
    new Map(
      (
        sqlite
          .prepare('SELECT number, balance_count AS count, balance_mass_mg AS mg FROM lot ORDER BY number')
          .all() as { number: string; count: number; mg: number }[]
      ).map(({ number, count, mg }) => [
        number,
        `${countInWords(count, countedUnit('seed'), manner)}, ${massToType(milligrams(mg), manner)}`,
      ]),
    )
  const [here, there] = [held(open), held(backup)]
  return [...new Set([...here.keys(), ...there.keys()])]
    .map((number) => ({
      number,
      open: here.get(number) ?? 'not in it',
      backup: there.get(number) ?? 'not in it',
    }))
    .filter((lot) => lot.open !== lot.backup)
}
