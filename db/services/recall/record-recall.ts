import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import { canonicalPersonId } from '../../queries/person-records.ts'
import { insertRow } from '../../queries/rows.ts'
import { recall, recallLot, recallOutcome } from '../../schema/recall-tables.ts'
import { changeLot } from '../book/change-lot.ts'
import type { Reading, Reads, Writes } from '../book/context.ts'
import { keptReason, reasonOf } from '../book/quarantine-reason.ts'
import { recallOrRefuse } from './recalls.ts'
import { type FollowedLot, familyOf, howMany, lotShown, takersOf, whoHasSome } from './trace.ts'

interface Chosen {
  readonly lotId: number
  readonly lotIds: readonly number[]
}

/** The lot where something was found and those chosen of its trace. Refuses one that does not hang together with it. */
function chosenLots(reading: Reading, { lotId, lotIds }: Chosen): FollowedLot[] {
  const { lots, traced } = familyOf(reading, lotId)
  const known = new Set(lots.map(({ row }) => row.lotId))
  const stranger = lotIds.findIndex((id) => !known.has(id))
  if (stranger >= 0) {
    refuse('not-in-its-trace', message('recall.not-in-its-trace', { lot: traced.lotNumber }), {
      field: `lotIds.${stranger}`,
      todo: message('recall.not-in-its-trace-todo'),
    })
  }
  return lots.filter(({ row, kin }) => kin === 'itself' || lotIds.includes(row.lotId))
}

export const previewRecall: Reads<'recall.preview'> = (reading, input) => {
  const lots = chosenLots(reading, input)
  const who = whoHasSome(reading, lots)
  return { lots: lots.map(lotShown), ...who, ...howMany(who.people) }
}

/** A reason that a lot has already to be kept back stays beside that of the recall. */
export const recordRecall: Writes<'recall.record'> = (writing, input) => {
  const { lotId, on, reason, advice } = input
  const { entryId, sqlite } = writing
  const lots = chosenLots(writing, input)
  const recallId = insertRow(sqlite, recall, { lotId, onDate: on, reason, advice, entryId })
  const because = message('recall.kept-back', { reason })
  for (const { row, affected } of lots) {
    insertRow(sqlite, recallLot, { recallId, lotId: row.lotId, affected, entryId })
    const before = reasonOf(row.quarantineReason)
    const kept =
      before === '' ? because : message('quarantine-reason.also', { first: before, second: because })
    changeLot(writing, row.lotId, { quarantineReason: keptReason([kept]) })
  }
  const lotNumber = lots[0]?.row.lotNumber ?? ''
  return {
    recallId,
    lots: lots.length,
    said: message('recall.recorded', { lot: lotNumber, others: lots.length - 1, reason }),
    undoable: true,
  }
}

/** Refuses a lot that the recall did not take in, and somebody who has none of it by the book. */
export const recordOutcome: Writes<'recall.record-outcome'> = (writing, input) => {
  const { row, lots } = recallOrRefuse(writing, input.recallId)
  const { of, outcome } = input
  const lotId = of !== 'the-whole' && 'lotId' in of ? of.lotId : null
  const asked = of !== 'the-whole' && 'personId' in of ? of.personId : null
  const personId = asked === null ? null : (canonicalPersonId(writing.sqlite, asked) ?? asked)
  if (lotId !== null && !lots.some((lot) => lot.row.lotId === lotId))
    refuse('not-in-recall', message('recall.lot-not-in-it'), { field: 'of.lotId' })
  if (personId !== null && !takersOf(writing, lots).some(({ who }) => who.personId === personId))
    refuse('not-in-recall', message('recall.person-not-in-it'), { field: 'of.personId' })
  const outcomeId = insertRow(writing.sqlite, recallOutcome, {
    recallId: row.recallId,
    lotId,
    personId,
    outcome,
    onDate: input.on,
    note: input.note,
    entryId: writing.entryId,
  })
  const said = message('recall.outcome-recorded', {
    lot: row.lotNumber,
    outcome: message(`recall.outcome-${outcome}`),
  })
  return { outcomeId, said, undoable: true }
}
