import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { prepared } from './prepared.ts'

/** What a list is held against: everything that its rows may name. */
export interface KnownNames {
  readonly crops: readonly KnownCrop[]
  readonly varieties: readonly { readonly id: number; readonly crop_id: string; readonly name: string }[]
  readonly people: readonly { readonly id: number; readonly name: string; readonly town: string }[]
  readonly places: readonly { readonly id: number; readonly name: string; readonly path: string }[]
}

export interface KnownCrop {
  readonly id: string
  readonly common_name: string
  readonly species: string
  readonly packet_seeds: number | null
  readonly hundred_seed_weight_ug: number | null
}

export function knownNames(sqlite: Sqlite): KnownNames {
  return {
    crops: prepared(
      sqlite,
      'SELECT id, common_name, species, packet_seeds, hundred_seed_weight_ug FROM crop ORDER BY name_folded',
    ).all() as KnownCrop[],
    varieties: prepared(
      sqlite,
      `SELECT id, crop_id, name FROM variety WHERE joined_into_id IS NULL
       UNION SELECT variety.id, crop_id, varied.name FROM variety_synonym AS varied JOIN variety ON variety.id = variety_id
       WHERE joined_into_id IS NULL ORDER BY 1`,
    ).all() as { id: number; crop_id: string; name: string }[],
    people: prepared(
      sqlite,
      `SELECT coalesce(joined_into_id, id) AS id, name, town FROM person ORDER BY id`,
    ).all() as { id: number; name: string; town: string }[],
    places: prepared(sqlite, 'SELECT id, name, path FROM storage_place ORDER BY id').all() as {
      id: number
      name: string
      path: string
    }[],
  }
}

/** A gift that stands in the book, by what a list could say of it. */
export interface KnownGift {
  readonly number: string
  readonly variety_id: number
  readonly donor_id: number | null
  readonly received_on: string
  readonly harvest_from: number | null
  readonly harvest_to: number | null
  readonly count: number
  readonly mass_mg: number
}

/**
 * Every gift that was not taken back, with the seed it came with.
 *
 * The plus sign keeps SQLite from the index by entry: one list of 60,000 gifts is one entry, and each would be held
 * against all of them.
 */
export function knownGifts(sqlite: Sqlite): KnownGift[] {
  return prepared(
    sqlite,
    `SELECT accession.number, variety_id, donor_id, received_on, harvest_from, harvest_to,
       coalesce(movement.count, 0) AS count, coalesce(movement.mass_mg, 0) AS mass_mg
     FROM accession JOIN lot ON lot.accession_id = accession.id AND lot.ordinal = 1
     LEFT JOIN movement ON movement.lot_id = lot.id AND +movement.entry_id = accession.entry_id AND kind = 'intake'
     WHERE ${notUndone('accession')}`,
  ).all() as KnownGift[]
}

/** A standing accession by a number that it has or had before it came here. */
export interface NumberedGift {
  readonly number: string
  readonly variety_id: number
  /** The institution that gave the number (MCPD INSTCODE); empty where nothing says so. */
  readonly institution: string
}

/** The accessions that have or had each number: a running number is many gifts'. */
export function giftsByNumber(sqlite: Sqlite): Map<string, NumberedGift[]> {
  const institution = `coalesce((SELECT value FROM accession_passport AS of WHERE of.accession_id = accession.id AND of.code = 'INSTCODE'), '')`
  const rows = prepared(
    sqlite,
    `SELECT value AS former, number, variety_id, ${institution} AS institution
     FROM accession_passport JOIN accession ON accession.id = accession_id
     WHERE code IN ('OTHERNUMB', 'ACCENUMB') AND ${notUndone('accession')}
     UNION ALL SELECT number, number, variety_id, '' FROM accession WHERE ${notUndone('accession')}`,
  ).all() as (NumberedGift & { former: string })[]
  return Map.groupBy(rows, ({ former }) => former)
}

/** The name of the file that brought these very gifts in and was not taken back, or null. */
export function batchOfList(sqlite: Sqlite, digest: string): string | null {
  const name = prepared(
    sqlite,
    `SELECT file_name FROM list_batch WHERE digest = ? AND ${notUndone('list_batch')} LIMIT 1`,
  )
    .pluck()
    .get(digest) as string | undefined
  return name ?? null
}

/** What the columns of a list with these headings were said to mean, or null. */
export function rememberedColumns(sqlite: Sqlite, headings: string): string[] | null {
  const kept = prepared(sqlite, 'SELECT columns FROM list_columns WHERE headings = ?')
    .pluck()
    .get(headings) as string | undefined
  return kept === undefined ? null : JSON.parse(kept)
}
