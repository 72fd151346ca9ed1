import { createHash, randomBytes } from 'node:crypto'
import type { Sqlite } from '../../migrations/connection.ts'
import { prepared } from '../../queries/prepared.ts'

/**
 * The hash of each entry covers the hash before it and what the entry recorded, so that a record changed from outside
 * the app is found. A text that may name somebody stands in it as the digest of a random salt and the text: erasing a
 * person takes the salt away with the name, and neither can be guessed from the digest, yet the chain stays whole.
 *
 * Records that are never changed once written. Columns that a later version adds stay out of what earlier hashes cover.
 */
const RECORDS: readonly Covered[] = [
  {
    table: 'movement',
    facts:
      'id, lot_id, kind, on_date, count, mass_mg, measured, weight_ug, person_id, withdrawal_id, reverses_id',
    texts: ['note'],
  },
  {
    table: 'withdrawal',
    facts: 'id, person_id, on_date, purpose, promised_by, grow_out_id',
    texts: ['promised', 'note', 'overridden'],
  },
  { table: 'promise_waiver', facts: 'id, withdrawal_id, on_date', texts: ['reason'] },
  {
    table: 'seed_weight',
    facts:
      'id, lot_id, measured_on, hundred_seed_weight_ug, replicates, seeds_counted, coefficient_of_variation',
    texts: ['note'],
  },
  {
    table: 'germination_result',
    facts: 'id, lot_id, test_id, tested_on, tested, sprouted, hard_alive, fresh_alive',
    texts: ['note'],
  },
  {
    table: 'seed_moisture',
    facts: 'id, lot_id, measured_on, method, percent, low_percent, high_percent',
    texts: ['observed', 'note'],
  },
  { table: 'lot_caution', facts: 'id, lot_id, caution, on_date', texts: ['note'] },
  { table: 'lot_caution_end', facts: 'id, lot_id, caution, on_date', texts: ['reason'] },
  {
    table: 'accession_terms',
    facts: 'id, accession_id, share, publish_story, publish_name, may_be_sold, agreement_ends',
    texts: ['agreement', 'community_label', 'community_link'],
  },
  {
    table: 'accession_policy',
    facts: 'id, accession_id, breeding_status, policy, on_date',
    texts: ['reason'],
  },
  { table: 'return_answer', facts: 'id, lot_id, flowered_near', texts: ['near_note', 'odd'] },
  {
    table: 'return_check',
    facts: 'id, lot_id, dry, clean, true_to_type, compared_with, outcome, on_date',
    texts: ['note'],
  },
  { table: 'recall', facts: 'id, lot_id, on_date', texts: ['reason', 'advice'] },
  { table: 'recall_lot', facts: 'id, recall_id, lot_id, affected', texts: [] },
  {
    table: 'recall_outcome',
    facts: 'id, recall_id, lot_id, person_id, outcome, on_date',
    texts: ['note'],
  },
  {
    table: 'duplicate_terms',
    facts: 'id, lot_id, agreement_ends, next_look',
    texts: ['contact', 'agreement', 'conditions'],
  },
  {
    table: 'institution_request',
    facts: 'id, withdrawal_id, asked_on, sent_on',
    texts: ['intended_use', 'agreement', 'plant_health'],
  },
  { table: 'institution_report', facts: 'id, withdrawal_id, on_date', texts: ['note'] },
]

interface Covered {
  readonly table: string
  /** Columns that name nobody in words. */
  readonly facts: string
  /** Texts of a person. */
  readonly texts: readonly string[]
}

interface EntryFacts {
  readonly id: number
  readonly key: string
  readonly operation: string
  readonly recorded_at: string
  readonly undoes_id: number | null
  readonly person_id: number | null
  readonly station: string
  readonly event_id: number | null
  readonly said: string
  readonly hash: string
}

const ENTRY = 'id, key, operation, recorded_at, undoes_id, person_id, station, event_id, said, hash'

/** What an entry recorded: its rows as its hash covers them, and its texts by part. */
interface Recorded {
  readonly rows: string[]
  readonly texts: Map<string, string>
}

interface SealedText {
  readonly part: string
  readonly salt: string
  readonly digest: string
}

/** Entries that are read at once when all of them are checked. */
const AT_ONCE = 1_000

/** Seals the newest entry, once all of it is written: salts and digests of its texts, and its hash. */
export function sealEntry(sqlite: Sqlite, entryId: number): void {
  const [entry] = entriesFrom(sqlite, entryId, entryId)
  if (entry === undefined) throw new Error(`No entry ${entryId}`)
  const recorded = recordedBy(sqlite, [entry])(entry)
  const add = prepared(sqlite, 'INSERT INTO entry_text (part, entry_id, salt, digest) VALUES (?, ?, ?, ?)')
  const sealed = [...recorded.texts].map(([part, text]) => {
    const salt = randomBytes(16).toString('hex')
    const digest = digestOf(salt, text)
    add.run(part, entryId, salt, digest)
    return { part, salt, digest }
  })
  const before = prepared(sqlite, 'SELECT hash FROM entry WHERE id < ? ORDER BY id DESC LIMIT 1')
    .pluck()
    .get(entryId) as string | undefined
  const hash = hashOf(before ?? '', entry, recorded, sealed)
  prepared(sqlite, 'UPDATE entry SET hash = ? WHERE id = ?').run(hash, entryId)
}

/** The first entry whose record is not as it was written, or null. Entries of versions before the chain are not judged. */
export function firstChangedEntry(sqlite: Sqlite): number | null {
  const kept = prepared(sqlite, 'SELECT part, salt, digest FROM entry_text WHERE entry_id = ?')
  let before = ''
  let entries = entriesFrom(sqlite, 0, Number.MAX_SAFE_INTEGER)
  while (entries.length > 0) {
    const recorded = recordedBy(sqlite, entries)
    for (const entry of entries) {
      if (entry.hash !== '' || before !== '') {
        const { texts, rows } = recorded(entry)
        const sealed = kept.all(entry.id) as SealedText[]
        const isAsSealed =
          sealed.length === texts.size &&
          sealed.every(({ part, salt, digest }) => {
            const text = texts.get(part)
            return text !== undefined && (salt === '' || digest === digestOf(salt, text))
          })
        if (!isAsSealed || hashOf(before, entry, { texts, rows }, sealed) !== entry.hash) return entry.id
      }
      before = entry.hash
    }
    entries = entriesFrom(sqlite, (entries.at(-1)?.id ?? 0) + 1, Number.MAX_SAFE_INTEGER)
  }
  return null
}

/** Takes the salt of a text away when who it named is erased: what it said cannot be told from its digest any more. */
export function forgetSalt(sqlite: Sqlite, part: string): void {
  prepared(sqlite, "UPDATE entry_text SET salt = '' WHERE part = ?").run(part)
}

/** How the chain names a text: its table, its column and its row. */
export function partOf(table: string, column: string, id: unknown): string {
  return `${table}.${column} ${String(id)}`
}

function entriesFrom(sqlite: Sqlite, first: number, last: number): EntryFacts[] {
  const rows = prepared(
    sqlite,
    `SELECT ${ENTRY} FROM entry WHERE id BETWEEN ? AND ? ORDER BY id LIMIT ${AT_ONCE}`,
  )
  return rows.all(first, last) as EntryFacts[]
}

/** What each of some entries that follow one another recorded. */
function recordedBy(sqlite: Sqlite, entries: readonly EntryFacts[]): (entry: EntryFacts) => Recorded {
  const byEntry = new Map<number, Recorded>()
  for (const { id, said } of entries)
    byEntry.set(id, { rows: [], texts: new Map([[partOf('entry', 'said', id), said]]) })
  for (const { table, facts, texts } of RECORDS) {
    const rows = prepared(
      sqlite,
      `SELECT ${['entry_id', ...texts, facts].join(', ')} FROM ${table} WHERE entry_id BETWEEN ? AND ? ORDER BY id`,
    ).raw()
    const read = rows.iterate(entries[0]?.id, entries.at(-1)?.id) as IterableIterator<[number, ...unknown[]]>
    for (const [entryId, ...row] of read) {
      const recorded = byEntry.get(entryId)
      const kept = row.slice(texts.length)
      recorded?.rows.push(JSON.stringify([table, kept]))
      for (const [index, column] of texts.entries())
        if (row[index] !== '') recorded?.texts.set(partOf(table, column, kept[0]), row[index] as string)
    }
  }
  return ({ id }) => byEntry.get(id) ?? { rows: [], texts: new Map() }
}

function hashOf(
  before: string,
  { said, hash, id, ...facts }: EntryFacts,
  { rows }: Recorded,
  sealed: readonly SealedText[],
): string {
  const made = createHash('sha256').update(JSON.stringify([before, Object.values(facts)]))
  for (const row of rows) made.update(row)
  const digests = sealed.map(({ part, digest }) => [part, digest] as const)
  for (const digest of digests.toSorted(([a], [b]) => (a < b ? -1 : 1))) made.update(JSON.stringify(digest))
  return made.digest('hex')
}

function digestOf(salt: string, text: string): string {
  return createHash('sha256').update(salt).update(text).digest('hex')
}
