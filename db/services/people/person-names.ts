import { anyOf, waysToWrite } from '../../domain/shared/names-in-text.ts'
import { DESCRIPTORS } from '../../exchange/mcpd-table.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Reading, Writing } from '../context.ts'

/** Names in these are those of plants, though some remember a person; or they are no text that anybody wrote. */
const LEFT = new Set(['variety', 'variety_synonym', 'crop', 'crop_change', 'collection', 'number_series'])
/** What other people are called is theirs, also where it holds this name. */
const THEIRS = new Set(['person.name', 'person.name_folded', 'person.credit_as'])
const BUT: ReadonlyMap<string, string> = new Map([
  ['person_change', " AND field NOT IN ('name', 'creditAs')"],
])
/** Descriptors whose value is a person or an institution, so that even a name of one word can only be theirs. */
const OF_PEOPLE = DESCRIPTORS.filter((one) => one.personal_data).map(({ code }) => code)

/** Every name that a person's records ever had or were credited by, or those of everybody, in all the ways they are written. */
export function namesOf(reading: Reading, ids: readonly number[] | 'everybody'): string[] {
  const [ofRecord, ofChange, given] =
    ids === 'everybody'
      ? ['', '', []]
      : [
          ` WHERE id IN (${ids.map(() => '?').join(', ')})`,
          ` AND person_id IN (${ids.map(() => '?').join(', ')})`,
          ids,
        ]
  const now = prepared(
    reading.sqlite,
    `SELECT name FROM person${ofRecord} UNION SELECT credit_as FROM person${ofRecord}`,
  )
    .pluck()
    .all(...given, ...given) as string[]
  const earlier = `FROM person_change WHERE field IN ('name', 'creditAs')${ofChange}`
  const before = prepared(reading.sqlite, `SELECT before ${earlier} UNION SELECT after ${earlier}`)
    .pluck()
    .all(...given, ...given) as string[]
  const all = [...now, ...before.map((json) => String(JSON.parse(json)))].filter((name) => name !== '')
  // The longest first, so that a part of one does not spoil another.
  return [...new Set(all.flatMap(waysToWrite))].sort((a, b) => b.length - a.length)
}

/** Every column of the file in which somebody may have written a name: a table that comes later is not forgotten. */
function writtenColumns(reading: Reading): { readonly table: string; readonly column: string }[] {
  const columns = prepared(
    reading.sqlite,
    `SELECT schema.name AS "table", info.name AS "column"
     FROM sqlite_schema AS schema, pragma_table_info(schema.name) AS info
     WHERE schema.type = 'table' AND schema.name NOT LIKE 'accession_search%' AND info.type = 'TEXT'
       AND info.name NOT IN ('number', 'bare', 'series', 'key', 'input_digest', 'digest', 'kind')
       AND info.name NOT LIKE '%\\_on' ESCAPE '\\' AND info.name NOT LIKE '%\\_at' ESCAPE '\\'
     ORDER BY 1, 2`,
  ).all() as { table: string; column: string }[]
  return columns.filter(({ table, column }) => !LEFT.has(table) && !THEIRS.has(`${table}.${column}`))
}

/** Puts `instead` for a name wherever it is written, capitals or not, as it is and as JSON writes it. */
export function rewriteName(writing: Writing, name: string, instead: string): void {
  if (!name.includes(' ')) {
    rewriteOneWord(writing, name, instead)
    return
  }
  const forms = [...new Set([name, JSON.stringify(name).slice(1, -1)])]
  const sought = anyOf(forms)
  if (sought === null) return
  for (const { table, column } of writtenColumns(writing)) {
    const but = BUT.get(table) ?? ''
    for (const form of forms) {
      const found = prepared(
        writing.sqlite,
        `SELECT DISTINCT "${column}" FROM "${table}" WHERE instr(lower("${column}"), lower(?)) > 0${but}`,
      )
        .pluck()
        .all(form) as string[]
      const put = prepared(
        writing.sqlite,
        `UPDATE "${table}" SET "${column}" = ? WHERE "${column}" = ?${but}`,
      )
      for (const text of found) {
        const without = text.replace(sought, () => instead)
        if (without !== text) put.run(without, text)
      }
    }
  }
}

/** A name of one word may be a variety's too: then only what can speak of nothing but people is rewritten. */
function rewriteOneWord({ sqlite }: Writing, name: string, instead: string): void {
  const written = JSON.stringify(name).slice(1, -1)
  prepared(sqlite, "UPDATE entry SET said = replace(said, ?, ?) WHERE operation LIKE 'person.%'").run(
    name,
    instead,
  )
  prepared(sqlite, "UPDATE entry SET answer = replace(answer, ?, ?) WHERE operation LIKE 'person.%'").run(
    written,
    instead,
  )
  const marks = OF_PEOPLE.map(() => '?').join(', ')
  prepared(sqlite, `UPDATE accession_passport SET value = ? WHERE value = ? AND code IN (${marks})`).run(
    instead,
    name,
    ...OF_PEOPLE,
  )
}
