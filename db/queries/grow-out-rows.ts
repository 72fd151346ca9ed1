import { alias } from 'drizzle-orm/sqlite-core'
import type { IsoDate } from '../domain/dates/iso-date.ts'
import type { IsolationMethod } from '../domain/season-plan/isolation-method.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { entry } from '../schema/collection-tables.ts'
import { crop, person } from '../schema/reference-tables.ts'
import { growingSite, growOut, growOutNote } from '../schema/season-tables.ts'
import { accession, lot, seedReturn, withdrawal } from '../schema/stock-tables.ts'
import { both, columns, expression, orNull, pick, type RowOf, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { SEED_NAMES } from './seed-names.ts'

const WAY = `(SELECT line.way FROM season_plan_line AS line WHERE line.plan_id = (
    SELECT max(season_plan.id) FROM season_plan WHERE season_plan.season = grow_out.season AND ${notUndone('season_plan')})
  AND line.accession_id = grow_out.accession_id AND line.site_id = grow_out.site_id)`

const who = alias(person, 'who')

const GROW_OUT = columns({
  growOutId: growOut.id,
  ...pick(growOut, 'season', 'accessionId', 'siteId'),
  accessionNumber: accession.number,
  ...SEED_NAMES,
  cropId: crop.id,
  ...pick(crop, 'countedUnit', 'lifeCycle'),
  site: growingSite.name,
  growerId: orNull(who.id),
  grower: orNull(who.name),
  /** As the latest plan of its season has it; null where that plan no longer has it. */
  way: expression<IsolationMethod | null>(WAY),
})

/** A grow-out as it lies in the file, with the names of what it is made of. */
export type GrowOutRow = RowOf<typeof GROW_OUT>

/** Grow-outs from a season on that a plan has or of which anything was written; the latest season first, by garden. */
export function growOutRows(sqlite: Sqlite, fromSeason: number): GrowOutRow[] {
  return select(
    sqlite,
    GROW_OUT,
    (list) => `SELECT * FROM (SELECT ${list}
     FROM grow_out JOIN growing_site ON growing_site.id = site_id ${joinCanonicalPerson('who', 'growing_site.grower_id')}
     JOIN accession ON accession.id = accession_id JOIN variety ON variety.id = variety_id JOIN crop ON crop.id = crop_id
     WHERE season >= ?) AS grow_out
     WHERE way IS NOT NULL
       OR EXISTS (SELECT 1 FROM grow_out_note WHERE grow_out_id = growOutId AND ${notUndone('grow_out_note')})
       OR EXISTS (SELECT 1 FROM withdrawal WHERE grow_out_id = growOutId AND ${notUndone('withdrawal')})
       OR EXISTS (SELECT 1 FROM seed_return WHERE grow_out_id = growOutId AND ${notUndone('seed_return')})
     ORDER BY season DESC, site, variety, growOutId`,
  ).all(fromSeason)
}

const NOTE = columns({
  ...pick(growOutNote, 'growOutId', 'entryId', 'kind', 'plants', 'note'),
  on: expression<IsoDate>('grow_out_note.on_date'),
})

/** A note of a grow-out that was not taken back. */
export type GrowOutNoteRow = RowOf<typeof NOTE>

/** The notes of a grow-out, by day. */
export function notesOf(sqlite: Sqlite, growOutId: number): GrowOutNoteRow[] {
  return select(
    sqlite,
    NOTE,
    (list) => `SELECT ${list} FROM grow_out_note
     WHERE grow_out_id = ? AND ${notUndone('grow_out_note')} ORDER BY on_date, id`,
  ).all(growOutId)
}

const NOTE_AT_SITE = both(NOTE, columns({ site: growingSite.name }))

/** The notes of an accession's grow-outs from a day on, with the garden, by day. */
export function notesOfAccession(sqlite: Sqlite, accessionId: number, since: string) {
  return select(
    sqlite,
    NOTE_AT_SITE,
    (list) => `SELECT ${list}
     FROM grow_out JOIN grow_out_note ON grow_out_id = grow_out.id JOIN growing_site ON growing_site.id = site_id
     WHERE accession_id = ? AND on_date >= ? AND ${notUndone('grow_out_note')} ORDER BY on_date, grow_out_note.id`,
  ).all(accessionId, since)
}

const KEPT_PERSON = `(SELECT coalesce(named.merged_into_id, named.id) FROM person AS named WHERE named.id = withdrawal.person_id)`
const TO_BE_GROWN = "withdrawal.purpose IN ('grow-out', 'to-return')"

const LOT = { lotId: lot.id, lotNumber: lot.number }
const OUT = columns({
  ...LOT,
  count: expression<number>('-sum(movement.count)'),
  withdrawalId: withdrawal.id,
  on: withdrawal.onDate,
})

/**
 * Seed that went out for a grow-out, by lot: handed out for it by name, or to its garden's grower from the July before to the
 * end of its season.
 */
export function seedOutFor(sqlite: Sqlite, row: GrowOutRow) {
  return select(
    sqlite,
    OUT,
    (list) => `SELECT ${list}
     FROM lot JOIN movement ON movement.lot_id = lot.id AND movement.kind = 'withdrawal'
     JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
     WHERE lot.accession_id = ? AND ${notUndone('withdrawal')} AND (withdrawal.grow_out_id = ? OR (withdrawal.grow_out_id IS NULL AND ${TO_BE_GROWN}
       AND ${KEPT_PERSON} = ? AND withdrawal.on_date BETWEEN ? || '-07-01' AND ? || '-12-31'))
     GROUP BY withdrawal.id, lot.id ORDER BY withdrawal.on_date, withdrawal.id`,
  ).all(row.accessionId, row.growOutId, row.growerId, row.season - 1, row.season)
}

const BACK = columns({ ...LOT, on: seedReturn.onDate })

/** Lots that came back of a grow-out, or of a hand-out. */
export function seedBackOf(sqlite: Sqlite, of: 'grow_out' | 'withdrawal', id: number) {
  return select(
    sqlite,
    BACK,
    (list) => `SELECT ${list} FROM seed_return JOIN lot ON lot.id = lot_id
     WHERE ${of}_id = ? AND ${notUndone('seed_return')} ORDER BY seed_return.id`,
  ).all(id)
}

const OF_VISIT = columns({
  growOutId: growOut.id,
  site: growingSite.name,
  plants: expression<number | null>(`(SELECT plants FROM grow_out_note WHERE grow_out_id = grow_out.id
    AND kind = 'saved-from' AND ${notUndone('grow_out_note')} ORDER BY id DESC LIMIT 1)`),
})

/** The grow-out that a hand-out of an accession's seed was for, with its garden; undefined where it was for none. */
export function growOutOfVisit(sqlite: Sqlite, withdrawalId: number, accessionId: number) {
  return select(
    sqlite,
    OF_VISIT,
    (list) => `SELECT ${list}
     FROM withdrawal JOIN grow_out ON grow_out.accession_id = ?
     JOIN growing_site ON growing_site.id = grow_out.site_id
     WHERE withdrawal.id = ? AND ${notUndone('withdrawal')} AND (withdrawal.grow_out_id = grow_out.id
       OR (withdrawal.grow_out_id IS NULL AND ${TO_BE_GROWN} AND ${KEPT_PERSON}
         = (SELECT coalesce(named.merged_into_id, named.id) FROM person AS named WHERE named.id = growing_site.grower_id)
         AND withdrawal.on_date BETWEEN (season - 1) || '-07-01' AND season || '-12-31'))
     ORDER BY season, grow_out.id DESC LIMIT 1`,
  ).get(accessionId, withdrawalId)
}

/** The words of the latest entry that rests on grow-outs which only the plan of an entry has; undefined for none. */
export function restingOnPlan(sqlite: Sqlite, entryId: number): string | undefined {
  return selectValue(
    sqlite,
    entry.said,
    (said) => `WITH only_here (id) AS (
       SELECT grow_out.id FROM season_plan JOIN season_plan_line AS line ON line.plan_id = season_plan.id
       JOIN grow_out ON grow_out.season = season_plan.season AND grow_out.accession_id = line.accession_id
         AND grow_out.site_id = line.site_id
       WHERE season_plan.entry_id = ? AND NOT EXISTS (
         SELECT 1 FROM season_plan AS other JOIN season_plan_line AS same ON same.plan_id = other.id
         WHERE other.id <> season_plan.id AND other.season = season_plan.season AND same.accession_id = line.accession_id
           AND same.site_id = line.site_id AND ${notUndone('other')}))
     SELECT ${said} FROM (
       SELECT grow_out_id, entry_id FROM grow_out_note WHERE ${notUndone('grow_out_note')}
       UNION ALL SELECT grow_out_id, entry_id FROM withdrawal WHERE ${notUndone('withdrawal')}
       UNION ALL SELECT grow_out_id, entry_id FROM seed_return WHERE ${notUndone('seed_return')}
     ) AS later JOIN only_here ON only_here.id = later.grow_out_id JOIN entry ON entry.id = later.entry_id
     ORDER BY entry.id DESC LIMIT 1`,
  ).get(entryId)
}
