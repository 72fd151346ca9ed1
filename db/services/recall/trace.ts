import type { Result } from '../../contract/contract.ts'
import type { Untold } from '../../contract/told.ts'
import { harvestTold } from '../../domain/dates/harvest-year.ts'
import type { Affected } from '../../domain/shared/closed-sets.ts'
import { fold } from '../../domain/shared/fold.ts'
import { AFFECTED_BY_KINSHIP, type TracedLot, traceOf } from '../../domain/trace/trace.ts'
import { message } from '../../messages/message.ts'
import { type LotRow, lotsOfAccessions } from '../../queries/lot-rows.ts'
import { type HandOutRow, handOutsOf, stepsOfAccession } from '../../queries/trace-rows.ts'
import { heldIn } from '../book/amounts.ts'
import type { Reading, Reads } from '../book/context.ts'
import { harvestOf, lotOrRefuse } from '../book/new-lot.ts'

/** A lot of a trace, or one that a recall took in. */
export interface FollowedLot extends Pick<TracedLot, 'since'> {
  readonly row: LotRow
  readonly affected: Affected
}

/** The lots that hang together with one, that one first, and how seed went between them. Refuses an unknown lot. */
export function familyOf(reading: Reading, lotId: number) {
  const traced = lotOrRefuse(reading, lotId, 'lotId')
  const steps = stepsOfAccession(reading.sqlite, traced.accessionId)
  const rows = new Map(lotsOfAccessions(reading.sqlite, [traced.accessionId]).map((row) => [row.lotId, row]))
  const lots = traceOf(steps, lotId).flatMap(({ lotId: id, kin, since }) => {
    const row = rows.get(id)
    return row === undefined ? [] : [{ row, kin, since, affected: AFFECTED_BY_KINSHIP[kin] }]
  })
  return { traced, lots, steps }
}

export const traceLot: Reads<'lot.trace'> = (reading, input) => {
  const { traced, lots, steps } = familyOf(reading, input.lotId)
  const ids = new Set(lots.map(({ row }) => row.lotId))
  const { lotId, lotNumber, variety, crop } = traced
  return {
    ...{ lotId, lotNumber, variety, crop },
    lots: lots.map((lot) => ({ ...lotShown(lot), kin: lot.kin })),
    steps: steps
      .filter(({ fromLotId, toLotId }) => ids.has(fromLotId) && ids.has(toLotId))
      .toSorted((one, other) => one.entryId - other.entryId)
      .map(({ fromLotId, toLotId, by }) => ({ fromLotId, toLotId, by })),
    ...whoHasSome(
      reading,
      lots.filter(({ kin }) => kin !== 'came-from'),
    ),
  }
}

/** A lot as traces and recalls list it. */
export function lotShown({ row, affected }: FollowedLot): Untold<Result<'recall.preview'>['lots'][number]> {
  return {
    lotId: row.lotId,
    lotNumber: row.lotNumber,
    role: row.role,
    harvest: harvestTold(harvestOf(row)),
    quantity: heldIn(row),
    quarantined: row.quarantineReason !== null,
    heldBy: row.heldBy,
    affected,
  }
}

/** What went out of a lot after such seed had come into it, with how that lot is affected. */
export interface TakenRow extends HandOutRow {
  readonly affected: Affected
}

/** Somebody who got seed, with all that they had of it, oldest first; without a personId, all whose name is not known. */
export interface Taker {
  readonly who: TakenRow
  readonly had: readonly TakenRow[]
}

/** Who got seed of some lots after such seed had come into them, by name. */
export function takersOf(reading: Reading, lots: readonly FollowedLot[]): Taker[] {
  const followed = new Map(lots.map((lot) => [lot.row.lotId, lot]))
  const taken = handOutsOf(reading.sqlite, [...followed.keys()]).flatMap((out) => {
    const lot = followed.get(out.lotId)
    return lot === undefined || out.entryId < lot.since ? [] : [{ ...out, affected: lot.affected }]
  })
  return [...Map.groupBy(taken, ({ personId }) => personId).values()]
    .flatMap((had) => had.slice(0, 1).map((who) => ({ who, had })))
    .toSorted((one, other) => fold(one.who.name ?? '').localeCompare(fold(other.who.name ?? ''), 'en'))
}

/** Who got seed of some lots, as the contract shows it. */
export function whoHasSome(reading: Reading, lots: readonly FollowedLot[]) {
  const takers = takersOf(reading, lots)
  return {
    people: takers.flatMap(({ who: { personId, name, town, mayWrite }, had }) =>
      personId === null
        ? []
        : [
            {
              personId,
              name: name ?? '',
              town: town ?? '',
              mayWrite: mayWrite === 1,
              had: had.map(takenShown),
            },
          ],
    ),
    nameless: takers.flatMap(({ who, had }) => (who.personId === null ? had.map(takenShown) : [])),
  }
}

function takenShown({ lotId, lotNumber, variety, crop, affected, on, count, countedUnit: unit }: TakenRow) {
  const words = message('amount.seeds', { count, unit })
  return { lotId, lotNumber, variety, crop, affected, on, words }
}

/** How those who have some can be told. */
export function howMany(people: readonly { readonly mayWrite: boolean }[]) {
  const toWrite = people.filter(({ mayWrite }) => mayWrite).length
  return { toWrite, inPerson: people.length - toWrite }
}
