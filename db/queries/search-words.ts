import { fold } from '../domain/shared/fold.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { accession } from '../schema/stock-tables.ts'
import { columns, expression, select, selectValue } from './columns.ts'
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
const WORDS = columns({
  id: accession.id,
  words:
    expression<string>(`accession.number || ' ' || accession.bare || ' ' || variety.name || ' ' || crop.common_name
    || ' ' || crop.species || ' ' || coalesce(person.name || ' ' || kept.name, person.name, '') || ' ' || accession.grown_at
    || ' ' || coalesce((SELECT group_concat(name, ' ') FROM variety_synonym WHERE variety_id = variety.id), '')`),
})

const OF_ACCESSIONS = `FROM accession
  JOIN variety ON variety.id = accession.variety_id
  JOIN crop ON crop.id = variety.crop_id
  LEFT JOIN person ON person.id = accession.donor_id
  LEFT JOIN person AS kept ON kept.id = person.merged_into_id
  WHERE accession.id BETWEEN ? AND ?`

/** To begin the query costs twenty times what one more row does. */
const AT_A_TIME = 1_000

/** Writes an accession's searchable words anew. */
export function indexAccession(sqlite: Sqlite, accessionId: number): void {
  indexAccessions(sqlite, accessionId, accessionId)
}

/** Writes the searchable words of every accession anew whose id lies from `first` to `last`. */
export function indexAccessions(sqlite: Sqlite, first: number, last: number): void {
  const facts = select(sqlite, WORDS, (list) => `SELECT ${list} ${OF_ACCESSIONS}`)
  const put = prepared(sqlite, 'INSERT OR REPLACE INTO accession_search (rowid, words) VALUES (?, ?)')
  for (let from = first; from <= last; from += AT_A_TIME) {
    for (const { id, words } of facts.all(from, Math.min(last, from + AT_A_TIME - 1)))
      put.run(id, fold(words))
  }
}

/** Indexes every accession that a person gave anew, after the name or the record that stands for them changed. */
export function indexDonor(sqlite: Sqlite, personId: number): void {
  indexThose(sqlite, isRecordOf('donor_id'), personId, personId)
}

/** Indexes every accession of a variety anew, after its names changed. */
export function indexVariety(sqlite: Sqlite, varietyId: number): void {
  indexThose(sqlite, 'variety_id = ?', varietyId)
}

function indexThose(sqlite: Sqlite, where: string, ...bound: number[]): void {
  const those = selectValue(sqlite, accession.id, (id) => `SELECT ${id} FROM accession WHERE ${where}`)
  for (const id of those.all(...bound)) indexAccession(sqlite, id)
}

/** The read of the accessions that a full-text question finds. */
export function accessionsFound(sqlite: Sqlite) {
  return selectValue(
    sqlite,
    expression<number>('rowid'),
    (id) => `SELECT ${id} FROM accession_search WHERE accession_search MATCH ?`,
  )
}

/** The accessions whose searchable words hold any of some texts. */
export function accessionsSaying(sqlite: Sqlite, texts: readonly string[]): number[] {
  const search = accessionsFound(sqlite)
  const found = texts
    .map((text) => matchFor([text]))
    .flatMap((match) => (match === null ? [] : search.all(match)))
  return [...new Set(found)]
}

/** Takes words that no accession has any more out of the index, where they stay until its parts are merged. */
export function forgetFormerWords(sqlite: Sqlite): void {
  prepared(sqlite, "INSERT INTO accession_search (accession_search) VALUES ('optimize')").run()
}
