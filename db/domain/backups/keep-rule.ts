import { addDays, daysBetween } from '../dates/day-arithmetic.ts'
import { type IsoDate, isoDate } from '../dates/iso-date.ts'

/** A backup as the rule sees it. */
export interface DatedBackup {
  /** When it was made, ISO 8601 in UTC. */
  readonly at: string
  readonly bytes: number
  /** Whether the app made it by itself at a start or before an import; others were asked for, or came before a migration. */
  readonly routine: boolean
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
  const newestFirst = backups.toSorted((a, b) => (a.at < b.at ? 1 : -1))
  const kept = new Set<B>(newestFirst.filter(({ routine }) => !routine))
  const routine = newestFirst.filter((backup) => backup.routine)
  for (const backup of routine.slice(0, NEWEST)) kept.add(backup)
  for (const [most, periodOf] of PERIODS) {
    for (const backup of newestOfEach(routine, periodOf).slice(0, most)) kept.add(backup)
  }
  const untouchable = new Set(newestFirst.slice(0, NEVER_FEWER))
  let bytes = newestFirst.reduce((sum, backup) => sum + (kept.has(backup) ? backup.bytes : 0), 0)
  for (const backup of [...routine.toReversed(), ...newestFirst.toReversed()]) {
    if (bytes <= limitBytes) break
    if (!kept.has(backup) || untouchable.has(backup)) continue
    kept.delete(backup)
    bytes -= backup.bytes
  }
  return newestFirst.filter((backup) => !kept.has(backup)).toReversed()
}

const dayOf = (backup: DatedBackup): IsoDate => isoDate(backup.at.slice(0, 10))

const PERIODS: readonly (readonly [most: number, periodOf: (backup: DatedBackup) => string])[] = [
  [DAYS, dayOf],
  [WEEKS, (backup) => addDays(dayOf(backup), -(((daysBetween(FIRST_MONDAY, dayOf(backup)) % 7) + 7) % 7))],
  [MONTHS, (backup) => backup.at.slice(0, 7)],
]

function newestOfEach<B extends DatedBackup>(
  newestFirst: readonly B[],
  periodOf: (backup: B) => string,
): B[] {
  return [...Map.groupBy(newestFirst, periodOf).values()].flatMap(([newest]) =>
    newest === undefined ? [] : [newest],
  )
}
