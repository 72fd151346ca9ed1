import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import { recallLots, recallOutcomes, recallRow, recallRows } from '../../queries/recall-rows.ts'
import type { Reading, Reads } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { type FollowedLot, familyOf, howMany, lotShown, takersOf, whoHasSome } from './trace.ts'

export const listRecalls: Reads<'recall.list'> = (reading, input) => {
  const rows = recallRows(reading.sqlite, input.lotId ?? null)
  return { recalls: rows.map(({ advice, ...row }) => row) }
}

/**
 * A recall that stands, with its lots as they are now. A lot that hangs together with the others no more, as when what was
 * poured together was taken back, stays in it with all that went out of it.
 */
export function recallOrRefuse(reading: Reading, recallId: number) {
  const row = recallRow(reading.sqlite, recallId)
  if (row === undefined) refuse('not-found', message('recall.not-found'), { field: 'recallId' })
  const family = new Map(familyOf(reading, row.lotId).lots.map((lot) => [lot.row.lotId, lot]))
  const lots: FollowedLot[] = recallLots(reading.sqlite, recallId).map(({ lotId, affected }) => ({
    row: family.get(lotId)?.row ?? lotOrRefuse(reading, lotId, 'recallId'),
    affected,
    since: family.get(lotId)?.since ?? 0,
  }))
  return { row, lots }
}

export const getRecall: Reads<'recall.get'> = (reading, input) => {
  const { row, lots } = recallOrRefuse(reading, input.recallId)
  const who = whoHasSome(reading, lots)
  const outcomes = recallOutcomes(reading.sqlite, row.recallId)
  const shown = (of: (outcome: (typeof outcomes)[number]) => boolean) =>
    outcomes.filter(of).map(({ outcomeId, outcome, on, note }) => ({ outcomeId, outcome, on, note }))
  return {
    ...row,
    lots: lots.map((lot) => ({
      ...lotShown(lot),
      outcomes: shown(({ lotId }) => lotId === lot.row.lotId),
    })),
    people: who.people.map((one) => ({
      ...one,
      outcomes: shown(({ personId }) => personId === one.personId),
    })),
    nameless: who.nameless,
    ...howMany(who.people),
    outcomes: shown(({ lotId, personId }) => lotId === null && personId === null),
  }
}

/** Those who have some and agreed to be written to, and how many others there are. */
export function whomToTell(reading: Reading, lots: readonly FollowedLot[]) {
  const people = takersOf(reading, lots).filter(({ who }) => who.personId !== null)
  const takers = people.filter(({ who }) => who.mayWrite === 1)
  return { takers, toWrite: takers.length, inPerson: people.length - takers.length }
}
