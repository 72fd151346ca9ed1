import { strFromU8, strToU8, zipSync } from 'fflate'
import papaparse from 'papaparse'
import { type Message, message } from '../messages/message.ts'
import { unpack } from './unpack.ts'

/** A value as a table holds it. */
type Cell = string | number | null

/** One table as it goes out: what its columns are, and its rows. */
export interface PackedTable {
  readonly name: string
  readonly fields: readonly PackedField[]
  readonly primaryKey: readonly string[]
  readonly rows: readonly (readonly Cell[])[]
}

export interface PackedField {
  readonly name: string
  readonly type: 'integer' | 'number' | 'string'
  readonly description: string
  readonly required: boolean
  /** The table whose id it is, or null. */
  readonly names: string | null
}

export interface PackageFacts {
  readonly name: string
  readonly title: string
  readonly description: string
  readonly created: string
}

/** What a package holds once it is read: rows of text by table, null where nothing is. */
export type ReadPackage =
  | { readonly kind: 'package'; readonly tables: ReadonlyMap<string, ReadTable> }
  | { readonly kind: 'refused'; readonly because: Message }

export interface ReadTable {
  readonly fields: readonly string[]
  readonly rows: readonly (readonly (string | null)[])[]
}

const DESCRIPTOR = 'datapackage.json'
const NEW_LINE = '\r\n'

/**
 * Tables as a Data Package (v2): a CSV file for each, exact and unguarded, and datapackage.json that says what they hold.
 *
 * A spreadsheet may take a text in them for a formula: they are for programs.
 */
export function packTables(facts: PackageFacts, tables: readonly PackedTable[]): Uint8Array {
  const files = tables.map((table) => {
    const nothing = signOfNothing(table)
    return { table, nothing, bytes: strToU8(exactCsv(table, nothing)) }
  })
  const descriptor = {
    $schema: 'https://datapackage.org/profiles/2.0/datapackage.json',
    ...facts,
    resources: files.map(({ table, nothing, bytes }) => ({
      name: table.name.replaceAll('_', '-'),
      path: `${table.name}.csv`,
      type: 'table',
      format: 'csv',
      mediatype: 'text/csv',
      encoding: 'utf-8',
      bytes: bytes.length,
      schema: {
        $schema: 'https://datapackage.org/profiles/2.0/tableschema.json',
        fields: table.fields.map(({ name, type, description, required }) => ({
          ...{ name, type },
          ...(description === '' ? {} : { description }),
          ...(required ? { constraints: { required } } : {}),
        })),
        missingValues: [nothing],
        primaryKey: table.primaryKey,
        foreignKeys: table.fields.flatMap(({ name, names }) =>
          names === null
            ? []
            : [
                {
                  fields: [name],
                  reference: {
                    resource: names === table.name ? '' : names.replaceAll('_', '-'),
                    fields: ['id'],
                  },
                },
              ],
        ),
      },
    })),
  }
  const packed = Object.fromEntries(files.map(({ table, bytes }) => [`${table.name}.csv`, bytes]))
  const all = { ...packed, [DESCRIPTOR]: strToU8(JSON.stringify(descriptor, null, 2)) }
  return zipSync(all, { level: 6, mtime: facts.created })
}

function exactCsv({ fields, rows }: PackedTable, nothing: string): string {
  const head = fields.map(({ name }) => name)
  const data = rows.map((row) => row.map((cell) => cell ?? nothing))
  return papaparse.unparse([head, ...data], { quotes: true, newline: NEW_LINE }) + NEW_LINE
}

/** What stands where nothing is: an empty cell is an empty text, and the sign is longer where a text is that very sign. */
function signOfNothing({ rows }: PackedTable): string {
  let sign = '\\N'
  while (rows.some((row) => row.includes(sign))) sign = `\\${sign}`
  return sign
}

/** Reads a Data Package that {@link packTables} made, or that says the same of its tables. */
export function readPackage(bytes: Uint8Array): ReadPackage {
  const unpacked = unpack(bytes, (name) => name === DESCRIPTOR || /^[a-z_]+\.csv$/.test(name))
  if (unpacked.kind === 'refused') return unpacked
  const text = unpacked.files.get(DESCRIPTOR)
  if (text === undefined) return refused(message('package.no-descriptor'))
  try {
    const tables = new Map<string, ReadTable>()
    for (const resource of resourcesOf(JSON.parse(strFromU8(text)))) {
      const table = unpacked.files.get(resource.path)
      if (table === undefined) return refused(message('package.file-missing', { file: resource.path }))
      tables.set(resource.path.slice(0, -'.csv'.length), readTable(strFromU8(table), resource.nothing))
    }
    return { kind: 'package', tables }
  } catch {
    return refused(message('package.damaged'))
  }
}

function resourcesOf(descriptor: unknown): { path: string; nothing: string }[] {
  const { resources } = descriptor as { resources: { path: string; schema: { missingValues?: string[] } }[] }
  return resources.map(({ path, schema }) => ({
    path: String(path),
    nothing: String(schema.missingValues?.[0] ?? ''),
  }))
}

function readTable(text: string, nothing: string): ReadTable {
  const { data, errors } = papaparse.parse<string[]>(text, { newline: NEW_LINE, delimiter: ',' })
  if (errors.length > 0) throw new Error(errors[0]?.message)
  const [fields = [], ...rows] = data.filter((row) => row.length > 1 || row[0] !== '')
  return { fields, rows: rows.map((row) => row.map((cell) => (cell === nothing ? null : cell))) }
}

function refused(because: Message): ReadPackage {
  return { kind: 'refused', because }
}
