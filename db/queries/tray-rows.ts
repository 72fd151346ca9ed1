import type { CountedUnitName } from '../domain/crops/counted-unit.ts'
import type { Keeping } from '../domain/letters/keeping.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

/** An item of the print tray with what a list says of it. Snake case as in the file. */
export interface TrayRow {
  readonly id: number
  readonly kind: 'label' | 'letter' | 'slip'
  readonly lot_id: number | null
  readonly accession_id: number | null
  readonly withdrawal_id: number | null
  readonly copies: number
  readonly contents: string
  readonly because: string
  readonly batch_id: number | null
  /** Whether it is to be printed: neither taken out nor printed, and its entry stands. */
  readonly waits: number
  /** Whether the entry that put it here was taken back. */
  readonly fell: number
  readonly lot_number: string | null
  readonly lot_variety: string | null
  readonly lot_crop: string | null
  /** Of the letter's gift: its donor where known, and whether they agreed to be written to. */
  readonly donor_id: number | null
  readonly donor: string | null
  readonly may_write: number | null
  readonly member: string | null
  readonly visit_on: string | null
}

const WAITS = `${notUndone('print_item')}
  AND NOT EXISTS (SELECT 1 FROM entry AS taken_out WHERE taken_out.id = print_item.removed_entry_id
    AND NOT EXISTS (SELECT 1 FROM entry WHERE entry.takes_back_id = taken_out.id))
  AND NOT EXISTS (SELECT 1 FROM print_batch WHERE print_batch.id = print_item.batch_id AND ${notUndone('print_batch')})`

const ROWS = `
  SELECT print_item.id, print_item.kind, print_item.lot_id, print_item.accession_id, print_item.withdrawal_id,
    copies, contents, added.said AS because, batch_id, (${WAITS}) AS waits, NOT (${notUndone('print_item')}) AS fell,
    lot.number AS lot_number, variety.name AS lot_variety, crop.common_name AS lot_crop,
    donor.id AS donor_id, donor.name AS donor, person_contact.may_write,
    coalesce(member.name, '') AS member, withdrawal.on_date AS visit_on
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
  return prepared(
    sqlite,
    `${ROWS} WHERE print_item.batch_id IS NULL OR NOT EXISTS
       (SELECT 1 FROM print_batch WHERE print_batch.id = print_item.batch_id AND ${notUndone('print_batch')})
     ORDER BY print_item.lot_id, print_item.id`,
  )
    .all()
    .filter((row) => (row as TrayRow).waits === 1) as TrayRow[]
}

/** Items by their ids, in the order of the ids; those that are not there are left out. */
export function itemsByIds(sqlite: Sqlite, ids: readonly number[]): TrayRow[] {
  return prepared(
    sqlite,
    `SELECT found.* FROM json_each(?) AS wanted JOIN (${ROWS}) AS found ON found.id = wanted.value ORDER BY wanted.key`,
  ).all(JSON.stringify(ids)) as TrayRow[]
}

/** Items of a printing, in the order in which they came. */
export function itemsOfBatch(sqlite: Sqlite, batchId: number): TrayRow[] {
  return prepared(sqlite, `${ROWS} WHERE print_item.batch_id = ? ORDER BY print_item.id`).all(
    batchId,
  ) as TrayRow[]
}

export interface BatchRow {
  readonly id: number
  readonly kind: 'label' | 'letter' | 'slip'
  readonly sheet: string | null
  readonly start_at: number | null
  readonly printed_at: string
  /** How many labels it printed. */
  readonly labels: number
}

const BATCHES = `SELECT print_batch.id, kind, sheet, start_at, printed_at,
    (SELECT coalesce(sum(copies), 0) FROM print_item WHERE batch_id = print_batch.id) AS labels
  FROM print_batch WHERE ${notUndone('print_batch')}`

/** What was printed and not taken back, latest first. */
export function batchesBefore(sqlite: Sqlite, before: number, limit: number): BatchRow[] {
  return prepared(sqlite, `${BATCHES} AND print_batch.id < ? ORDER BY print_batch.id DESC LIMIT ?`).all(
    before,
    limit,
  ) as BatchRow[]
}

/** The latest standing printing on each label sheet, latest first. */
export function latestOnEachSheet(sqlite: Sqlite): BatchRow[] {
  return prepared(
    sqlite,
    `${BATCHES} AND print_batch.id IN
       (SELECT max(print_batch.id) FROM print_batch WHERE sheet IS NOT NULL AND ${notUndone('print_batch')} GROUP BY sheet)
     ORDER BY print_batch.id DESC`,
  ).all() as BatchRow[]
}

/** How far the print of each printer that was named was moved last, latest first. */
export function latestOnEachPrinter(
  sqlite: Sqlite,
): { readonly printer: string; readonly right_mm: number; readonly down_mm: number }[] {
  return prepared(
    sqlite,
    `SELECT printer, right_mm, down_mm FROM print_batch WHERE id IN
       (SELECT max(print_batch.id) FROM print_batch WHERE right_mm IS NOT NULL AND ${notUndone('print_batch')} GROUP BY printer)
     ORDER BY id DESC`,
  ).all() as { printer: string; right_mm: number; down_mm: number }[]
}

/** Donors of gifts since a day who did not agree to be written to. */
export function donorsNotWrittenTo(
  sqlite: Sqlite,
  since: string,
): { readonly id: number; readonly name: string; readonly received_on: string }[] {
  return prepared(
    sqlite,
    `SELECT donor.id, donor.name, max(accession.received_on) AS received_on
     FROM accession ${joinCanonicalPerson('donor', 'accession.donor_id')}
     LEFT JOIN person_contact ON person_contact.person_id = donor.id
     WHERE donor.id IS NOT NULL AND accession.received_on >= ? AND coalesce(may_write, 0) = 0 AND ${notUndone('accession')}
     GROUP BY donor.id ORDER BY received_on DESC, donor.id DESC LIMIT 50`,
  ).all(since) as { id: number; name: string; received_on: string }[]
}

/** A gift as a letter tells of it; balances are those of the day on which it came. */
export interface LetterGiftRow {
  readonly accession_id: number
  readonly number: string
  readonly variety: string
  readonly crop: string
  readonly counted_unit: CountedUnitName
  readonly received_on: string
  readonly grown_at: string
  readonly donor_words: string
  /** Whether any of it may be handed out; if not, whether it is in quarantine. */
  readonly keeping: Keeping
  readonly terms: string
  readonly harvest_from: number | null
  readonly harvest_to: number | null
  readonly harvest_about: 0 | 1
  readonly count: number
  readonly mass_mg: number
  readonly measured: 'mass' | 'count' | 'estimate' | 'carried'
}

/** What one letter tells of: whatever its donor gave on that day in that entry, which for a list is one row among many. */
const SAME_LETTER =
  'gift.donor_id = asked.donor_id AND gift.entry_id = asked.entry_id AND gift.received_on = asked.received_on'

/** The standing gifts that letters for some accessions tell of, in order. */
export function giftsOfLetters(sqlite: Sqlite, accessionIds: readonly number[]): LetterGiftRow[] {
  return prepared(
    sqlite,
    `SELECT accession.id AS accession_id, accession.number, variety.name AS variety, crop.common_name AS crop,
       counted_unit, received_on, accession.grown_at, accession.donor_words, accession.terms,
       CASE WHEN EXISTS (SELECT 1 FROM lot AS part WHERE part.accession_id = accession.id AND part.role = 'working'
           AND part.quarantine_reason IS NULL) THEN 'shared'
         WHEN EXISTS (SELECT 1 FROM lot AS part WHERE part.accession_id = accession.id
           AND part.quarantine_reason IS NOT NULL) THEN 'apart' ELSE 'kept' END AS keeping,
       lot.harvest_from, lot.harvest_to, lot.harvest_about, movement.count, movement.mass_mg, movement.measured
     FROM accession
     JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id
     JOIN lot ON lot.accession_id = accession.id AND lot.ordinal = 1
     JOIN movement ON movement.lot_id = lot.id AND movement.kind = 'intake'
     WHERE ${notUndone('accession')} AND accession.id IN
       (SELECT gift.id FROM json_each(?) AS wanted JOIN accession AS asked ON asked.id = wanted.value
        JOIN accession AS gift ON ${SAME_LETTER})
     ORDER BY accession.id`,
  ).all(JSON.stringify(accessionIds)) as LetterGiftRow[]
}

/** The latest gift of a donor who may be written to, or undefined. */
export function latestGiftToThank(
  sqlite: Sqlite,
): { readonly accession_id: number; readonly donor_id: number } | undefined {
  return prepared(
    sqlite,
    `SELECT accession.id AS accession_id, person_contact.person_id AS donor_id
     FROM accession ${joinCanonicalPerson('donor', 'accession.donor_id')}
     JOIN person_contact ON person_contact.person_id = donor.id
     WHERE may_write = 1 AND ${notUndone('accession')} ORDER BY accession.id DESC LIMIT 1`,
  ).get() as { accession_id: number; donor_id: number } | undefined
}

/** A gift whose letter is neither printed nor waiting; those that one letter tells of are one row. */
export interface UnthankedRow {
  readonly accession_id: number
  readonly donor_id: number
  readonly may_write: number
}

/** The standing gifts of named donors in a time, first and last day included, for which no letter was printed or waits. */
export function giftsNotThanked(sqlite: Sqlite, from: string, until: string): UnthankedRow[] {
  return prepared(
    sqlite,
    `SELECT min(asked.id) AS accession_id, donor.id AS donor_id, coalesce(person_contact.may_write, 0) AS may_write
     FROM accession AS asked ${joinCanonicalPerson('donor', 'asked.donor_id')}
     LEFT JOIN person_contact ON person_contact.person_id = donor.id
     WHERE donor.id IS NOT NULL AND asked.received_on BETWEEN ? AND ? AND ${notUndone('asked')}
       AND NOT EXISTS (SELECT 1 FROM accession AS gift JOIN print_item ON print_item.accession_id = gift.id
         WHERE ${SAME_LETTER} AND kind = 'letter' AND (${WAITS} OR EXISTS
           (SELECT 1 FROM print_batch WHERE print_batch.id = print_item.batch_id AND ${notUndone('print_batch')})))
     GROUP BY asked.donor_id, asked.entry_id, asked.received_on ORDER BY accession_id`,
  ).all(from, until) as UnthankedRow[]
}

/** The moment of the latest standing printing of letters, or null. */
export function lettersPrintedAt(sqlite: Sqlite): string | null {
  return prepared(
    sqlite,
    `SELECT max(printed_at) FROM print_batch WHERE kind = 'letter' AND ${notUndone('print_batch')}`,
  )
    .pluck()
    .get() as string | null
}

/** What went out on a visit, line by line; what was taken back since is left out. */
export function slipLines(
  sqlite: Sqlite,
  withdrawalId: number,
): {
  readonly lot_id: number
  readonly number: string
  readonly variety: string
  readonly crop: string
  readonly counted_unit: CountedUnitName
  readonly count: number
  readonly mass_mg: number
  readonly measured: 'mass' | 'count' | 'estimate' | 'carried'
}[] {
  return prepared(
    sqlite,
    `SELECT lot.id AS lot_id, lot.number, variety.name AS variety, crop.common_name AS crop,
       counted_unit, -movement.count AS count, -movement.mass_mg AS mass_mg, movement.measured
     FROM movement JOIN lot ON lot.id = movement.lot_id JOIN accession ON accession.id = lot.accession_id
     JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id
     WHERE movement.withdrawal_id = ? AND movement.kind = 'withdrawal'
       AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)
     ORDER BY movement.id`,
  ).all(withdrawalId) as ReturnType<typeof slipLines>
}
