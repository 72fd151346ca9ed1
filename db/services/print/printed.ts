import { inArray } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { LabelSheet, type PrintKind } from '../../contract/print-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import { type Message, message } from '../../messages/message.ts'
import { labelsOnSheet } from '../../paper/packets/label-sheets.ts'
import { insertRow } from '../../queries/rows.ts'
import {
  type BatchRow,
  batchesBefore,
  itemsOfBatch,
  latestOnEachPrinter,
  latestOnEachSheet,
} from '../../queries/tray-rows.ts'
import { printBatch, printItem } from '../../schema/print-tables.ts'
import type { Reading, Reads, Writes } from '../book/context.ts'
import { savedSheet } from '../book/label-sheets.ts'
import { checkWhatToPrint, shownItem, toTray, waitingOrRefuse } from '../book/tray.ts'

/** Notes a printing. What came out of a printer cannot be known, so the keeper says it, and may take it back. */
export const markPrinted: Writes<'tray.mark-printed'> = (writing, input) => {
  const rows = waitingOrRefuse(writing, input.itemIds, 'itemIds')
  checkWhatToPrint(writing, rows, input)
  const [rightMm, downMm] = input.offsetMm
  const onSheet =
    input.kind === 'label' ? { sheet: input.sheet ?? null, startAt: input.startAt, rightMm, downMm } : {}
  const id = insertRow(writing.sqlite, printBatch, {
    kind: input.kind,
    ...onSheet,
    printer: input.printer,
    printedAt: writing.now.toISOString(),
    entryId: writing.entryId,
  })
  writing.db
    .update(printItem)
    .set({ batchId: id })
    .where(inArray(printItem.id, [...input.itemIds]))
    .run()
  const copies = rows.reduce((sum, row) => sum + row.copies, 0)
  return {
    batchId: id,
    said: message('print.printed', { batch: batchTold(input.kind, copies) }),
    undoable: true,
  }
}

/** What was printed, latest first. */
export const printHistory: Reads<'print.list'> = (reading, input) => {
  const batches = batchesBefore(reading.sqlite, input.before ?? Number.MAX_SAFE_INTEGER, input.limit)
  return {
    batches: batches.map((batch) => ({
      batchId: batch.id,
      kind: batch.kind,
      printedAt: batch.printedAt,
      sheet: sheetOf(batch),
      words: batchTold(batch.kind, batch.labels),
      items: itemsOfBatch(reading.sqlite, batch.id).map(shownItem),
    })),
  }
}

/** Puts what was printed into the tray again. Refuses where all of it was taken back. */
export const printAgain: Writes<'print.repeat'> = (writing, input) => {
  const rows = itemsOfBatch(writing.sqlite, input.batchId)
  if (rows.length === 0) refuse('not-found', message('print.no-printing'), { field: 'batchId' })
  const lasting = rows.filter((row) => row.fell === 0)
  if (lasting.length === 0) {
    refuse('nothing-to-print', message('print.printing-undone'), { field: 'batchId' })
  }
  const itemIds = lasting.map((row) =>
    toTray(writing, {
      kind: row.kind,
      lotId: row.lotId,
      accessionId: row.accessionId,
      withdrawalId: row.withdrawalId,
      copies: row.copies,
      contents: row.contents,
    }),
  )
  const copies = lasting.reduce((sum, row) => sum + row.copies, 0)
  const batch = batchTold(lasting[0]?.kind ?? 'label', copies)
  return { itemIds, said: message('print.again-in-tray', { batch }), undoable: true }
}

/** Where each sheet goes on that was printed on: the label after the last one used. */
export function nextOnEachSheet(reading: Reading): Result<'tray.list'>['sheets'] {
  return latestOnEachSheet(reading.sqlite).flatMap((batch) => {
    const sheet = sheetOf(batch)
    if (sheet === null) return []
    const used = (batch.startAt ?? 1) - 1 + batch.labels
    const geometry = savedSheet(reading, sheet)
    return geometry === null ? [] : [{ sheet, startAt: (used % labelsOnSheet(geometry)) + 1 }]
  })
}

/** How far each printer's print was moved last. */
export function printersKnown(reading: Reading): Result<'tray.list'>['printers'] {
  return latestOnEachPrinter(reading.sqlite).map(({ printer, rightMm, downMm }) => ({
    name: printer,
    offsetMm: [rightMm, downMm] as [number, number],
  }))
}

function sheetOf(batch: BatchRow): LabelSheet | null {
  return batch.sheet === null ? null : LabelSheet.parse(batch.sheet)
}

function batchTold(kind: PrintKind, copies: number): Message {
  return message('print.batch', { kind, copies })
}
