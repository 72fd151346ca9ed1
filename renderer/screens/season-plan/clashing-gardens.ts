import type { PlanLine } from '../../../db/contract/regeneration-operations.ts'

interface Clashing {
  readonly accessionIds: readonly number[]
}

/** Where a clash is to be marked: every garden, or pair of gardens, that has one; each once. */
export function clashingGardens(
  clashes: readonly Clashing[],
  lines: readonly Pick<PlanLine, 'accessionId' | 'siteId'>[],
): readonly (readonly number[])[] {
  const siteOf = new Map(lines.map(({ accessionId, siteId }) => [accessionId, siteId]))
  const where = clashes.map(({ accessionIds }) =>
    [...new Set(accessionIds.flatMap((id) => siteOf.get(id) ?? []))].toSorted((a, b) => a - b),
  )
  return [...new Map(where.map((gardens) => [gardens.join(' '), gardens])).values()]
}
