import { refuse } from '../../contract/refusal.ts'
import { takeOut } from '../../domain/ledger/movement.ts'
import { message } from '../../messages/message.ts'
import type { LotRow } from '../../queries/lot-rows.ts'
import { amountOrRefuse, balanceOf, heldIn, weightInForce } from '../book/amounts.ts'
import { changeLot } from '../book/change-lot.ts'
import type { Writes } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { notePlace, placeOrRefuse } from '../book/places.ts'
import { settingsOf } from '../book/settings.ts'
import { refuseTooMuch } from '../book/too-much.ts'
import { writeMovement } from '../book/write-movement.ts'
import { previewMove } from '../storage/lot-storage.ts'

export const moveLots: Writes<'lot.move'> = (writing, input) => {
  const place = placeOrRefuse(writing, input.placeId, 'placeId')
  const rows = [...new Set(input.lotIds)].map((id, index) => lotOrRefuse(writing, id, `lotIds.${index}`))
  for (const [index, row] of rows.entries()) refuseElsewhere(row, `lotIds.${index}`)
  for (const row of rows) {
    changeLot(writing, row.lotId, { placeId: place.id })
    notePlace(writing, row.lotId, place.id, input.on)
  }
  const [only] = rows
  return {
    place: place.path,
    ...previewMove(writing, input),
    said:
      rows.length === 1 && only
        ? message('stock.moved-lot', { lot: only.lotNumber, place: place.path })
        : message('stock.moved-lots', { lots: rows.length, place: place.path }),
    undoable: true,
  }
}

/** A lot that others hold lies in no place here until it came home. */
function refuseElsewhere({ role, lotNumber: lot, heldBy: holder }: LotRow, field: string): void {
  if (role !== 'duplicate-elsewhere') return
  refuse('wrong-role', message('elsewhere.not-here', { lot, holder }), {
    field,
    todo: message('elsewhere.not-here-todo'),
  })
}

export const discardSeed: Writes<'lot.discard'> = (writing, input) => {
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  const balance = balanceOf(row)
  const line = { lotId: row.lotId, kind: 'discard', on: input.on, note: input.reason } as const
  if (input.amount === 'everything') {
    if (balance.count === 0 && balance.mass === 0)
      refuse('not-enough-seed', message('stock.holds-nothing', { lot: row.lotNumber }), { field: 'amount' })
    writeMovement(writing, {
      ...line,
      change: { count: -balance.count, mass: -balance.mass },
      measured: 'carried',
      weight: null,
    })
  } else {
    const { weight } = weightInForce(row)
    const out = takeOut(
      balance,
      amountOrRefuse(settingsOf(writing), input.amount, row.packetSeeds, 'amount'),
      weight,
    )
    if (out.kind === 'not-enough') refuseTooMuch(row, out, 'amount', settingsOf(writing))
    writeMovement(writing, { ...line, change: out.change, measured: out.measured, weight })
  }
  const left = heldIn(lotOrRefuse(writing, row.lotId, 'lotId'))
  const said = message('stock.threw-away', { lot: row.lotNumber, left: left.words })
  return { left, said, undoable: true }
}

export const quarantineLot: Writes<'lot.quarantine'> = (writing, input) => {
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  changeLot(writing, row.lotId, { quarantineReason: input.reason })
  const said = message('stock.quarantined', { lot: row.lotNumber, reason: input.reason })
  return { said, undoable: true }
}

export const releaseLot: Writes<'lot.release'> = (writing, input) => {
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  if (row.quarantineReason === null)
    refuse('not-in-quarantine', message('stock.not-in-quarantine', { lot: row.lotNumber }), {
      field: 'lotId',
    })
  changeLot(writing, row.lotId, { quarantineReason: null })
  const said = message('stock.released', { lot: row.lotNumber, checked: input.checked })
  return { said, undoable: true }
}
