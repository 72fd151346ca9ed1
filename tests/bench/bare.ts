import Database from 'better-sqlite3'
import { normalBelow } from '../../db/domain/viability/normal.ts'

const NOON = Date.UTC(2026, 10, 25, 12)

/**
 * The same work by hand on bare better-sqlite3: what somebody would write who needed only this answer.
 *
 * Statements are prepared once, rows are mapped to the same facts; no contract, no wording, no checking.
 */
export class Bare {
  readonly #sqlite: Database.Database
  readonly #page: Database.Statement
  readonly #search: Database.Statement
  readonly #total: Database.Statement
  readonly #found: Database.Statement
  readonly #lives: Database.Statement
  readonly #all: Database.Statement
  readonly #living: Database.Statement
  readonly #taken: Database.Statement

  constructor(file: string, journalMode = 'DELETE', synchronous = 'EXTRA') {
    this.#sqlite = new Database(file)
    for (const pragma of [
      'foreign_keys = ON',
      `synchronous = ${synchronous}`,
      `journal_mode = ${journalMode}`,
      'cache_size = -65536',
      'secure_delete = ON',
    ]) {
      this.#sqlite.pragma(pragma)
    }
    this.#page = this.#sqlite.prepare(`${SELECT} WHERE ${HELD} ORDER BY lot.number LIMIT 100`)
    this.#search = this.#sqlite.prepare(
      `${SELECT} WHERE ${HELD} AND ${MATCHES} ORDER BY lot.number LIMIT 100`,
    )
    this.#total = this.#sqlite.prepare(`SELECT count(*) FROM lot WHERE ${HELD}`)
    this.#found = this.#sqlite.prepare(`SELECT count(*) FROM lot WHERE ${HELD} AND ${MATCHES}`)
    this.#lives = this.#sqlite.prepare(`${SELECT} WHERE lot.accession_id IN (SELECT value FROM json_each(?))`)
    this.#living =
      this.#sqlite.prepare(`SELECT accession_id, sum(balance_count * coalesce(1.0 * sprouted / tested, 0.5))
      FROM lot LEFT JOIN germination_result ON germination_result.id = lot.germination_id GROUP BY accession_id`)
    this.#taken =
      this.#sqlite.prepare(`SELECT accession_id, -sum(count) FROM movement JOIN lot ON lot.id = lot_id
      WHERE kind = 'withdrawal' AND on_date >= '2023-11-25' GROUP BY accession_id`)
    this.#all = this.#sqlite.prepare(`${SELECT} ORDER BY lot.accession_id, lot.ordinal`)
  }

  /** Living seeds and seeds taken of every accession, by two aggregates of SQL. */
  needs(): unknown {
    return [this.#living.all(), this.#taken.all()]
  }

  firstPage(): unknown {
    return { rows: this.#standing(this.#page.all() as Row[]), total: this.#total.pluck().get() }
  }

  /** Rows with how their accessions stand: living seeds over all lots of each against what must be kept. */
  #standing(rows: readonly Row[]): unknown[] {
    const ids = [...new Set(rows.map((row) => row.accession_id))]
    const sums = standings(this.#lives.all(JSON.stringify(ids)) as Row[])
    return rows.map((row) => ({ ...mapped(row), ...sums.get(row.accession_id) }))
  }

  search(words: string): unknown {
    const match = words
      .split(' ')
      .map((word) => `"${word}"*`)
      .join(' ')
    return { rows: this.#standing(this.#search.all(match) as Row[]), total: this.#found.pluck().get(match) }
  }

  /** Living seeds against what must be kept, by accession. */
  flags(): Map<number, Standing> {
    return standings(this.#all.iterate() as IterableIterator<Row>)
  }

  /** Every lot's part alive and day of crossing 85 % by the closed formula, one constant climate, nothing learnt. */
  forecasts(): void {
    const keep = this.#sqlite.prepare(
      "UPDATE lot_forecast SET stale_since = NULL, computed_on = '2026-11-25', viability = @alive, viability_low = @alive, viability_high = @alive, crosses_on = @crosses WHERE lot_id = @id AND basis <> 'refused'",
    )
    const lots = this.#sqlite.prepare(
      'SELECT lot.id, julianday(?) - julianday(received_on) AS days FROM lot JOIN accession ON accession.id = accession_id',
    )
    this.#sqlite.transaction(() => {
      for (const { id, days } of lots.all('2026-11-25') as { id: number; days: number }[]) {
        const sigma = 10 ** (8.498 - 4.836 * Math.log10(8) - 0.0322 * 20 - 0.000454 * 400)
        const alive = normalBelow(1.5 - days / sigma)
        const left = (1.5 - 1.036433) * sigma - days
        const crosses = new Date(NOON + left * 86_400_000).toISOString().slice(0, 10)
        keep.run({ alive: Math.max(0, alive), crosses, id })
      }
    })()
  }

  /** One withdrawal: the visit, its line, the audit row; the balance follows by the file's own trigger. */
  withdraw(lotId: number, key: string): void {
    this.#sqlite.transaction(() => {
      const entry = this.#sqlite
        .prepare(
          "INSERT INTO entry (key, operation, input_digest, answer, said, recorded_at) VALUES (?, 'bare', '', '{}', 'bare', '')",
        )
        .run(key).lastInsertRowid
      const visit = this.#sqlite
        .prepare(
          "INSERT INTO withdrawal (on_date, purpose, promised, note, overridden, entry_id) VALUES ('2026-11-25', 'to-grow', '', '', '', ?)",
        )
        .run(entry).lastInsertRowid
      this.#sqlite
        .prepare(
          `INSERT INTO movement (lot_id, entry_id, kind, on_date, count, mass_mg, measured, withdrawal_id, note)
           VALUES (?, ?, 'withdrawal', '2026-11-25', -1, 0, 'carried', ?, '')`,
        )
        .run(lotId, entry, visit)
    })()
  }

  check(): boolean {
    const sums = this.#sqlite
      .prepare(
        `SELECT count(*) FROM lot JOIN (SELECT lot_id, sum(count) AS count, sum(mass_mg) AS mass FROM movement GROUP BY lot_id) AS s
         ON s.lot_id = lot.id WHERE balance_count <> s.count OR balance_mass_mg <> s.mass`,
      )
      .pluck()
      .get()
    const sound = this.#sqlite.pragma('integrity_check', { simple: true })
    const broken = this.#sqlite.pragma('foreign_key_check') as unknown[]
    return sums === 0 && sound === 'ok' && broken.length === 0
  }

  close(): void {
    this.#sqlite.close()
  }
}

interface Standing {
  living: number
  readonly keep: number
}

function standings(rows: Iterable<Row>): Map<number, Standing> {
  const sums = new Map<number, Standing>()
  for (const row of rows) {
    const sum = sums.get(row.accession_id) ?? { living: 0, keep: Math.ceil((3 * row.plants) / 0.8) }
    if (row.role === 'working' || row.role === 'reserve') sum.living += living(row)
    sums.set(row.accession_id, sum)
  }
  return sums
}

interface Row {
  readonly id: number
  readonly number: string
  readonly accession_id: number
  readonly role: string
  readonly variety: string
  readonly crop: string
  readonly place: string | null
  readonly donor: string | null
  readonly count: number
  readonly mass: number
  readonly tested: number | null
  readonly sprouted: number | null
  readonly minimum: number | null
  readonly plants: number
}

const HELD = 'lot.holds_seed = 1'
const MATCHES = 'lot.accession_id IN (SELECT rowid FROM accession_search WHERE accession_search MATCH ?)'
const SELECT = `
  SELECT lot.id, lot.number, lot.accession_id, lot.role, variety.name AS variety, crop.common_name AS crop,
    storage_place.path AS place, person.name AS donor, balance_count AS count, balance_mass_mg AS mass, tested, sprouted,
    coalesce(crop.federal_minimum_percent, crop.state_minimum_percent, 50) AS minimum,
    coalesce(accession.own_plants, crop.own_plants, crop.plants_to_maintain, 20) AS plants
  FROM lot JOIN accession ON accession.id = lot.accession_id
    JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id
    LEFT JOIN germination_result ON germination_result.id = lot.germination_id
    LEFT JOIN storage_place ON storage_place.id = lot.place_id LEFT JOIN person ON person.id = accession.donor_id`

function living(row: Row): number {
  const alive =
    row.tested === null || row.sprouted === null ? (row.minimum ?? 50) / 100 : row.sprouted / row.tested
  return Math.round(row.count * alive)
}

function mapped(row: Row) {
  return {
    lotId: row.id,
    lotNumber: row.number,
    accessionId: row.accession_id,
    variety: row.variety,
    crop: row.crop,
    place: row.place ?? '',
    donor: row.donor ?? '',
    role: row.role,
    count: row.count,
    massMg: row.mass,
    living: living(row),
  }
}
