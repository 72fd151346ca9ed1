import { eq } from 'drizzle-orm'
import { refuse } from '../../contract/refusal.ts'
import { crop } from '../../schema/reference-tables.ts'
import type { Reading } from './context.ts'

export type CropRow = typeof crop.$inferSelect

/** A crop of the table, or a refusal. */
export function cropOrRefuse(reading: Reading, cropId: string, field: string): CropRow {
  const row = reading.db.select().from(crop).where(eq(crop.id, cropId)).get()
  return (
    row ??
    refuse('not-found', `There is no crop ‘${cropId}’ in the table. Choose one of the list.`, { field })
  )
}
