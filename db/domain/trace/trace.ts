import type { Affected, LotRelation } from '../shared/closed-sets.ts'

/** That seed came from one lot into another. Entries are numbered in the order in which they were written. */
export interface SeedStep {
  readonly fromLotId: number
  readonly toLotId: number
  readonly by: LotRelation
  /** The entry by which it came. */
  readonly entryId: number
  /** The entry by which it left: of a harvest, the hand-out of what was sown, where that is known; never after it came. */
  readonly leftBy: number
}

/** What a lot is to the one that is traced. */
export const KINSHIPS = ['itself', 'same-seed', 'offspring', 'came-from'] as const
export type Kinship = (typeof KINSHIPS)[number]

/** A lot of a trace. */
export interface TracedLot {
  readonly lotId: number
  readonly kin: Kinship
  /** The entry since which it holds such seed; 0: all that was ever in it may be such seed. */
  readonly since: number
}

/** What a recall calls a lot, by what it is to the one where something was found. Offspring are never condemned. */
export const AFFECTED_BY_KINSHIP: Readonly<Record<Kinship, Affected>> = {
  itself: 'source',
  'same-seed': 'same-seed',
  offspring: 'perhaps',
  'came-from': 'perhaps',
}

/**
 * Every lot that hangs together with one, each once and that one first: those that hold some of the same seed, what was grown
 * of it over all generations, and what it was itself grown from.
 *
 * Two lots hold the same seed if some that came into the library as one is in both. Seed that left a lot before other seed was
 * poured into it has nothing of the other. Order is that of the entries, so that a merge written down late counts late.
 * Takes the steps of one family; what was taken back must not be among them. Common practice in following seed lots, no source.
 */
export function traceOf(steps: readonly SeedStep[], lotId: number): TracedLot[] {
  const inOrder = steps.toSorted((one, other) => one.entryId - other.entryId)
  const kept = inOrder.filter(({ by }) => by !== 'grown')
  const beginnings = cameInto(kept, lotId)
  const same = reachedFrom(kept, beginnings)
  const offspring = reachedFrom(inOrder, beginnings)
  const ancestors = cameInto(inOrder, lotId)
  return [
    { lotId, kin: 'itself', since: 0 },
    ...[...same]
      .filter(([id]) => id !== lotId)
      .map(([id, since]) => ({ lotId: id, kin: 'same-seed' as const, since })),
    ...[...offspring]
      .filter(([id]) => !same.has(id) && id !== lotId)
      .map(([id, since]) => ({ lotId: id, kin: 'offspring' as const, since })),
    ...[...ancestors]
      .filter((id) => !offspring.has(id) && id !== lotId)
      .map((id) => ({ lotId: id, kin: 'came-from' as const, since: 0 })),
  ]
}

/** A lot and all whose seed came into it, by when it left them. Takes steps in the order of their entries. */
function cameInto(steps: readonly SeedStep[], lotId: number): Set<number> {
  const until = new Map([[lotId, Number.POSITIVE_INFINITY]])
  for (const { fromLotId, toLotId, entryId, leftBy } of steps.toReversed()) {
    if (entryId > (until.get(toLotId) ?? -1)) continue
    until.set(fromLotId, Math.max(until.get(fromLotId) ?? 0, leftBy))
  }
  return new Set(until.keys())
}

/** Where the seed of some lots came to, and by which entry first. Takes steps in the order of their entries. */
function reachedFrom(steps: readonly SeedStep[], lotIds: ReadonlySet<number>): Map<number, number> {
  const since = new Map(Array.from(lotIds, (id) => [id, 0]))
  for (const { fromLotId, toLotId, entryId, leftBy } of steps) {
    const there = since.get(fromLotId)
    if (there !== undefined && there <= leftBy && !since.has(toLotId)) since.set(toLotId, entryId)
  }
  return since
}
