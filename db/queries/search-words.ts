import { fold } from '../domain/shared/fold.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { isRecordOf } from './person-records.ts'
import { prepared } from './prepared.ts'

/** The full-text question for texts, any of which may fit: every word of it must begin a word of the record. Null when empty. */
export function matchFor(texts: readonly string[]): string | null {
  const each = texts.map(beginnings).filter((words) => words !== '')
  return each.length === 0 ? null : each.map((words) => `(${words})`).join(' OR ')
}

function beginnings(text: string): string {
  const words = fold(text)
    .split(' ')
    .filter((word) => word !== '')
  return words.map((word) => `"${word}"*`).join(' ')
}

/** An accession's searchable words: number, variety and its synonyms, crop, donor, place grown. */
const WORDS = `
  SELECT accession.id, accession.number || ' ' || accession.bare || ' ' || variety.name || ' ' || crop.common_name
    || ' ' || crop.species || ' ' || coalesce(person.name || ' ' || kept.name, person.name, '') || ' ' || accession.grown_at
    || ' ' || coalesce((SELECT group_concat(name, ' ') FROM variety_synonym WHERE variety_id = variety.id), '') AS words
  FROM accession
  JOIN variety ON variety.id = accession.variety_id
  JOIN crop ON crop.id = variety.crop_id
  LEFT JOIN person ON person.id = accession.donor_id
  LEFT JOIN person AS kept ON kept.id = person.joined_into_id
  WHERE accession.id BETWEEN ? AND ?`

/** To begin the query costs twenty times what one more row does. */
const AT_A_TIME = 1_000

/** Writes an accession's searchable words anew. */
export function indexAccession(sqlite: Sqlite, accessionId: number): void {
  indexAccessions(sqlite, accessionId, accessionId)
}

/** Writes the searchable words of every accession anew whose id lies from `first` to `last`. */
export function indexAccessions(sqlite: Sqlite, first: number, last: number): void {
  const facts = prepared(sqlite, WORDS)
  const put = prepared(sqlite, 'INSERT OR REPLACE INTO accession_search (rowid, words) VALUES (?, ?)')
  for (let from = first; from <= last; from += AT_A_TIME) {
    const rows = facts.all(from, Math.min(last, from + AT_A_TIME - 1)) as { id: number; words: string }[]
    for (const { id, words } of rows) put.run(id, fold(words))
  }
}

/** Indexes every accession that a person gave anew, after the name or the record that stands for them changed. */
export function indexDonor(sqlite: Sqlite, personId: number): void {
  const ids = prepared(sqlite, `SELECT id FROM accession WHERE ${isRecordOf('donor_id')}`)
    .pluck()
    .all(personId, personId) as number[]
  for (const id of ids) indexAccession(sqlite, id)
}

/** Indexes every accession of a variety anew, after its names changed. */
export function indexVariety(sqlite: Sqlite, varietyId: number): void {
  const ids = prepared(sqlite, 'SELECT id FROM accession WHERE variety_id = ?')
    .pluck()
    .all(varietyId) as number[]
  for (const id of ids) indexAccession(sqlite, id)
}

/** The accessions whose searchable words hold any of some texts. */
export function accessionsSaying(sqlite: Sqlite, texts: readonly string[]): number[] {
  const search = prepared(sqlite, 'SELECT rowid FROM accession_search WHERE accession_search MATCH ?').pluck()
  const found = texts
    .map((text) => matchFor([text]))
    .flatMap((match) => (match === null ? [] : (search.all(match) as number[])))
  return [...new Set(found)]
}

/** Takes words that no accession has any more out of the index, where they stay until its parts are merged. */
export function forgetFormerWords(sqlite: Sqlite): void {
  prepared(sqlite, "INSERT INTO accession_search (accession_search) VALUES ('optimize')").run()
}
