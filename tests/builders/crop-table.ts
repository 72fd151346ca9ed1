import type { ViabilityConstants } from '../../db/domain/viability/constants.ts'
import { readCropTable } from '../../db/migrations/crop-table.ts'

const rows = new Map(readCropTable().map((row) => [row.id, row]))

/** A crop of the shipped table as a collection keeps it; throws for one that is not in it. */
export function cropOfTable(id: string): ReturnType<typeof readCropTable>[number] {
  const row = rows.get(id)
  if (row === undefined) throw new Error(`No crop ${id} in the table`)
  return row
}

/** The constants of the viability equation of a crop of the table, or null where it has none. */
export function constantsOf(id: string): ViabilityConstants | null {
  const { viabilityConstants } = cropOfTable(id)
  return viabilityConstants === null ? null : JSON.parse(viabilityConstants)
}
