import type { Sqlite } from '../../migrations/connection.ts'
import {
  accessionsWithLots,
  dirtyAccessions,
  EVERY_ACCESSION,
  forgetTouched,
  watchAccessions,
} from '../../queries/dirty-accessions.ts'
import type { Reading } from './context.ts'

/** So many accessions are computed at once: the rows of a whole large collection would fill the memory. */
const AT_ONCE = 1_000

/** What is kept of one connection: the facts of each accession, and those whose facts no longer hold. */
interface Kept<T> {
  day: string
  readonly facts: Map<number, T>
  stale: Set<number>
}

/** What is kept of each connection that is watched, for all that is kept by accession. */
const watched = new WeakMap<Sqlite, Map<AccessionCache<unknown>, Kept<unknown>>>()

/**
 * Facts of every accession, computed once and then only anew where something was written that touches them.
 *
 * They hold for a day. A connection that only reads is not told what others write, so nothing is kept of it; and
 * nothing is kept of what is being written, which may yet be refused.
 */
export class AccessionCache<T> {
  readonly #compute: (reading: Reading, accessionIds: readonly number[]) => ReadonlyMap<number, T>

  /** Takes what computes the facts of some accessions; it leaves out those that have none. */
  constructor(compute: (reading: Reading, accessionIds: readonly number[]) => ReadonlyMap<number, T>) {
    this.#compute = compute
  }

  /** The facts of every accession that has any, in no order. */
  all(reading: Reading): ReadonlyMap<number, T> {
    const { sqlite } = reading
    if (reading.collection.access === 'read') return this.#compute(reading, accessionsWithLots(sqlite))
    if (sqlite.inTransaction) return this.#amidWriting(reading)
    const kept = this.#upToDate(reading)
    this.#renew(reading, kept, [...kept.stale])
    return kept.facts
  }

  /** Computes the facts of some accessions that no longer hold, and tells how many are left. */
  ahead(reading: Reading, limit: number): number {
    const kept = this.#upToDate(reading)
    this.#renew(reading, kept, [...kept.stale].slice(0, limit))
    return kept.stale.size
  }

  #amidWriting(reading: Reading): ReadonlyMap<number, T> {
    const kept = this.#keptOf(reading.sqlite)
    const anew =
      kept?.day === reading.today ? new Set([...dirtyAccessions(reading.sqlite), ...kept.stale]) : null
    if (kept === undefined || anew === null || anew.has(EVERY_ACCESSION)) {
      return this.#compute(reading, accessionsWithLots(reading.sqlite))
    }
    const facts = new Map(kept.facts)
    replace(facts, anew, this.#compute(reading, [...anew]))
    return facts
  }

  #keptOf(sqlite: Sqlite): Kept<T> | undefined {
    return watched.get(sqlite)?.get(this as AccessionCache<unknown>) as Kept<T> | undefined
  }

  #upToDate(reading: Reading): Kept<T> {
    const { sqlite, today } = reading
    hearWhatWasTouched(sqlite)
    const kept = this.#keptOf(sqlite) ?? { day: '', facts: new Map<number, T>(), stale: new Set<number>() }
    watched.get(sqlite)?.set(this as AccessionCache<unknown>, kept as Kept<unknown>)
    if (kept.day !== today || kept.stale.has(EVERY_ACCESSION)) {
      kept.day = today
      kept.facts.clear()
      kept.stale = new Set(accessionsWithLots(sqlite))
    }
    return kept
  }

  #renew(reading: Reading, kept: Kept<T>, accessionIds: readonly number[]): void {
    for (let from = 0; from < accessionIds.length; from += AT_ONCE) {
      const some = accessionIds.slice(from, from + AT_ONCE)
      replace(kept.facts, some, this.#compute(reading, some))
      for (const id of some) kept.stale.delete(id)
    }
  }
}

function replace<T>(facts: Map<number, T>, ids: Iterable<number>, by: ReadonlyMap<number, T>): void {
  for (const id of ids) {
    const fresh = by.get(id)
    if (fresh === undefined) facts.delete(id)
    else facts.set(id, fresh)
  }
}

/** Tells all that is kept of a connection what was touched since the last time. */
function hearWhatWasTouched(sqlite: Sqlite): void {
  const known = watched.get(sqlite)
  if (known === undefined) {
    watchAccessions(sqlite)
    watched.set(sqlite, new Map())
    return
  }
  const touched = dirtyAccessions(sqlite)
  if (touched.size === 0) return
  forgetTouched(sqlite)
  for (const { stale } of known.values()) for (const id of touched) stale.add(id)
}
