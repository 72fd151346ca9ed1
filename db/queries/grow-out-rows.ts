import type { CountedUnitName } from '../domain/crops/counted-unit.ts'
import type { IsoDate } from '../domain/dates/iso-date.ts'
import type { GrowOutNoteKind } from '../domain/season-plan/grow-out.ts'
import type { IsolationMethod } from '../domain/season-plan/isolation-method.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

/** A grow-out as it lies in the file, with the names of what it is made of. */
export interface GrowOutRow {
  readonly id: number
  readonly season: number
  readonly accession_id: number
  readonly accession_number: string
  readonly variety: string
  readonly crop: string
  readonly crop_id: string
  readonly counted_unit: CountedUnitName
  readonly life_cycle: string | null
  readonly site_id: number
  readonly site: string
  readonly grower_id: number | null
  readonly grower: string | null
  /** As the latest plan of its season has it; null where that plan no longer has it. */
  readonly way: IsolationMethod | null
}

const WAY = `(SELECT line.way FROM season_plan_line AS line WHERE line.plan_id = (
    SELECT max(season_plan.id) FROM season_plan WHERE season_plan.season = grow_out.season AND ${notUndone('season_plan')})
  AND line.accession_id = grow_out.accession_id AND line.site_id = grow_out.site_id)`

/** Grow-outs from a season on that a plan has or of which anything was written; the latest season first, by garden. */
export function growOutRows(sqlite: Sqlite, fromSeason: number): GrowOutRow[] {
  return prepared(
    sqlite,
    `SELECT * FROM (SELECT grow_out.id, season, grow_out.accession_id, accession.number AS accession_number,
       variety.name AS variety, crop.common_name AS crop, crop.id AS crop_id, counted_unit,
       crop.life_cycle,
       site_id, growing_site.name AS site, who.id AS grower_id, who.name AS grower, ${WAY} AS way
     FROM grow_out JOIN growing_site ON growing_site.id = site_id ${joinCanonicalPerson('who', 'growing_site.grower_id')}
     JOIN accession ON accession.id = accession_id JOIN variety ON variety.id = variety_id JOIN crop ON crop.id = crop_id
     WHERE season >= ?) AS grow_out
     WHERE way IS NOT NULL
       OR EXISTS (SELECT 1 FROM grow_out_note WHERE grow_out_id = grow_out.id AND ${notUndone('grow_out_note')})
       OR EXISTS (SELECT 1 FROM withdrawal WHERE grow_out_id = grow_out.id AND ${notUndone('withdrawal')})
       OR EXISTS (SELECT 1 FROM seed_return WHERE grow_out_id = grow_out.id AND ${notUndone('seed_return')})
     ORDER BY season DESC, site, variety, id`,
  ).all(fromSeason) as GrowOutRow[]
}

/** A note of a grow-out that was not taken back. */
export interface GrowOutNoteRow {
  readonly grow_out_id: number
  readonly entry_id: number
  readonly kind: GrowOutNoteKind
  readonly on: IsoDate
  readonly plants: number | null
  readonly note: string
}

/** The notes of a grow-out, by day. */
export function notesOf(sqlite: Sqlite, growOutId: number): GrowOutNoteRow[] {
  return prepared(
    sqlite,
    `SELECT grow_out_id, entry_id, kind, on_date AS "on", plants, note FROM grow_out_note
     WHERE grow_out_id = ? AND ${notUndone('grow_out_note')} ORDER BY on_date, id`,
  ).all(growOutId) as GrowOutNoteRow[]
}

/** The notes of an accession's grow-outs from a day on, with the garden, by day. */
export function notesOfAccession(sqlite: Sqlite, accessionId: number, since: string) {
  return prepared(
    sqlite,
    `SELECT grow_out_id, growing_site.name AS site, grow_out_note.entry_id, kind, on_date AS "on", plants, grow_out_note.note
     FROM grow_out JOIN grow_out_note ON grow_out_id = grow_out.id JOIN growing_site ON growing_site.id = site_id
     WHERE accession_id = ? AND on_date >= ? AND ${notUndone('grow_out_note')} ORDER BY on_date, grow_out_note.id`,
  ).all(accessionId, since) as (GrowOutNoteRow & { readonly site: string })[]
}

const KEPT_PERSON = `(SELECT coalesce(named.joined_into_id, named.id) FROM person AS named WHERE named.id = withdrawal.person_id)`
const TO_BE_GROWN = "withdrawal.purpose IN ('grow-out', 'to-return')"

/**
 * Seed that went out for a grow-out, by lot: handed out for it by name, or to its garden's grower from the July before to the
 * end of its season. Bound: accession, id, grower, season.
 */
export function seedOutFor(sqlite: Sqlite, row: GrowOutRow) {
  return prepared(
    sqlite,
    `SELECT lot.id AS lotId, lot.number AS lotNumber, -sum(movement.count) AS count,
       withdrawal.id AS withdrawalId, withdrawal.on_date AS "on"
     FROM lot JOIN movement ON movement.lot_id = lot.id AND movement.kind = 'withdrawal'
     JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
     WHERE lot.accession_id = ? AND ${notUndone('withdrawal')} AND (withdrawal.grow_out_id = ? OR (withdrawal.grow_out_id IS NULL AND ${TO_BE_GROWN}
       AND ${KEPT_PERSON} = ? AND withdrawal.on_date BETWEEN ? || '-07-01' AND ? || '-12-31'))
     GROUP BY withdrawal.id, lot.id ORDER BY withdrawal.on_date, withdrawal.id`,
  ).all(row.accession_id, row.id, row.grower_id, row.season - 1, row.season) as {
    lotId: number
    lotNumber: string
    count: number
    withdrawalId: number
    on: string
  }[]
}

/** Lots that came back of a grow-out. */
export function seedBackOf(sqlite: Sqlite, growOutId: number) {
  return prepared(
    sqlite,
    `SELECT lot.id AS lotId, lot.number AS lotNumber, on_date AS "on" FROM seed_return JOIN lot ON lot.id = lot_id
     WHERE grow_out_id = ? AND ${notUndone('seed_return')} ORDER BY seed_return.id`,
  ).all(growOutId) as { lotId: number; lotNumber: string; on: string }[]
}

/** The grow-out that a hand-out of an accession's seed was for, with its garden; undefined where it was for none. */
export function growOutOfVisit(sqlite: Sqlite, withdrawalId: number, accessionId: number) {
  return prepared(
    sqlite,
    `SELECT grow_out.id AS growOutId, growing_site.name AS site,
       (SELECT plants FROM grow_out_note WHERE grow_out_id = grow_out.id AND kind = 'saved-from'
          AND ${notUndone('grow_out_note')} ORDER BY id DESC LIMIT 1) AS plants
     FROM withdrawal JOIN grow_out ON grow_out.accession_id = ?
     JOIN growing_site ON growing_site.id = grow_out.site_id
     WHERE withdrawal.id = ? AND ${notUndone('withdrawal')} AND (withdrawal.grow_out_id = grow_out.id
       OR (withdrawal.grow_out_id IS NULL AND ${TO_BE_GROWN} AND ${KEPT_PERSON}
         = (SELECT coalesce(named.joined_into_id, named.id) FROM person AS named WHERE named.id = growing_site.grower_id)
         AND withdrawal.on_date BETWEEN (season - 1) || '-07-01' AND season || '-12-31'))
     ORDER BY season, grow_out.id DESC LIMIT 1`,
  ).get(accessionId, withdrawalId) as { growOutId: number; site: string; plants: number | null } | undefined
}

/** The words of the latest entry that rests on grow-outs which only the plan of an entry has; undefined for none. */
export function restingOnPlan(sqlite: Sqlite, entryId: number): string | undefined {
  return prepared(
    sqlite,
    `WITH only_here (id) AS (
       SELECT grow_out.id FROM season_plan JOIN season_plan_line AS line ON line.plan_id = season_plan.id
       JOIN grow_out ON grow_out.season = season_plan.season AND grow_out.accession_id = line.accession_id
         AND grow_out.site_id = line.site_id
       WHERE season_plan.entry_id = ? AND NOT EXISTS (
         SELECT 1 FROM season_plan AS other JOIN season_plan_line AS same ON same.plan_id = other.id
         WHERE other.id <> season_plan.id AND other.season = season_plan.season AND same.accession_id = line.accession_id
           AND same.site_id = line.site_id AND ${notUndone('other')}))
     SELECT entry.said FROM (
       SELECT grow_out_id, entry_id FROM grow_out_note WHERE ${notUndone('grow_out_note')}
       UNION ALL SELECT grow_out_id, entry_id FROM withdrawal WHERE ${notUndone('withdrawal')}
       UNION ALL SELECT grow_out_id, entry_id FROM seed_return WHERE ${notUndone('seed_return')}
     ) AS later JOIN only_here ON only_here.id = later.grow_out_id JOIN entry ON entry.id = later.entry_id
     ORDER BY entry.id DESC LIMIT 1`,
  )
    .pluck()
    .get(entryId) as string | undefined
}
