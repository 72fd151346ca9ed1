import type { Result } from '../../contract/contract.ts'
import { fold } from '../../domain/shared/fold.ts'
import { inEveryText, type SoughtInTexts } from '../../domain/shared/names-in-text.ts'
import { DESCRIPTORS } from '../../exchange/mcpd-table.ts'
import { type Message, message } from '../../messages/message.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Reading, Writing } from '../book/context.ts'
import { forgetSalt, partOf } from '../book/entry-chain.ts'
import type { WhoIsSought } from './person-names.ts'

/** A column in which somebody may have written, and what its rows are found by. */
interface WrittenColumn {
  readonly table: string
  readonly column: string
  readonly keys: readonly string[]
}

/** A text of one row that speaks of a person, or may. */
interface Found extends WrittenColumn {
  readonly at: readonly unknown[]
  readonly text: string
  /** What speaks of the person for certain where it stands. */
  readonly sought: SoughtInTexts
}

/** The file itself refuses to change these. */
const NEVER_CHANGED = ['number', 'bare', 'series']
/** What other people are called and how they are reached is theirs. */
const THEIRS = new Set([
  ...['name', 'name_folded', 'credit_as', 'town'].map((column) => `person.${column}`),
  ...['email', 'phone', 'address'].map((column) => `person_contact.${column}`),
])
const THEIR_CHANGES = new Set(['name', 'creditAs', 'town', 'email', 'phone', 'address'])
/** How the library itself is called and where its backups lie: the keeper decides. */
const OF_THE_LIBRARY = new Set(['collection'])
/** Names of plants, though some remember a person: the keeper decides. */
const PLANTS = new Set(['variety.name', 'variety_synonym.name', 'crop.common_name'])
const FROM_THE_CROP_TABLE = new Set(
  ['common_name', 'species', 'family', 'reference', 'viability_constants'].map((column) => `crop.${column}`),
)
/** Descriptors whose value is a person or an institution. */
const OF_PEOPLE = new Set(DESCRIPTORS.filter((one) => one.personal_data).map(({ code }) => code))

/** Every column of the file that holds texts, as the file itself describes it: a table that comes later is not forgotten. */
function writtenColumns(reading: Reading): WrittenColumn[] {
  const rows = prepared(
    reading.sqlite,
    `SELECT schema.name AS "table", info.name AS "column",
       (SELECT group_concat(name) FROM pragma_table_info(schema.name) WHERE pk > 0) AS keys
     FROM sqlite_schema AS schema, pragma_table_info(schema.name) AS info
     WHERE schema.type = 'table' AND info.type = 'TEXT' AND schema.name NOT GLOB 'accession_search*' AND schema.name NOT GLOB '__drizzle*'
     ORDER BY 1, 2`,
  ).all() as { table: string; column: string; keys: string | null }[]
  return rows
    .filter(({ table, column }) => !THEIRS.has(`${table}.${column}`) && !column.endsWith('_folded'))
    .filter(({ table, column }) => !(/^(accession|lot)$/.test(table) && NEVER_CHANGED.includes(column)))
    .map(({ table, column, keys }) => ({ table, column, keys: keys?.split(',') ?? ['rowid'] }))
}

/** Every text of a column for which something holds, but those of some people's own records. */
function textsOf(
  reading: Reading,
  who: WhoIsSought,
  { table, column, keys }: WrittenColumn,
  but: readonly number[],
  holds: (text: string, sought: SoughtInTexts) => boolean,
): Found[] {
  const of = { entry: 'operation', accession_passport: 'code', person_change: 'field' }[table] ?? "''"
  const owner = { person: 'id', person_change: 'person_id' }[table] ?? 'NULL'
  const rows = prepared(
    reading.sqlite,
    `SELECT "${column}", ${of}, ${owner}, ${keys.map((key) => `"${key}"`).join(', ')} FROM "${table}"
     WHERE "${column}" <> ''`,
  )
    .raw()
    .iterate() as IterableIterator<[string, string, number | null, ...unknown[]]>
  const found: Found[] = []
  for (const [text, what, ownerId, ...at] of rows) {
    if (ownerId !== null && (but.includes(ownerId) || THEIR_CHANGES.has(what))) continue
    const sought = what.startsWith('person.') || OF_PEOPLE.has(what) ? who.amongPeople : who.certain
    if (holds(text, sought)) found.push({ table, column, keys, at, text, sought })
  }
  return found
}

function isIn(sought: SoughtInTexts, text: string): boolean {
  let found = false
  inEveryText(text, (part) => {
    found ||= sought.isIn(part)
    return part
  })
  return found
}

const isForTheKeeper = ({ table, column }: WrittenColumn) =>
  OF_THE_LIBRARY.has(table) || PLANTS.has(`${table}.${column}`)

/** Puts `instead` for a person in every text that speaks of them for certain, and in those traces that were asked for. */
export function rewriteTexts(
  writing: Writing,
  who: WhoIsSought,
  instead: string,
  asked: ReadonlySet<string>,
): void {
  // A row that is named by a text, and the rows that name it, change one after the other.
  writing.sqlite.pragma('defer_foreign_keys = ON')
  for (const column of writtenColumns(writing).filter((one) => !isForTheKeeper(one))) {
    for (const found of textsOf(writing, who, column, [], (text, sought) => isIn(sought, text)))
      put(writing, found, (text) => found.sought.replaced(text, instead))
  }
  for (const found of tracesIn(writing, who).filter((one) => asked.has(idOf(one))))
    put(writing, found, (text) => who.doubtful.replaced(found.sought.replaced(text, instead), instead))
}

function put({ sqlite }: Writing, found: Found, change: (text: string) => string): void {
  const { table, column, keys, at } = found
  const where = keys.map((key) => `"${key}" = ?`).join(' AND ')
  const text = inEveryText(found.text, change)
  const write = prepared(sqlite, `UPDATE OR IGNORE "${table}" SET "${column}" = ? WHERE ${where}`)
  // Two texts that must differ can become the same without the name that parted them.
  for (let nth = 1; write.run(nth === 1 ? text : `${text} (${nth})`, ...at).changes === 0; nth += 1) {
    if (nth > 1_000) throw new Error(`${table}.${column} refuses its text without a name`)
  }
  forgetSalt(sqlite, partOf(table, column, at.join(' ')))
  if (PLANTS.has(`${table}.${column}`))
    prepared(sqlite, `UPDATE "${table}" SET name_folded = ? WHERE ${where}`).run(fold(text), ...at)
}

/** Texts that may speak of a person although nothing in them does for certain, or where only the keeper may change it. */
function tracesIn(reading: Reading, who: WhoIsSought): Found[] {
  const columns = writtenColumns(reading).filter(
    ({ table, column }) => !FROM_THE_CROP_TABLE.has(`${table}.${column}`),
  )
  return columns.flatMap((column) =>
    textsOf(reading, who, column, who.ids, (text, sought) =>
      isForTheKeeper(column)
        ? isIn(sought, text) || isIn(who.doubtful, text)
        : isIn(who.doubtful, text) &&
          isIn(
            who.doubtful,
            inEveryText(text, (part) => sought.replaced(part, '')),
          ),
    ),
  )
}

/** An entry says one thing in two columns: they are one trace. */
const idOf = ({ table, column, at }: Found) =>
  table === 'entry' ? `entry ${at.join(' ')}` : `${table}.${column} ${at.join(' ')}`

const MOST_SHOWN = 500
const AROUND = 40

/** Texts that may still speak of a person after they were erased, each with where it stands. */
export function tracesOf(reading: Reading, who: WhoIsSought): Result<'person.list-traces'> {
  const traces = [...new Map(tracesIn(reading, who).map((found) => [idOf(found), found])).values()]
  return {
    total: traces.length,
    traces: traces.slice(0, MOST_SHOWN).map((found) => ({
      traceId: idOf(found),
      where: placeInWords(reading, found),
      text: around(found.text, who.doubtful),
    })),
  }
}

/** A text of the book with where it stands. */
export interface TextOfBook {
  readonly text: string
  /** Where it stands and what stands around what is sought. */
  readonly told: (sought: SoughtInTexts) => { where: Message | string; text: string }
}

/** Every text of the columns that are asked for. */
export function textsOfBook(
  reading: Reading,
  isAsked: (table: string, column: string) => boolean,
): TextOfBook[] {
  return writtenColumns(reading)
    .filter(({ table, column }) => isAsked(table, column))
    .flatMap((column) => {
      const keys = column.keys.map((key) => `"${key}"`).join(', ')
      const rows = prepared(
        reading.sqlite,
        `SELECT "${column.column}", ${keys} FROM "${column.table}" WHERE "${column.column}" <> ''`,
      )
        .raw()
        .all() as [string, ...unknown[]][]
      return rows.map(([text, ...at]) => ({
        text,
        told: (sought: SoughtInTexts) => ({
          where: placeInWords(reading, { ...column, at }),
          text: around(text, sought),
        }),
      }))
    })
}

function around(text: string, sought: SoughtInTexts): string {
  const start = Math.max(0, (sought.places(text)[0]?.start ?? 0) - AROUND)
  const part = text.slice(start, start + 3 * AROUND)
  return `${start > 0 ? '…' : ''}${part}${start + part.length < text.length ? '…' : ''}`
}

function placeInWords(
  reading: Reading,
  { table, column, keys, at }: Pick<Found, 'table' | 'column' | 'keys' | 'at'>,
): Message | string {
  if (table === 'entry') return message('people.trace-entry')
  const where = keys.map((key) => `"${key}" = ?`).join(' AND ')
  const row = prepared(reading.sqlite, `SELECT * FROM "${table}" WHERE ${where}`).get(...at) as Record<
    string,
    unknown
  >
  const [of, id] = row['lot_id'] ? ['lot', row['lot_id']] : ['accession', row['accession_id']]
  const number = id && prepared(reading.sqlite, `SELECT number FROM ${of} WHERE id = ?`).pluck().get(id)
  const named = [row['number'] ?? number, column === 'name' ? null : (row['name'] ?? row['common_name'])]
  const parts = [table.replaceAll('_', ' '), ...named.filter((part) => typeof part === 'string')]
  return `${parts.join(' ')}: ${column.replaceAll('_', ' ')}`
}
