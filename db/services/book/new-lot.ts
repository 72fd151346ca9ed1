import { refuse } from '../../contract/refusal.ts'
import { type HarvestYear, readHarvestYear } from '../../domain/dates/harvest-year.ts'
import { isoDate, yearOf } from '../../domain/dates/iso-date.ts'
import { lotLetter } from '../../domain/numbers/lot-letter.ts'
import { type NumberPattern, numberSeries, printNumber } from '../../domain/numbers/pattern.ts'
import { bareNumber } from '../../domain/numbers/scan-code.ts'
import type { LotRelation } from '../../domain/shared/closed-sets.ts'
import { message } from '../../messages/message.ts'
import { type LotRow, lotRow } from '../../queries/lot-rows.ts'
import { prepared } from '../../queries/prepared.ts'
import { insertRow, rowWith } from '../../queries/rows.ts'
import { accession, lot, lotParent } from '../../schema/stock-tables.ts'
import type { Writing } from './context.ts'
import { notePlace } from './places.ts'

type LotInsert = typeof lot.$inferInsert

/** What a new lot is made of; the rest is derived. */
export type NewLot = Pick<LotInsert, 'accessionId' | 'role' | 'basis'> &
  Partial<
    Omit<LotInsert, 'id' | 'number' | 'bare' | 'ordinal' | 'balanceCount' | 'balanceMassMg' | 'entryId'>
  >

/** The lot that an operation names, or a refusal. */
export function lotOrRefuse(reading: Pick<Writing, 'sqlite'>, lotId: number, field: string): LotRow {
  return lotRow(reading.sqlite, lotId) ?? refuse('not-found', message('book.no-lot'), { field })
}

/** An accession's number, as it is printed, as it is looked for, and as it was counted. */
export interface AccessionNumber {
  readonly number: string
  readonly bare: string
  readonly series: string
  readonly running: number
}

/**
 * Takes the next accession numbers of the collection's pattern, for gifts received on some dates in this order.
 *
 * Refuses where a number is taken already.
 */
export function nextAccessionNumbers(
  { sqlite }: Pick<Writing, 'sqlite'>,
  receivedOn: readonly string[],
): AccessionNumber[] {
  const pattern = prepared(sqlite, 'SELECT accession_pattern FROM collection').pluck().get() as NumberPattern
  const nextOf = prepared(sqlite, 'SELECT next FROM number_series WHERE series = ?').pluck()
  const isTaken = prepared(sqlite, 'SELECT 1 FROM accession WHERE bare = ?')
  const next = new Map<string, number>()
  const numbers = receivedOn.map((day) => {
    const year = yearOf(isoDate(day))
    const series = numberSeries(pattern, year)
    const running = next.get(series) ?? (nextOf.get(series) as number | undefined) ?? 1
    next.set(series, running + 1)
    const number = printNumber(pattern, year, running)
    const bare = bareNumber(number)
    if (isTaken.get(bare) !== undefined) refuseTakenNumber(number)
    return { number, bare, series, running }
  })
  const keep = prepared(
    sqlite,
    'INSERT INTO number_series (series, next) VALUES (?, ?) ON CONFLICT (series) DO UPDATE SET next = excluded.next',
  )
  for (const [series, running] of next) keep.run(series, running)
  return numbers
}

function refuseTakenNumber(number: string): never {
  refuse('number-taken', message('book.number-taken', { number }), {
    todo: message('book.number-taken-todo'),
  })
}

/** Adds a lot with the next letter of its accession, in its place from `since` on. */
export function addLot(writing: Writing, facts: NewLot, since: string): { id: number; number: string } {
  const { sqlite } = writing
  const of = rowWith(sqlite, accession, { id: facts.accessionId })
  if (!of) throw new Error(`No accession ${facts.accessionId}`)
  const last = prepared(sqlite, 'SELECT max(ordinal) FROM lot WHERE accession_id = ?').pluck()
  const ordinal = ((last.get(facts.accessionId) as number | null) ?? 0) + 1
  const number = `${of.number}-${lotLetter(ordinal)}`
  const id = insertRow(sqlite, lot, {
    harvestAbout: false,
    generation: 0,
    grownAt: '',
    heldBy: '',
    estimated: false,
    ...facts,
    ordinal,
    number,
    bare: bareNumber(number),
    balanceCount: 0,
    balanceMassMg: 0,
    entryId: writing.entryId,
  })
  if (facts.placeId !== undefined && facts.placeId !== null) notePlace(writing, id, facts.placeId, since)
  return { id, number }
}

/** Notes which lot another came from. */
export function noteParent(
  writing: Writing,
  lotId: number,
  parentLotId: number,
  relation: LotRelation,
): void {
  insertRow(writing.sqlite, lotParent, { lotId, parentLotId, relation }, 'there')
}

/** A typed harvest year as a lot keeps it, or a refusal. */
export function harvestColumns(typed: string, today: string, field: string) {
  const reading = readHarvestYear(typed, yearOf(isoDate(today)))
  if (reading.kind === 'unreadable') return refuse('harvest-unreadable', reading.because, { field })
  return columnsOf(reading.harvest)
}

function columnsOf(harvest: HarvestYear) {
  switch (harvest.kind) {
    case 'unknown':
      return { harvestFrom: null, harvestTo: null, harvestAbout: false }
    case 'year':
      return { harvestFrom: harvest.year, harvestTo: harvest.year, harvestAbout: harvest.about }
    case 'span':
      return { harvestFrom: harvest.from, harvestTo: harvest.to, harvestAbout: false }
  }
}

/** The harvest year that a lot's columns mean. */
export function harvestOf(row: Pick<LotRow, 'harvestFrom' | 'harvestTo' | 'harvestAbout'>): HarvestYear {
  if (row.harvestFrom === null || row.harvestTo === null) return { kind: 'unknown' }
  return row.harvestFrom === row.harvestTo
    ? { kind: 'year', year: row.harvestFrom, about: row.harvestAbout === 1 }
    : { kind: 'span', from: row.harvestFrom, to: row.harvestTo }
}
