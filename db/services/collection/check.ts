import type { Result } from '../../contract/contract.ts'
import { milligrams } from '../../domain/amounts/mass.ts'
import { seedCount } from '../../domain/amounts/seed-count.ts'
import { numbersAgree } from '../../domain/ledger/agreement.ts'
import { bareNumber } from '../../domain/numbers/scan-code.ts'
import { hundredSeedWeight } from '../../domain/weights/hundred-seed-weight.ts'
import { type Message, message } from '../../messages/message.ts'
import { columns, pick, select } from '../../queries/columns.ts'
import { COUNTS_IN_FORCE } from '../../queries/germination-tests.ts'
import { prepared } from '../../queries/prepared.ts'
import { movement } from '../../schema/stock-tables.ts'
import type { Reading } from '../book/context.ts'
import { firstChangedEntry } from '../book/entry-chain.ts'

type Finding = Result<'collection.check'>['findings'][number]

/** Each finding's kind is cut off here, so that a spoilt file still gives an answer that can be read. */
const MOST_FINDINGS = 20

/** A question that finds the rows which are wrong, as messages: twenty at most. */
function question<Row>(check: string, sql: string, sentence: (row: Row) => Message) {
  return ({ sqlite }: Reading): Finding[] => {
    const rows = prepared(sqlite, `${sql} LIMIT ${MOST_FINDINGS}`).all() as Row[]
    return rows.map((row) => ({ check, sentence: sentence(row) }))
  }
}

/** What must not be found in any book. */
const CHECKS: readonly ((reading: Reading) => Finding[])[] = [
  integrity,
  foreignKeys,
  question(
    'balances',
    `SELECT lot.number, balance_count AS kept, coalesce(summed.count, 0) AS summed,
       balance_mass_mg AS kept_mg, coalesce(summed.mass, 0) AS summed_mg
     FROM lot LEFT JOIN (SELECT lot_id, sum(count) AS count, sum(mass_mg) AS mass FROM movement GROUP BY lot_id) AS summed
       ON summed.lot_id = lot.id
     WHERE balance_count <> coalesce(summed.count, 0) OR balance_mass_mg <> coalesce(summed.mass, 0)`,
    (row: { number: string; kept: number; summed: number; kept_mg: number; summed_mg: number }) =>
      message('check.balance', {
        lot: row.number,
        kept: { seeds: row.kept },
        mass: row.kept_mg,
        summed: row.summed,
        summedMass: row.summed_mg,
      }),
  ),
  agreement,
  changedFromOutside,
  // Splits and joins move seed and make none: their entries sum to nothing.
  question(
    'conservation',
    `SELECT entry_id, sum(count) AS count, sum(mass_mg) AS mass FROM movement WHERE kind IN ('split', 'merge')
     GROUP BY entry_id HAVING sum(count) <> 0 OR sum(mass_mg) <> 0`,
    (row: { entry_id: number; count: number; mass: number }) =>
      message('check.conservation', { entry: row.entry_id, made: { seeds: row.count }, mass: row.mass }),
  ),
  question(
    'reversals',
    `SELECT movement.id FROM movement JOIN movement AS first ON first.id = movement.reverses_id
     WHERE movement.count <> -first.count OR movement.mass_mg <> -first.mass_mg OR movement.lot_id <> first.lot_id`,
    (row: { id: number }) => message('check.reversal', { movement: row.id }),
  ),
  question(
    'numbers',
    `SELECT number_series.series, count(accession.id) AS counted, next FROM number_series
     LEFT JOIN accession ON accession.series = number_series.series
     GROUP BY number_series.series
     HAVING count(accession.id) <> next - 1 OR coalesce(max(running), 0) <> next - 1 OR coalesce(min(running), 1) <> 1`,
    (row: { series: string; counted: number; next: number }) =>
      message('check.numbers', { series: row.series, accessions: row.counted, next: row.next }),
  ),
  question(
    'numbers',
    `SELECT accession.number FROM lot JOIN accession ON accession.id = accession_id
     GROUP BY accession_id HAVING count(*) <> max(ordinal)`,
    (row: { number: string }) => message('check.letters', { accession: row.number }),
  ),
  bareForms,
  // The weight and the germination result in force are the lot's own.
  question(
    'in-force',
    `SELECT lot.number FROM lot
     LEFT JOIN seed_weight ON seed_weight.id = weight_id LEFT JOIN germination_result ON germination_result.id = germination_id
     WHERE seed_weight.lot_id <> lot.id OR germination_result.lot_id <> lot.id`,
    (row: { number: string }) => message('check.in-force', { lot: row.number }),
  ),
  // A result is of as many seeds as its test laid out, and no replicate has more counted than it holds.
  question(
    'germination',
    `SELECT lot.number, tested, sum(sown) AS sown FROM germination_result
     JOIN germination_replicate ON germination_replicate.test_id = germination_result.test_id
     JOIN lot ON lot.id = germination_result.lot_id
     GROUP BY germination_result.id HAVING tested <> sum(sown)`,
    (row: { number: string; tested: number; sown: number }) =>
      message('check.result', { lot: row.number, tested: { seeds: row.tested }, sown: row.sown }),
  ),
  question(
    'germination',
    `SELECT test_id, ordinal, sown, counted FROM germination_replicate JOIN (
       SELECT test_id AS of_test, ordinal AS of_ordinal, sum(normal + abnormal + hard + fresh + dead) AS counted
       FROM (${COUNTS_IN_FORCE}) GROUP BY 1, 2)
     ON of_test = test_id AND of_ordinal = ordinal WHERE counted > sown`,
    (row: { test_id: number; ordinal: number; counted: number; sown: number }) =>
      message('check.replicate', {
        replicate: row.ordinal,
        test: row.test_id,
        counted: { seeds: row.counted },
        sown: row.sown,
      }),
  ),
  // A joined record leads to one that stands for itself, so that every name is found in one step.
  question(
    'people',
    `SELECT person.name, kept.name AS kept FROM person JOIN person AS kept ON kept.id = person.merged_into_id
     WHERE kept.merged_into_id IS NOT NULL`,
    (row: { name: string; kept: string }) => message('check.person', { person: row.name, kept: row.kept }),
  ),
]

/** Checks that every number of the book is what it must be. Reads everything, changes nothing. */
export function checkCollection(reading: Reading): Result<'collection.check'> {
  const findings = CHECKS.flatMap((find) => find(reading))
  const count = (table: string) =>
    Number(prepared(reading.sqlite, `SELECT count(*) FROM ${table}`).pluck().get())
  const checked = { lots: count('lot'), movements: count('movement'), accessions: count('accession') }
  return { clean: findings.length === 0, findings, checked }
}

function integrity({ sqlite }: Reading): Finding[] {
  const rows = sqlite.pragma('integrity_check') as { integrity_check: string }[]
  return rows
    .filter((row) => row.integrity_check !== 'ok')
    .map((row) => ({ check: 'integrity', sentence: message('check.damaged', { what: row.integrity_check }) }))
}

function changedFromOutside({ sqlite }: Reading): Finding[] {
  const entry = firstChangedEntry(sqlite)
  return entry === null ? [] : [{ check: 'chain', sentence: message('check.changed-outside', { entry }) }]
}

function foreignKeys({ sqlite }: Reading): Finding[] {
  const rows = sqlite.pragma('foreign_key_check') as { table: string; rowid: number; parent: string }[]
  return rows.slice(0, MOST_FINDINGS).map((row) => ({
    check: 'references',
    sentence: message('check.reference', { row: row.rowid, table: row.table, parent: row.parent }),
  }))
}

const BOOKED = columns(pick(movement, 'id', 'lotId', 'kind', 'count', 'massMg', 'measured', 'weightUg'))

/** Replays the ledger lot by lot: no balance below zero on the way, and each pair agrees with its weight. */
function agreement(reading: Reading): Finding[] {
  const findings: Finding[] = []
  let lotId = 0
  let count = 0
  let mass = 0
  const rows = select(
    reading.sqlite,
    BOOKED,
    (list) => `SELECT ${list} FROM movement ORDER BY lot_id, id`,
  ).iterate()
  for (const row of rows) {
    if (row.lotId !== lotId) {
      lotId = row.lotId
      count = 0
      mass = 0
    }
    const before = { count: seedCount(count), mass: milligrams(mass) }
    count += row.count
    mass += row.massMg
    if (count < 0 || mass < 0) {
      findings.push({
        check: 'below-zero',
        sentence: message('check.below-zero', { movement: row.id, lot: row.lotId }),
      })
      break
    }
    const weight = row.weightUg === null ? null : hundredSeedWeight(row.weightUg)
    const booked = { kind: row.kind, measured: row.measured, count: row.count, mass: row.massMg, weight }
    if (!numbersAgree(booked, before)) {
      findings.push({
        check: 'agreement',
        sentence: message('check.agreement', {
          movement: row.id,
          count: { seeds: row.count },
          mass: row.massMg,
        }),
      })
    }
    if (findings.length >= MOST_FINDINGS) break
  }
  return findings
}

function bareForms(reading: Reading): Finding[] {
  const rows = prepared(
    reading.sqlite,
    'SELECT number, bare FROM accession UNION ALL SELECT number, bare FROM lot',
  ).iterate() as IterableIterator<{ number: string; bare: string }>
  const findings: Finding[] = []
  for (const { number, bare } of rows) {
    if (bareNumber(number) !== bare && findings.length < MOST_FINDINGS) {
      findings.push({
        check: 'numbers',
        sentence: message('check.bare', { number, bare }),
      })
    }
  }
  return findings
}
