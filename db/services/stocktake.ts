import type { ParsedInput, Value } from '../contract/contract.ts'
import { measuredOf } from '../domain/amounts/amount.ts'
import { stocktakeChange } from '../domain/ledger/movement.ts'
import { amountOrRefuse, balanceOf, quantityOf, weightInForce } from './amounts.ts'
import { changeLot } from './change-lot.ts'
import type { Writing } from './context.ts'
import { refuseTheFutureDay } from './intake.ts'
import { lotOrRefuse } from './new-lot.ts'
import { writeMovement } from './write-movement.ts'

export function takeStock(
  writing: Writing,
  input: ParsedInput<'lot.take-stock'>,
): Omit<Value<'lot.take-stock'>, 'entryId'> {
  refuseTheFutureDay(input.on, writing.today, 'on')
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  const balance = balanceOf(row)
  const { weight } = weightInForce(row)
  const nothing = input.found === 'nothing'
  const found = nothing ? null : amountOrRefuse(input.found, row.packet_seeds, 'found')
  const change =
    found === null ? { count: -balance.count, mass: -balance.mass } : stocktakeChange(balance, found, weight)
  writeMovement(writing, {
    lotId: row.lot_id,
    kind: 'stocktake',
    on: input.on,
    change,
    measured: found === null ? 'carried' : measuredOf(found),
    weight: found === null ? null : weight,
    note: input.reason,
  })
  if (found !== null) {
    const basis = found.kind === 'mass' ? 'weighed' : 'counted'
    const estimated = found.kind === 'count' && found.estimated
    changeLot(writing, row.lot_id, { basis, estimated })
  }
  const after = quantityOf(lotOrRefuse(writing, row.lot_id, 'lotId'))
  return {
    change: { count: change.count, massMg: change.mass },
    balance: after,
    said: `Took stock of ${row.lot_number}: ${nothing ? 'nothing left' : after.words}`,
    undoable: true,
  }
}
