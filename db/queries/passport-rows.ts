import { alias } from 'drizzle-orm/sqlite-core'
import type { BreedingStatus } from '../domain/shared/closed-sets.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { accessionPassport } from '../schema/list-tables.ts'
import { crop, person } from '../schema/reference-tables.ts'
import { accession } from '../schema/stock-tables.ts'
import { columns, expression, orNull, pick, type RowOf, select } from './columns.ts'
import { JOIN_KEEPING } from './lot-rows.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { SEED_NAMES } from './seed-names.ts'

const donor = alias(person, 'donor')

const PASSPORT = columns({
  ...pick(accession, 'id', 'number', 'receivedOn', 'grownAt', 'story'),
  ...SEED_NAMES,
  species: crop.species,
  breeding: expression<BreedingStatus>("coalesce(accession_policy.breeding_status, 'unknown')"),
  donor: orNull(donor.name),
  synonyms: expression<string | null>(
    "(SELECT group_concat(name, ';') FROM variety_synonym WHERE variety_id = variety.id)",
  ),
  seeds: expression<number>(
    '(SELECT coalesce(sum(balance_count), 0) FROM lot WHERE accession_id = accession.id)',
  ),
  /** What its seed is kept for, by the places of its lots, as they were last said. */
  aims: expression<
    string | null
  >(`(SELECT group_concat(DISTINCT aim) FROM lot JOIN place_terms ON place_terms.place_id = lot.place_id
    WHERE lot.accession_id = accession.id AND lot.holds_seed = 1 AND ${notUndone('place_terms')})`),
})

/** A standing accession as others know it: what it is, how it came, and what a list said of it. */
export type PassportRow = RowOf<typeof PASSPORT>

/** Every standing accession, in order. */
export function passportRows(sqlite: Sqlite): PassportRow[] {
  return select(
    sqlite,
    PASSPORT,
    (list) => `SELECT ${list} FROM accession
     JOIN variety ON variety.id = accession.variety_id
     JOIN crop ON crop.id = variety.crop_id
     ${joinCanonicalPerson('donor', 'accession.donor_id')} ${JOIN_KEEPING}
     WHERE ${notUndone('accession')} ORDER BY accession.id`,
  ).all()
}

const VALUE = columns(pick(accessionPassport, 'accessionId', 'code', 'value'))

/** What lists said of accessions, by accession and code. */
export function passportValues(sqlite: Sqlite): Map<number, Map<string, string>> {
  const rows = select(
    sqlite,
    VALUE,
    (list) => `SELECT ${list} FROM accession_passport ORDER BY accession_id`,
  ).all()
  return new Map(
    [...Map.groupBy(rows, ({ accessionId }) => accessionId)].map(([id, values]) => [
      id,
      new Map(values.map(({ code, value }) => [code, value])),
    ]),
  )
}
