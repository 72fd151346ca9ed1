import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { cautionName, cautionTold } from '../../domain/cautions/caution-text.ts'
import { handlingOf } from '../../domain/cautions/handling.ts'
import { type CautionSet, cautionsInForce } from '../../domain/cautions/inheritance.ts'
import { message } from '../../messages/message.ts'
import { cautionHistory, whoSaidOf } from '../../queries/caution-rows.ts'
import { setCaution, writeCautionEnd } from '../book/cautions.ts'
import type { Reading, Writes, Writing } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'

/** The cautions that hold for a lot, with since when, who said it, and of which lot where it was not this one. */
export function cautionsOfLot(reading: Reading, lotId: number): Result<'lot.get'>['cautions'] {
  return inForce(reading, [lotId]).map(({ set: { caution, note, onDate, entryId, lotId: saidOf } }) => ({
    caution,
    note,
    text: cautionTold(caution, note),
    since: onDate,
    by: whoSaidOf(reading.sqlite, entryId),
    from:
      saidOf === lotId ? null : { lotId: saidOf, lotNumber: lotOrRefuse(reading, saidOf, 'lotId').lotNumber },
    whenDiscarded: handlingOf(caution, 'discard') ?? '',
  }))
}

export const setCautionOfLots: Writes<'lot.set-caution'> = (writing, input) => {
  const { caution, on, note } = input
  const lots = lotsOf(writing, input)
  const known = inForce(
    writing,
    lots.map(({ lotId }) => lotId),
  )
  const isKnown = (lotId: number) =>
    known.some((one) => one.lotId === lotId && one.set.caution === caution && one.set.note === note)
  const news = lots.filter(({ lotId }) => !isKnown(lotId))
  if (news.length === 0) {
    refuse('caution-set-already', message('stock.caution-set-already', { caution: cautionName(caution) }), {
      field: 'caution',
      todo: message('stock.caution-set-already-todo'),
    })
  }
  for (const { lotId } of news) setCaution(writing, { lotId, caution, onDate: on, note })
  const numbers = { list: news.map(({ lotNumber }) => lotNumber) }
  return {
    said: message('stock.caution-set', { caution: cautionName(caution), lots: numbers }),
    undoable: true,
  }
}

export const endCaution: Writes<'lot.end-caution'> = (writing, input) => {
  const { caution, on, reason } = input
  const lots = lotsOf(writing, input)
  const known = inForce(
    writing,
    lots.map(({ lotId }) => lotId),
  )
  const without = lots.find(
    ({ lotId }) => !known.some((one) => one.lotId === lotId && one.set.caution === caution),
  )
  if (without !== undefined) {
    refuse(
      'caution-not-set',
      message('stock.caution-not-set', { lot: without.lotNumber, caution: cautionName(caution) }),
      { field: 'caution', todo: message('stock.caution-not-set-todo') },
    )
  }
  for (const { lotId } of lots) writeCautionEnd(writing, { lotId, caution, onDate: on, reason })
  const numbers = { list: lots.map(({ lotNumber }) => lotNumber) }
  return {
    said: message('stock.caution-ended', { caution: cautionName(caution), lots: numbers }),
    undoable: true,
  }
}

function lotsOf(writing: Writing, { lotIds }: Pick<ParsedInput<'lot.set-caution'>, 'lotIds'>) {
  return [...new Set(lotIds)].map((lotId, index) => lotOrRefuse(writing, lotId, `lotIds.${index}`))
}

function inForce(reading: Reading, lotIds: readonly number[]): { lotId: number; set: CautionSet }[] {
  const history = cautionHistory(reading.sqlite, lotIds)
  return lotIds.flatMap((lotId) => cautionsInForce(history, lotId).map((set) => ({ lotId, set })))
}
