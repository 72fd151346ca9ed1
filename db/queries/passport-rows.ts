import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

/** A standing accession as others know it: what it is, how it came, and what a list said of it. */
export interface PassportRow {
  readonly id: number
  readonly number: string
  readonly variety: string
  readonly synonyms: string | null
  readonly crop: string
  readonly species: string
  readonly received_on: string
  readonly donor: string | null
  readonly grown_at: string
  readonly story: string
  readonly seeds: number
  /** What its seed is kept for, by the places of its lots, as they were last said. */
  readonly aims: string | null
}

export function passportRows(sqlite: Sqlite): PassportRow[] {
  return prepared(
    sqlite,
    `SELECT accession.id, accession.number, variety.name AS variety, crop.common_name AS crop, crop.species,
       accession.received_on, donor.name AS donor, accession.grown_at, accession.story,
       (SELECT group_concat(name, ';') FROM variety_synonym WHERE variety_id = variety.id) AS synonyms,
       (SELECT coalesce(sum(balance_count), 0) FROM lot WHERE accession_id = accession.id) AS seeds,
       (SELECT group_concat(DISTINCT aim) FROM lot JOIN place_terms ON place_terms.place_id = lot.place_id
         WHERE lot.accession_id = accession.id AND lot.holds_seed = 1 AND ${notUndone('place_terms')}) AS aims
     FROM accession
     JOIN variety ON variety.id = accession.variety_id
     JOIN crop ON crop.id = variety.crop_id
     ${joinCanonicalPerson('donor', 'accession.donor_id')}
     WHERE ${notUndone('accession')} ORDER BY accession.id`,
  ).all() as PassportRow[]
}

/** What lists said of accessions, by accession and code. */
export function passportValues(sqlite: Sqlite): Map<number, Map<string, string>> {
  const rows = prepared(
    sqlite,
    'SELECT accession_id, code, value FROM accession_passport ORDER BY accession_id',
  ).all() as { accession_id: number; code: string; value: string }[]
  const kept = new Map<number, Map<string, string>>()
  for (const { accession_id: id, code, value } of rows) {
    const values = kept.get(id) ?? new Map<string, string>()
    kept.set(id, values.set(code, value))
  }
  return kept
}
