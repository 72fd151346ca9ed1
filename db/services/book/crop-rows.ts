import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import { rowWith } from '../../queries/rows.ts'
import { crop } from '../../schema/reference-tables.ts'
import type { Reading } from './context.ts'

export type CropRow = typeof crop.$inferSelect

/** A crop of the table, or a refusal. */
export function cropOrRefuse(reading: Reading, cropId: string, field: string): CropRow {
  const row = rowWith(reading.sqlite, crop, { id: cropId })
  return row ?? refuse('not-found', message('book.no-crop', { crop: cropId }), { field })
}
