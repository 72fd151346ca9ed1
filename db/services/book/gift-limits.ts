import type { GiftLimits } from '../../domain/terms/gift-limits.ts'
import { insertRow } from '../../queries/rows.ts'
import { accessionTerms } from '../../schema/stock-tables.ts'
import type { Writing } from './context.ts'

/** Sets what the giver of an accession wants done and not done with it; it stands in place of what was set before. */
export function writeLimits({ sqlite, entryId }: Writing, accessionId: number, limits: GiftLimits): void {
  insertRow(sqlite, accessionTerms, { ...limits, accessionId, entryId })
}
