import { resolve } from 'node:path'
import type { BackupComparison } from '../../contract/collection-operations.ts'
import type { ParsedInput } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import { type Manner, massToType } from '../../domain/amounts/in-words.ts'
import { milligrams } from '../../domain/amounts/mass.ts'
import { type Message, message } from '../../messages/message.ts'
import { openSound } from '../../migrations/backup-files.ts'
import type { Sqlite } from '../../migrations/connection.ts'
import { MIGRATIONS_FOLDER, newestVersion } from '../../migrations/file-format.ts'
import type { Reading } from '../book/context.ts'
import { saidOf } from '../book/said.ts'
import { settingsOf } from '../book/settings.ts'

const COUNTED = [
  ['accessions', 'accession'],
  ['lots', 'lot'],
  ['people', 'person'],
  ['lines', 'movement'],
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
      refuse('collection-read-only', message('backup.older-version'), {
        field: 'file',
        todo: message('backup.older-version-todo'),
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
      what: message(`backup.counts-${what}`),
      open: Number(one(open, `SELECT count(*) FROM ${table}`)),
      backup: Number(one(backup, `SELECT count(*) FROM ${table}`)),
    })),
    onlyOpen: missingFrom(there, here),
    onlyBackup: missingFrom(here, there),
    lots: lots.slice(0, MOST_LOTS),
    lotsDiffering: lots.length,
  }
}

type Entries = ReadonlyMap<string, { readonly at: string; readonly said: Message | string }>

function entriesOf(sqlite: Sqlite): Entries {
  const rows = sqlite.prepare('SELECT key, recorded_at AS at, said FROM entry ORDER BY id DESC').all() as {
    key: string
    at: string
    said: string
  }[]
  return new Map(rows.map(({ key, at, said }) => [key, { at, said: saidOf(said) }]))
}

function missingFrom(other: Entries, these: Entries): Untold<BackupComparison['onlyOpen']> {
  const only = [...these].filter(([key]) => !other.has(key)).map(([, said]) => said)
  return { count: only.length, latest: only.slice(0, MOST_SAID) }
}

interface Held {
  readonly count: number
  readonly mg: number
}

/** Lots that do not hold the same, each as exactly as it is kept. */
function differingLots(open: Sqlite, backup: Sqlite, manner: Manner): Untold<BackupComparison['lots']> {
  const heldIn = (sqlite: Sqlite) =>
    new Map(
      (
        sqlite
          .prepare('SELECT number, balance_count AS count, balance_mass_mg AS mg FROM lot ORDER BY number')
          .all() as (Held & { number: string })[]
      ).map(({ number, ...held }) => [number, held]),
    )
  const told = (held: Held | undefined) =>
    held === undefined
      ? message('backup.lot-not-in-it')
      : message('backup.lot-holds', {
          amount: { seeds: held.count },
          mass: massToType(milligrams(held.mg), manner),
        })
  const [here, there] = [heldIn(open), heldIn(backup)]
  return [...new Set([...here.keys(), ...there.keys()])]
    .map((number) => ({ number, now: here.get(number), before: there.get(number) }))
    .filter(({ now, before }) => now?.count !== before?.count || now?.mg !== before?.mg)
    .map(({ number, now, before }) => ({ number, open: told(now), backup: told(before) }))
}
