import type { Sqlite } from '../migrations/connection.ts'
import { prepared } from './prepared.ts'

/** Rows of a list, written one after another by statements prepared once: thousands come in at a time. */

export function addVarietyRow(sqlite: Sqlite, cropId: string, name: string, folded: string): number {
  return idOf(
    prepared(sqlite, 'INSERT INTO variety (crop_id, name, name_folded, story) VALUES (?, ?, ?, ?)').run(
      cropId,
      name,
      folded,
      '',
    ),
  )
}

export function addOtherName(sqlite: Sqlite, varietyId: number, name: string, folded: string): void {
  prepared(
    sqlite,
    'INSERT INTO variety_synonym (variety_id, name, name_folded) VALUES (?, ?, ?) ON CONFLICT DO NOTHING',
  ).run(varietyId, name, folded)
}

export function addDonorRow(
  sqlite: Sqlite,
  donor: { readonly name: string; readonly folded: string; readonly town: string; readonly on: string },
): number {
  return idOf(
    prepared(
      sqlite,
      `INSERT INTO person (name, name_folded, town, credit_as, note, created_on) VALUES (?, ?, ?, '', '', ?)`,
    ).run(donor.name, donor.folded, donor.town, donor.on),
  )
}

export function makeDonor(sqlite: Sqlite, personId: number): void {
  prepared(
    sqlite,
    `INSERT INTO person_role (person_id, role) VALUES (?, 'donor') ON CONFLICT DO NOTHING`,
  ).run(personId)
}

/** A new accession; numbers are given out by whoever calls. */
export interface AccessionRow {
  readonly number: string
  readonly bare: string
  readonly series: string
  readonly running: number
  readonly varietyId: number
  readonly donorId: number | null
  readonly receivedOn: string
  readonly grownAt: string
  readonly story: string
  readonly terms: string
  readonly entryId: number
}

export function addAccessionRow(sqlite: Sqlite, row: AccessionRow): number {
  return idOf(
    prepared(
      sqlite,
      `INSERT INTO accession (number, bare, series, running, variety_id, donor_id, received_on, grown_at, story, terms, entry_id)
       VALUES (@number, @bare, @series, @running, @varietyId, @donorId, @receivedOn, @grownAt, @story, @terms, @entryId)`,
    ).run(row),
  )
}

/** The first lot of a new accession. */
export interface FirstLotRow {
  readonly accessionId: number
  readonly number: string
  readonly bare: string
  readonly basis: 'weighed' | 'counted'
  readonly estimated: 0 | 1
  readonly from: number | null
  readonly to: number | null
  readonly about: 0 | 1
  readonly grownAt: string
  readonly placeId: number | null
  readonly quarantineReason: string | null
  readonly entryId: number
}

export function addFirstLot(sqlite: Sqlite, row: FirstLotRow): number {
  return idOf(
    prepared(
      sqlite,
      `INSERT INTO lot (accession_id, ordinal, number, bare, role, basis, harvest_from, harvest_to, harvest_about,
         generation, grown_at, place_id, held_by, quarantine_reason, estimated, entry_id)
       VALUES (@accessionId, 1, @number, @bare, 'working', @basis, @from, @to, @about,
         0, @grownAt, @placeId, '', @quarantineReason, @estimated, @entryId)`,
    ).run(row),
  )
}

export function noteFirstPlace(
  sqlite: Sqlite,
  lotId: number,
  placeId: number,
  on: string,
  entryId: number,
): void {
  prepared(sqlite, 'INSERT INTO lot_place (lot_id, place_id, since, entry_id) VALUES (?, ?, ?, ?)').run(
    lotId,
    placeId,
    on,
    entryId,
  )
}

/** The seed that a new lot comes with, as the ledger keeps it. */
export interface IntakeRow {
  readonly lotId: number
  readonly entryId: number
  readonly on: string
  readonly count: number
  readonly mass: number
  readonly measured: string
  readonly weight: number
  readonly personId: number | null
}

export function addIntake(sqlite: Sqlite, row: IntakeRow): void {
  prepared(
    sqlite,
    `INSERT INTO movement (lot_id, entry_id, kind, on_date, count, mass_mg, measured, weight_ug, person_id, note)
     VALUES (@lotId, @entryId, 'intake', @on, @count, @mass, @measured, @weight, @personId, '')`,
  ).run(row)
}

export function savePassportValue(
  sqlite: Sqlite,
  accessionId: number,
  code: string,
  value: string,
  entryId: number,
): void {
  prepared(
    sqlite,
    'INSERT INTO accession_passport (accession_id, code, value, entry_id) VALUES (?, ?, ?, ?)',
  ).run(accessionId, code, value, entryId)
}

/** Notes a caution of a new accession. */
export function addCaution(sqlite: Sqlite, accessionId: number, caution: string, note: string): void {
  prepared(sqlite, 'INSERT INTO accession_caution (accession_id, caution, note) VALUES (?, ?, ?)').run(
    accessionId,
    caution,
    note,
  )
}

function idOf({ lastInsertRowid }: { readonly lastInsertRowid: number | bigint }): number {
  return Number(lastInsertRowid)
}
