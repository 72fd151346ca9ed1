import { and, eq, inArray } from 'drizzle-orm'
import type { ParsedInput } from '../../contract/contract.ts'
import type { TrayItem } from '../../contract/print-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import { type Message, message } from '../../messages/message.ts'
import { labelsOnSheet } from '../../paper/packets/label-sheets.ts'
import { canonicalPersonId } from '../../queries/person-records.ts'
import { insertRow, rowWith } from '../../queries/rows.ts'
import { itemsByIds, type TrayRow } from '../../queries/tray-rows.ts'
import { printItem } from '../../schema/print-tables.ts'
import { personContact } from '../../schema/reference-tables.ts'
import { accession, withdrawal } from '../../schema/stock-tables.ts'
import type { Reading, Writes, Writing } from './context.ts'
import { sheetOrRefuse } from './label-sheets.ts'
import { lotOrRefuse } from './new-lot.ts'
import { saidOf } from './said.ts'

type NewItem = Partial<typeof printItem.$inferInsert> & Pick<typeof printItem.$inferInsert, 'kind'>

/** Puts something into the print tray under the entry that is being written. */
export function toTray(writing: Writing, item: NewItem): number {
  const { now, entryId } = writing
  return insertRow(writing.sqlite, printItem, {
    copies: 1,
    contents: '',
    addedAt: now.toISOString(),
    entryId,
    ...item,
  })
}

/** Puts a gift's label into the tray, and one letter for all gifts of the entry where the donor agreed to be written to. */
export function giftToTray(
  writing: Writing,
  gift: { readonly accessionId: number; readonly lotId: number; readonly donorId: number | null },
): void {
  toTray(writing, { kind: 'label', lotId: gift.lotId })
  if (gift.donorId === null || !mayWrite(writing, gift.donorId)) return
  const letters = writing.db
    .select({ id: printItem.id })
    .from(printItem)
    .where(and(eq(printItem.entryId, writing.entryId), eq(printItem.kind, 'letter')))
    .all()
  if (letters.length === 0) toTray(writing, { kind: 'letter', accessionId: gift.accessionId })
}

function mayWrite(reading: Reading, personId: number): boolean {
  const keptId = canonicalPersonId(reading.sqlite, personId) ?? personId
  const contact = rowWith(reading.sqlite, personContact, { personId: keptId })
  return contact?.mayWrite === true
}

/** An item as lists show it. Nothing of how to reach a person is in it. */
export function shownItem(row: TrayRow): Untold<TrayItem> {
  const shown = { itemId: row.id, lotId: row.lotId, copies: row.copies, contents: row.contents }
  return { ...shown, ...namedItem(row), because: saidOf(row.because), heldBack: heldBack(row) }
}

function namedItem(row: TrayRow): Untold<Pick<TrayItem, 'title' | 'detail'>> {
  switch (row.kind) {
    case 'label':
      return { title: row.lotNumber ?? '', detail: `${row.lotVariety ?? ''}, ${row.lotCrop ?? ''}` }
    case 'letter':
      return { title: row.donor ?? message('book.tray-unnamed-donor'), detail: message('book.tray-letter') }
    case 'slip':
      return {
        title: row.member || message('book.tray-unnamed-member'),
        detail: message('book.tray-slip', { on: { day: row.visitOn ?? '' } }),
      }
  }
}

function heldBack(row: TrayRow): Message | null {
  if (row.fell === 1) return message('book.tray-undone')
  if (row.kind !== 'letter' || row.mayWrite === 1) return null
  return row.donor === null
    ? message('book.tray-no-consent-unnamed')
    : message('book.tray-no-consent', { donor: row.donor })
}

/** Puts things into the print tray. Refuses what is not in the book, and a letter to a donor who did not agree to it. */
export const addToTray: Writes<'tray.add'> = (writing, input) => {
  const itemIds = input.items.map((item, index) => toTray(writing, checkedItem(writing, item, index)))
  return { itemIds, said: message('book.tray-added', { things: itemIds.length }), undoable: true }
}

function checkedItem(
  writing: Writing,
  item: ParsedInput<'tray.add'>['items'][number],
  index: number,
): NewItem {
  const field = `items.${index}`
  switch (item.kind) {
    case 'label':
      lotOrRefuse(writing, item.lotId, `${field}.lotId`)
      return item
    case 'letter': {
      const gift = rowWith(writing.sqlite, accession, { id: item.accessionId })
      if (!gift) refuse('not-found', message('book.tray-no-gift'), { field: `${field}.accessionId` })
      if (gift.donorId === null || !mayWrite(writing, gift.donorId)) {
        refuse('no-consent', message('book.tray-letter-consent'), {
          field: `${field}.accessionId`,
          todo: message('book.tray-letter-consent-todo'),
        })
      }
      return item
    }
    case 'slip':
      if (!rowWith(writing.sqlite, withdrawal, { id: item.withdrawalId })) {
        refuse('not-found', message('book.tray-no-visit'), { field: `${field}.withdrawalId` })
      }
      return item
  }
}

/** Changes a waiting label: the item is replaced. Refuses what is no label or does not wait. */
export const changeTrayItem: Writes<'tray.change'> = (writing, input) => {
  const [row] = waitingOrRefuse(writing, [input.itemId], 'itemId')
  if (row === undefined || row.lotId === null) {
    return refuse('labels-only', message('book.tray-labels-only'), { field: 'itemId' })
  }
  takeOut(writing, [row.id])
  const { copies, contents } = input
  const itemId = toTray(writing, { kind: 'label', lotId: row.lotId, copies, contents })
  const said = message('book.tray-copies', { copies, lot: row.lotNumber ?? '' })
  return { itemId, said, undoable: true }
}

/** Takes waiting items out of the tray. Refuses what does not wait. */
export const removeFromTray: Writes<'tray.remove'> = (writing, input) => {
  const rows = waitingOrRefuse(writing, input.itemIds, 'itemIds')
  takeOut(writing, input.itemIds)
  const [only] = rows
  const said = rows.length === 1 && only ? oneTaken(only) : message('book.tray-took', { things: rows.length })
  return { said, undoable: true }
}

/** Without the person it was for: what is kept in the book names nobody. */
function oneTaken({ kind, lotNumber }: TrayRow): Message {
  return kind === 'label'
    ? message('book.tray-took-label', { lot: lotNumber ?? '' })
    : message(kind === 'letter' ? 'book.tray-took-letter' : 'book.tray-took-slip')
}

function takeOut(writing: Writing, ids: readonly number[]): void {
  writing.db
    .update(printItem)
    .set({ removedEntryId: writing.entryId })
    .where(inArray(printItem.id, [...ids]))
    .run()
}

/** Items that wait, or a refusal that says which does not. */
export function waitingOrRefuse(reading: Reading, ids: readonly number[], field: string): TrayRow[] {
  const rows = itemsOrRefuse(reading, ids, field)
  const gone = rows.find((row) => row.waits === 0)
  if (gone) {
    refuse('not-found', message(`book.tray-gone.${gone.kind}`, { title: shownItem(gone).title }), {
      field,
      todo: message('book.tray-gone-todo'),
    })
  }
  return rows
}

/** Items by their ids, each once, or a refusal. */
export function itemsOrRefuse(reading: Reading, ids: readonly number[], field: string): TrayRow[] {
  const wanted = [...new Set(ids)]
  const rows = itemsByIds(reading.sqlite, wanted)
  if (rows.length < wanted.length) {
    refuse('not-found', message('book.tray-missing'), { field })
  }
  return rows
}

/** Refuses to print different kinds of paper together, labels without their sheet, or a label that is not on it. */
export function checkWhatToPrint(
  reading: Reading,
  rows: readonly TrayRow[],
  input: ParsedInput<'tray.render'>,
): void {
  if (rows.some((row) => row.kind !== input.kind)) {
    refuse('kinds-mixed', message('book.tray-one-kind'), { field: 'itemIds' })
  }
  if (input.kind !== 'label') return
  if (input.sheet === undefined) refuse('sheet-missing', message('book.tray-which-sheet'), { field: 'sheet' })
  const perSheet = labelsOnSheet(sheetOrRefuse(reading, input.sheet, 'sheet'))
  if (input.startAt > perSheet) {
    refuse('off-the-sheet', message('book.tray-start-at', { labels: perSheet }), { field: 'startAt' })
  }
}
