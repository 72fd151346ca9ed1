import { eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { type LabelSheet, type SheetMeasures, ShippedSheet } from '../../contract/print-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import {
  carriesBySize,
  isEnvelope,
  type SheetGeometry,
  sheetFault,
} from '../../paper/packets/label-sheets.ts'
import { SHEETS } from '../../paper/packets/shipped-sheets.ts'
import { insertRow, rowWith } from '../../queries/rows.ts'
import { labelSheet } from '../../schema/print-tables.ts'
import type { Reading, Writes } from './context.ts'

type OwnRow = typeof labelSheet.$inferSelect

/** Every sheet that can be printed on: those of the app, then the library's own. */
export function listSheets(reading: Reading): Result<'label-sheet.list'> {
  const own = reading.db.select().from(labelSheet).where(eq(labelSheet.retired, false)).all()
  return {
    sheets: [
      ...ShippedSheet.options.map((sheet) => shown(sheet, SHEETS[sheet], null)),
      ...own.map((row) => shown(`own-${row.id}`, geometryOf(row), measuresOf(row))),
    ],
  }
}

type Shown = Result<'label-sheet.list'>['sheets'][number]

function shown(sheet: LabelSheet, geometry: SheetGeometry, own: SheetMeasures | null): Shown {
  const { name, columns, rows, widthMm, heightMm } = geometry
  const paper = geometry.folded ? 'packets' : isEnvelope(geometry) ? 'envelope' : 'labels'
  return { sheet, name, columns, rows, widthMm, heightMm, paper, own }
}

/** A sheet's measures, also of one that is offered no more; null where the book has none such. */
export function savedSheet(reading: Reading, sheet: LabelSheet): SheetGeometry | null {
  const shipped = ShippedSheet.safeParse(sheet)
  if (shipped.success) return SHEETS[shipped.data]
  const row = ownRow(reading, Number(sheet.slice('own-'.length)))
  return row === undefined ? null : geometryOf(row)
}

/** A sheet's measures, or a refusal that names the field. */
export function sheetOrRefuse(reading: Reading, sheet: LabelSheet, field: string): SheetGeometry {
  return (
    savedSheet(reading, sheet) ??
    refuse('not-found', message('book.no-sheet'), { field, todo: message('book.no-sheet-todo') })
  )
}

/** Keeps the measures of a sheet, mm. Refuses labels that do not fit its page or hold no number and code. */
export const saveSheet: Writes<'label-sheet.create'> = (writing, { sheetId, measures }) => {
  // Where there is no next label, nobody measures how far off it is.
  const pitchXMm = Math.max(measures.pitchXMm, measures.columns === 1 ? measures.widthMm : 0)
  const pitchYMm = Math.max(measures.pitchYMm, measures.rows === 1 ? measures.heightMm : 0)
  const row = { ...measures, pitchXMm, pitchYMm, retired: false, entryId: writing.entryId }
  const fault = sheetFault(geometryOf({ id: 0, ...row }))
  if (fault !== null) refuse('sheet-unfit', fault.because, { field: `measures.${fault.field}` })
  const said = message('book.sheet-kept', { sheet: measures.name })
  if (sheetId === null) {
    return { sheet: `own-${insertRow(writing.sqlite, labelSheet, row)}`, said, undoable: false }
  }
  ownOrRefuse(writing, sheetId)
  writing.db.update(labelSheet).set(row).where(eq(labelSheet.id, sheetId)).run()
  return { sheet: `own-${sheetId}`, said, undoable: false }
}

/** Takes a sheet out of the choices. Refuses one that is not in the book. */
export const retireSheet: Writes<'label-sheet.retire'> = (writing, { sheetId }) => {
  const { name } = ownOrRefuse(writing, sheetId)
  writing.db
    .update(labelSheet)
    .set({ retired: true, entryId: writing.entryId })
    .where(eq(labelSheet.id, sheetId))
    .run()
  return { said: message('book.sheet-retired', { sheet: name }), undoable: false }
}

function ownRow(reading: Reading, id: number): OwnRow | undefined {
  return rowWith(reading.sqlite, labelSheet, { id })
}

function ownOrRefuse(reading: Reading, id: number): OwnRow {
  return ownRow(reading, id) ?? refuse('not-found', message('book.no-sheet'), { field: 'sheetId' })
}

function measuresOf({ id, retired, entryId, ...measures }: OwnRow): SheetMeasures {
  return measures
}

/** Labels as large as a shipped one with all facts carry as much; small ones the name and number. */
function geometryOf({ pageWidthMm, pageHeightMm, ...row }: OwnRow): SheetGeometry {
  const { name, columns, rows, widthMm, heightMm, leftMm, topMm, pitchXMm, pitchYMm } = row
  const carries = carriesBySize(widthMm, heightMm)
  const pageMm = { width: pageWidthMm, height: pageHeightMm }
  const place = { leftMm, topMm, pitchXMm, pitchYMm }
  return { name, pageMm, columns, rows, widthMm, heightMm, ...place, carries, confidence: 'own' }
}
