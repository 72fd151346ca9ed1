import type { Sqlite } from '../migrations/connection.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

/** What the record of a lot shows beside its row of the shelf. */
export interface LotFacts {
  readonly species: string
  readonly grown_at: string
  readonly place_id: number | null
  readonly held_by: string
  readonly held_since: string | null
  readonly grower: string | null
  readonly donor_id: number | null
  readonly credit_as: string | null
  readonly received_on: string
  readonly donor_words: string
  readonly story: string
  readonly terms: string
}

/** The facts of one lot; the lot must exist. */
export function lotFacts(sqlite: Sqlite, lotId: number): LotFacts {
  return prepared(
    sqlite,
    `SELECT crop.species, CASE lot.grown_at WHEN '' THEN accession.grown_at ELSE lot.grown_at END AS grown_at,
       lot.place_id, lot.held_by, lot.held_since, grower.name AS grower, donor.id AS donor_id,
       donor.credit_as, accession.received_on, accession.donor_words, accession.story, accession.terms
     FROM lot JOIN accession ON accession.id = lot.accession_id
     JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id
     ${joinCanonicalPerson('grower', 'lot.grower_id')}
     ${joinCanonicalPerson('donor', 'accession.donor_id')}
     WHERE lot.id = ?`,
  ).get(lotId) as LotFacts
}

/** Where a lot has lain, latest first. */
export function placeHistoryOf(sqlite: Sqlite, lotId: number): { place: string; since: string }[] {
  return prepared(
    sqlite,
    `SELECT storage_place.path AS place, since FROM lot_place JOIN storage_place ON storage_place.id = place_id
     WHERE lot_id = ? AND NOT EXISTS (SELECT 1 FROM entry WHERE takes_back_id = lot_place.entry_id)
     ORDER BY since DESC, lot_place.id DESC`,
  ).all(lotId) as { place: string; since: string }[]
}

/** The lots that a lot came from. */
export function parentsOf(sqlite: Sqlite, lotId: number) {
  return prepared(
    sqlite,
    `SELECT lot.id AS lotId, lot.number AS lotNumber, relation FROM lot_parent JOIN lot ON lot.id = parent_lot_id
     WHERE lot_id = ? ORDER BY lot.id`,
  ).all(lotId) as { lotId: number; lotNumber: string; relation: 'grown' | 'split' | 'joined' }[]
}
