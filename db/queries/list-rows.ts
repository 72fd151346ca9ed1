import type { Sqlite } from '../migrations/connection.ts'
import { accessionPassport, listBatch, listColumns } from '../schema/list-tables.ts'
import { crop, person, storagePlace, variety, varietySynonym } from '../schema/reference-tables.ts'
import { accession, lot } from '../schema/stock-tables.ts'
import { columns, expression, pick, type RowOf, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'

const CROP = columns(pick(crop, 'id', 'commonName', 'species', 'packetSeeds', 'hundredSeedWeightUg'))
const VARIETY = columns(pick(variety, 'id', 'cropId', 'name'))
const VARIED = columns({ ...pick(variety, 'id', 'cropId'), name: varietySynonym.name })
const PERSON = columns({
  id: expression<number>('coalesce(merged_into_id, id)'),
  ...pick(person, 'name', 'town'),
})
const PLACE = columns(pick(storagePlace, 'id', 'name', 'path'))

export type KnownCrop = RowOf<typeof CROP>

/** What a list is held against: everything that its rows may name. */
export interface KnownNames {
  readonly crops: readonly KnownCrop[]
  readonly varieties: readonly RowOf<typeof VARIETY>[]
  readonly people: readonly RowOf<typeof PERSON>[]
  readonly places: readonly RowOf<typeof PLACE>[]
}

/** Every crop, variety, person and place of the book; a variety by each of its names. */
export function knownNames(sqlite: Sqlite): KnownNames {
  return {
    crops: select(sqlite, CROP, (list) => `SELECT ${list} FROM crop ORDER BY name_folded`).all(),
    varieties: select(
      sqlite,
      VARIETY,
      (list) => `SELECT ${list} FROM variety WHERE merged_into_id IS NULL
       UNION SELECT ${VARIED.sql} FROM variety_synonym JOIN variety ON variety.id = variety_id
       WHERE merged_into_id IS NULL ORDER BY 1`,
    ).all(),
    people: select(sqlite, PERSON, (list) => `SELECT ${list} FROM person ORDER BY person.id`).all(),
    places: select(sqlite, PLACE, (list) => `SELECT ${list} FROM storage_place ORDER BY id`).all(),
  }
}

const GIFT = columns({
  ...pick(accession, 'number', 'varietyId', 'donorId', 'receivedOn'),
  ...pick(lot, 'harvestFrom', 'harvestTo'),
  count: expression<number>('coalesce(movement.count, 0)'),
  massMg: expression<number>('coalesce(movement.mass_mg, 0)'),
})

/** A gift that stands in the book, by what a list could say of it. */
export type KnownGift = RowOf<typeof GIFT>

/**
 * Every gift that was not taken back, with the seed it came with.
 *
 * The plus sign keeps SQLite from the index by entry: one list of 60,000 gifts is one entry, and each would be held
 * against all of them.
 */
export function knownGifts(sqlite: Sqlite): KnownGift[] {
  return select(
    sqlite,
    GIFT,
    (list) => `SELECT ${list}
     FROM accession JOIN lot ON lot.accession_id = accession.id AND lot.ordinal = 1
     LEFT JOIN movement ON movement.lot_id = lot.id AND +movement.entry_id = accession.entry_id AND kind = 'intake'
     WHERE ${notUndone('accession')}`,
  ).all()
}

const NUMBERED = columns({
  former: accessionPassport.value,
  ...pick(accession, 'number', 'varietyId'),
  /** The institution that gave the number (MCPD INSTCODE); empty where nothing says so. */
  institution: expression<string>(`coalesce((SELECT value FROM accession_passport AS of
    WHERE of.accession_id = accession.id AND of.code = 'INSTCODE'), '')`),
})

/** A standing accession by a number that it has or had before it came here. */
export type NumberedGift = RowOf<typeof NUMBERED>

/** The accessions that have or had each number: a running number is many gifts'. */
export function giftsByNumber(sqlite: Sqlite): Map<string, NumberedGift[]> {
  const rows = select(
    sqlite,
    NUMBERED,
    (list) => `SELECT ${list} FROM accession_passport JOIN accession ON accession.id = accession_id
     WHERE code IN ('OTHERNUMB', 'ACCENUMB') AND ${notUndone('accession')}
     UNION ALL SELECT number, number, variety_id, '' FROM accession WHERE ${notUndone('accession')}`,
  ).all()
  return Map.groupBy(rows, ({ former }) => former)
}

/** The name of the file that brought these very gifts in and was not taken back, or null. */
export function batchOfList(sqlite: Sqlite, digest: string): string | null {
  const found = selectValue(
    sqlite,
    listBatch.fileName,
    (name) => `SELECT ${name} FROM list_batch WHERE digest = ? AND ${notUndone('list_batch')} LIMIT 1`,
  )
  return found.get(digest) ?? null
}

/** What the columns of a list with these headings were said to mean, or null. */
export function rememberedColumns(sqlite: Sqlite, headings: string): string[] | null {
  const kept = selectValue(
    sqlite,
    listColumns.columns,
    (value) => `SELECT ${value} FROM list_columns WHERE headings = ?`,
  ).get(headings)
  return kept === undefined ? null : JSON.parse(kept)
}
