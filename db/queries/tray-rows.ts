import { alias } from 'drizzle-orm/sqlite-core'
import type { Keeping } from '../domain/letters/keeping.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { entry } from '../schema/collection-tables.ts'
import { printBatch, printItem } from '../schema/print-tables.ts'
import { crop, person, personContact, variety } from '../schema/reference-tables.ts'
import { accession, lot, movement, withdrawal } from '../schema/stock-tables.ts'
import { columns, expression, orNull, pick, type RowOf, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

const WAITS = `${notUndone('print_item')}
  AND NOT EXISTS (SELECT 1 FROM entry AS taken_out WHERE taken_out.id = print_item.removed_entry_id
    AND NOT EXISTS (SELECT 1 FROM entry WHERE entry.undoes_id = taken_out.id))
  AND NOT EXISTS (SELECT 1 FROM print_batch WHERE print_batch.id = print_item.batch_id AND ${notUndone('print_batch')})`

const added = alias(entry, 'added')
const donor = alias(person, 'donor')
const DONOR = { id: donor.id, name: donor.name }

const ITEM = columns({
  ...pick(printItem, 'id', 'kind', 'lotId', 'accessionId', 'withdrawalId', 'copies', 'contents', 'batchId'),
  because: added.said,
  /** Whether it is to be printed: neither taken out nor printed, and its entry stands. */
  waits: expression<0 | 1>(`(${WAITS})`),
  /** Whether the entry that put it here was taken back. */
  fell: expression<0 | 1>(`NOT (${notUndone('print_item')})`),
  lotNumber: orNull(lot.number),
  lotVariety: orNull(variety.name),
  lotCrop: orNull(crop.commonName),
  /** Of the letter's gift: its donor where known, and whether they agreed to be written to. */
  donorId: orNull(donor.id),
  donor: orNull(donor.name),
  mayWrite: orNull(personContact.mayWrite),
  member: expression<string>("coalesce(member.name, '')"),
  visitOn: orNull(withdrawal.onDate),
})

/** An item of the print tray with what a list says of it. */
export type TrayRow = RowOf<typeof ITEM>

const ITEMS = `
  FROM print_item JOIN entry AS added ON added.id = print_item.entry_id
  LEFT JOIN lot ON lot.id = print_item.lot_id
  LEFT JOIN accession AS lot_of ON lot_of.id = lot.accession_id
  LEFT JOIN variety ON variety.id = lot_of.variety_id LEFT JOIN crop ON crop.id = variety.crop_id
  LEFT JOIN accession ON accession.id = print_item.accession_id
  ${joinCanonicalPerson('donor', 'accession.donor_id')}
  LEFT JOIN person_contact ON person_contact.person_id = donor.id
  LEFT JOIN withdrawal ON withdrawal.id = print_item.withdrawal_id
  ${joinCanonicalPerson('member', 'withdrawal.person_id')}`

/** Everything that waits to be printed; labels in order of lot, the rest in the order in which it came. */
export function waitingItems(sqlite: Sqlite): TrayRow[] {
  return select(
    sqlite,
    ITEM,
    (list) => `SELECT ${list} ${ITEMS} WHERE print_item.batch_id IS NULL OR NOT EXISTS
       (SELECT 1 FROM print_batch WHERE print_batch.id = print_item.batch_id AND ${notUndone('print_batch')})
     ORDER BY print_item.lot_id, print_item.id`,
  )
    .all()
    .filter(({ waits }) => waits === 1)
}

/** Items by their ids, in the order of the ids; those that are not there are left out. */
export function itemsByIds(sqlite: Sqlite, ids: readonly number[]): TrayRow[] {
  return select(
    sqlite,
    ITEM,
    (list) =>
      `SELECT found.* FROM json_each(?) AS wanted JOIN (SELECT ${list} ${ITEMS}) AS found ON found.id = wanted.value ORDER BY wanted.key`,
  ).all(JSON.stringify(ids))
}

/** Items of a printing, in the order in which they came. */
export function itemsOfBatch(sqlite: Sqlite, batchId: number): TrayRow[] {
  return select(
    sqlite,
    ITEM,
    (list) => `SELECT ${list} ${ITEMS} WHERE print_item.batch_id = ? ORDER BY print_item.id`,
  ).all(batchId)
}

const BATCH = columns({
  ...pick(printBatch, 'id', 'kind', 'sheet', 'startAt', 'printedAt'),
  /** How many labels it printed. */
  labels: expression<number>(
    '(SELECT coalesce(sum(copies), 0) FROM print_item WHERE batch_id = print_batch.id)',
  ),
})

export type BatchRow = RowOf<typeof BATCH>

/** Batches that were not taken back and for which something holds, latest first. */
const batchesThat = (sqlite: Sqlite, holds: string, ...bound: number[]): BatchRow[] =>
  select(
    sqlite,
    BATCH,
    (list) => `SELECT ${list} FROM print_batch WHERE ${notUndone('print_batch')} AND ${holds}`,
  ).all(...bound)

/** What was printed and not taken back, latest first. */
export function batchesBefore(sqlite: Sqlite, before: number, limit: number): BatchRow[] {
  return batchesThat(sqlite, 'print_batch.id < ? ORDER BY print_batch.id DESC LIMIT ?', before, limit)
}

const latestOnEach = (column: string, said: string) => `print_batch.id IN
  (SELECT max(print_batch.id) FROM print_batch WHERE ${said} IS NOT NULL AND ${notUndone('print_batch')} GROUP BY ${column})
  ORDER BY print_batch.id DESC`

/** The latest standing printing on each label sheet, latest first. */
export function latestOnEachSheet(sqlite: Sqlite): BatchRow[] {
  return batchesThat(sqlite, latestOnEach('sheet', 'sheet'))
}

const OFFSET = columns({
  printer: printBatch.printer,
  rightMm: expression<number>('right_mm'),
  downMm: expression<number>('down_mm'),
})

/** How far the print of each printer that was named was moved last, latest first; millimetres. */
export function latestOnEachPrinter(sqlite: Sqlite) {
  return select(
    sqlite,
    OFFSET,
    (list) => `SELECT ${list} FROM print_batch WHERE ${latestOnEach('printer', 'right_mm')}`,
  ).all()
}

const NOT_WRITTEN_TO = columns({
  ...DONOR,
  receivedOn: expression<string>('max(accession.received_on)'),
})

/** Donors of gifts since a day who did not agree to be written to. */
export function donorsNotWrittenTo(sqlite: Sqlite, since: string) {
  return select(
    sqlite,
    NOT_WRITTEN_TO,
    (list) => `SELECT ${list} FROM accession ${joinCanonicalPerson('donor', 'accession.donor_id')}
     LEFT JOIN person_contact ON person_contact.person_id = donor.id
     WHERE donor.id IS NOT NULL AND accession.received_on >= ? AND coalesce(may_write, 0) = 0 AND ${notUndone('accession')}
     GROUP BY donor.id ORDER BY 3 DESC, donor.id DESC LIMIT 50`,
  ).all(since)
}

const LETTER_GIFT = columns({
  accessionId: accession.id,
  ...pick(accession, 'number', 'receivedOn', 'grownAt', 'donorWords', 'terms'),
  ...SEED_NAMES,
  countedUnit: crop.countedUnit,
  /** Whether any of it may be handed out; if not, whether it is in quarantine. */
  keeping: expression<Keeping>(`CASE
    WHEN EXISTS (SELECT 1 FROM lot AS part WHERE part.accession_id = accession.id AND part.role = 'working'
      AND part.quarantine_reason IS NULL) THEN 'shared'
    WHEN EXISTS (SELECT 1 FROM lot AS part WHERE part.accession_id = accession.id
      AND part.quarantine_reason IS NOT NULL) THEN 'apart' ELSE 'kept' END`),
  ...pick(lot, 'harvestFrom', 'harvestTo', 'harvestAbout'),
  ...pick(movement, 'count', 'massMg', 'measured'),
})

/** A gift as a letter tells of it; balances are those of the day on which it came. */
export type LetterGiftRow = RowOf<typeof LETTER_GIFT>

/** What one letter tells of: whatever its donor gave on that day in that entry, which for a list is one row among many. */
const SAME_LETTER =
  'gift.donor_id = asked.donor_id AND gift.entry_id = asked.entry_id AND gift.received_on = asked.received_on'

/** The standing gifts that letters for some accessions tell of, in order. */
export function giftsOfLetters(sqlite: Sqlite, accessionIds: readonly number[]): LetterGiftRow[] {
  return select(
    sqlite,
    LETTER_GIFT,
    (list) => `SELECT ${list}
     FROM accession
     JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id
     JOIN lot ON lot.accession_id = accession.id AND lot.ordinal = 1
     JOIN movement ON movement.lot_id = lot.id AND movement.kind = 'intake'
     WHERE ${notUndone('accession')} AND accession.id IN
       (SELECT gift.id FROM json_each(?) AS wanted JOIN accession AS asked ON asked.id = wanted.value
        JOIN accession AS gift ON ${SAME_LETTER})
     ORDER BY accession.id`,
  ).all(JSON.stringify(accessionIds))
}

const TO_THANK = columns({ accessionId: accession.id, donorId: personContact.personId })

/** The latest gift of a donor who may be written to, or undefined. */
export function latestGiftToThank(sqlite: Sqlite) {
  return select(
    sqlite,
    TO_THANK,
    (list) => `SELECT ${list} FROM accession ${joinCanonicalPerson('donor', 'accession.donor_id')}
     JOIN person_contact ON person_contact.person_id = donor.id
     WHERE may_write = 1 AND ${notUndone('accession')} ORDER BY accession.id DESC LIMIT 1`,
  ).get()
}

const UNTHANKED = columns({
  accessionId: expression<number>('min(asked.id)'),
  donorId: donor.id,
  mayWrite: expression<0 | 1>('coalesce(person_contact.may_write, 0)'),
})

/** A gift whose letter is neither printed nor waiting; those that one letter tells of are one row. */
export type UnthankedRow = RowOf<typeof UNTHANKED>

/** The standing gifts of named donors in a time, first and last day included, for which no letter was printed or waits. */
export function giftsNotThanked(sqlite: Sqlite, from: string, until: string): UnthankedRow[] {
  return select(
    sqlite,
    UNTHANKED,
    (list) => `SELECT ${list} FROM accession AS asked ${joinCanonicalPerson('donor', 'asked.donor_id')}
     LEFT JOIN person_contact ON person_contact.person_id = donor.id
     WHERE donor.id IS NOT NULL AND asked.received_on BETWEEN ? AND ? AND ${notUndone('asked')}
       AND NOT EXISTS (SELECT 1 FROM accession AS gift JOIN print_item ON print_item.accession_id = gift.id
         WHERE ${SAME_LETTER} AND kind = 'letter' AND (${WAITS} OR EXISTS
           (SELECT 1 FROM print_batch WHERE print_batch.id = print_item.batch_id AND ${notUndone('print_batch')})))
     GROUP BY asked.donor_id, asked.entry_id, asked.received_on ORDER BY 1`,
  ).all(from, until)
}

/** The moment of the latest standing printing of letters, or null. */
export function lettersPrintedAt(sqlite: Sqlite): string | null {
  const latest = selectValue(
    sqlite,
    expression<string | null>('max(printed_at)'),
    (moment) => `SELECT ${moment} FROM print_batch WHERE kind = 'letter' AND ${notUndone('print_batch')}`,
  )
  return latest.get() ?? null
}

const SLIP_LINE = columns({
  lotId: lot.id,
  number: lot.number,
  ...SEED_NAMES,
  countedUnit: crop.countedUnit,
  count: expression<number>('-movement.count'),
  massMg: expression<number>('-movement.mass_mg'),
  measured: movement.measured,
})

/** What went out on a visit, line by line; what was taken back since is left out. */
export function slipLines(sqlite: Sqlite, withdrawalId: number) {
  return select(
    sqlite,
    SLIP_LINE,
    (list) => `SELECT ${list} FROM movement JOIN lot ON lot.id = movement.lot_id ${JOIN_SEED}
     WHERE movement.withdrawal_id = ? AND movement.kind = 'withdrawal'
       AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)
     ORDER BY movement.id`,
  ).all(withdrawalId)
}
