import { addDays, daysBetween } from '../dates/day-arithmetic.ts'
import { type IsoDate, isoDate } from '../dates/iso-date.ts'

/** A backup as the rule sees it. */
export interface DatedBackup {
  /** When it was made, ISO 8601 in UTC. */
  readonly at: string
  /** The latest entry that it holds; 0 where that cannot be read. */
  readonly latestEntry: number
  readonly bytes: number
  /** Whether the app made it by itself at a start or before an import; others were asked for, or came before a migration. */
  readonly routine: boolean
}

/** Orders backups by what they hold, most first, since a clock may have been wrong; those of one state by when they were made. */
export function newestFirst(
  a: Pick<DatedBackup, 'at' | 'latestEntry'>,
  b: Pick<DatedBackup, 'at' | 'latestEntry'>,
): number {
  return b.latestEntry - a.latestEntry || (a.at < b.at ? 1 : -1)
}

/** How many of the routine ones stay: the newest, then the newest of each day, week and month. Common practice, no source. */
const NEWEST = 10
const DAYS = 7
const WEEKS = 4
const MONTHS = 12
/** So many stay whatever they take. */
const NEVER_FEWER = 3
/** A Monday, from which weeks are counted. */
const FIRST_MONDAY = isoDate('2001-01-01')

/**
 * Chooses the backups that may go, oldest first; deletes nothing itself.
 *
 * Of routine ones the newest ten stay, and the newest of each of the last seven days, four weeks and twelve months that
 * have any. The others stay. Where all that stays takes more than `limitBytes`, routine ones go first, oldest first,
 * then the others; the three newest of all never go. A day without a backup does not use up a place, so that a drawer
 * opened once a month keeps a year.
 */
export function backupsToDrop<B extends DatedBackup>(backups: readonly B[], limitBytes: number): B[] {
  const ordered = backups.toSorted(newestFirst)
  const kept = new Set<B>(ordered.filter(({ routine }) => !routine))
  const routine = ordered.filter((backup) => backup.routine)
  for (const backup of routine.slice(0, NEWEST)) kept.add(backup)
  for (const [most, periodOf] of PERIODS) {
    for (const backup of newestOfEach(routine, periodOf).slice(0, most)) kept.add(backup)
  }
  const untouchable = new Set(ordered.slice(0, NEVER_FEWER))
  let bytes = ordered.reduce((sum, backup) => sum + (kept.has(backup) ? backup.bytes : 0), 0)
  for (const backup of [...routine.toReversed(), ...ordered.toReversed()]) {
    if (bytes <= limitBytes) break
    if (!kept.has(backup) || untouchable.has(backup)) continue
    kept.delete(backup)
    bytes -= backup.bytes
  }
  return ordered.filter((backup) => !kept.has(backup)).toReversed()
}

const dayOf = (backup: DatedBackup): IsoDate => isoDate(backup.at.slice(0, 10))

const PERIODS: readonly (readonly [most: number, periodOf: (backup: DatedBackup) => string])[] = [
  [DAYS, dayOf],
  [WEEKS, (backup) => addDays(dayOf(backup), -(((daysBetween(FIRST_MONDAY, dayOf(backup)) % 7) + 7) % 7))],
  [MONTHS, (backup) => backup.at.slice(0, 7)],
]

function newestOfEach<B extends DatedBackup>(ordered: readonly B[], periodOf: (backup: B) => string): B[] {
  return [...Map.groupBy(ordered, periodOf).values()].flatMap(([newest]) =>
    newest === undefined ? [] : [newest],
  )
}
