import { eq } from 'drizzle-orm'
import { rowWith } from '../../queries/rows.ts'
import { lot, lotChange } from '../../schema/stock-tables.ts'
import { refuseIfChangedLater } from './changed-later.ts'
import type { Writing } from './context.ts'

/** What of a lot changes by an entry and can be put back: everything but its number, its seed and its measurements. */
export type LotChanges = Partial<
  Pick<
    typeof lot.$inferSelect,
    | 'role'
    | 'heldBy'
    | 'heldSince'
    | 'placeId'
    | 'quarantineReason'
    | 'basis'
    | 'estimated'
    | 'harvestFrom'
    | 'harvestTo'
    | 'harvestAbout'
    | 'generation'
  >
>

/** Changes a lot and keeps what it was before, under the entry being written. */
export function changeLot(writing: Writing, lotId: number, changes: LotChanges): void {
  const before = rowWith(writing.sqlite, lot, { id: lotId })
  if (!before) throw new Error(`No lot ${lotId}`)
  const fields = (Object.keys(changes) as (keyof LotChanges)[]).filter(
    (field) => before[field] !== changes[field],
  )
  if (fields.length === 0) return
  writing.db.update(lot).set(changes).where(eq(lot.id, lotId)).run()
  for (const field of fields) {
    const row = { lotId, field, before: JSON.stringify(before[field]), after: JSON.stringify(changes[field]) }
    writing.db
      .insert(lotChange)
      .values({ ...row, entryId: writing.entryId })
      .run()
  }
}

/** Puts lots back to what they were before an entry. Refused when a later entry changed the same thing again. */
export function restoreLots(writing: Writing, entryId: number): void {
  const changes = writing.db.select().from(lotChange).where(eq(lotChange.entryId, entryId)).all()
  for (const change of changes) refuseIfChangedLater(writing, 'lot', change.lotId, change)
  // All of a lot at once: on the way from one field to the next its harvest years would not fit each other.
  for (const [lotId, ofLot] of Map.groupBy(changes, (change) => change.lotId)) {
    const before = Object.fromEntries(ofLot.map(({ field, before }) => [field, JSON.parse(before)]))
    writing.db.update(lot).set(before).where(eq(lot.id, lotId)).run()
  }
}
