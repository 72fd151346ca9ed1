import { refuse } from '../../contract/refusal.ts'
import { takeOut } from '../../domain/ledger/movement.ts'
import { amountOrRefuse, balanceOf, quantityOf, weightInForce } from '../book/amounts.ts'
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
  for (const row of rows) {
    changeLot(writing, row.lotId, { placeId: place.id })
    notePlace(writing, row.lotId, place.id, input.on)
  }
  const what = rows.length === 1 ? rows[0]?.lotNumber : `${rows.length} lots`
  return {
    place: place.path,
    ...previewMove(writing, input),
    said: `Moved ${what} to ${place.path}`,
    undoable: true,
  }
}

export const discardSeed: Writes<'lot.discard'> = (writing, input) => {
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  const balance = balanceOf(row)
  const line = { lotId: row.lotId, kind: 'discard', on: input.on, note: input.reason } as const
  if (input.amount === 'everything') {
    if (balance.count === 0 && balance.mass === 0)
      refuse('not-enough-seed', `${row.lotNumber} holds nothing already.`, { field: 'amount' })
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
  const left = quantityOf(lotOrRefuse(writing, row.lotId, 'lotId'), settingsOf(writing))
  return { left, said: `Threw seed of ${row.lotNumber} away; ${left.words} left`, undoable: true }
}

export const quarantineLot: Writes<'lot.quarantine'> = (writing, input) => {
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  changeLot(writing, row.lotId, { quarantineReason: input.reason })
  return { said: `${row.lotNumber} is in quarantine: ${input.reason}`, undoable: true }
}

export const releaseLot: Writes<'lot.release'> = (writing, input) => {
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  if (row.quarantineReason === null)
    refuse('not-in-quarantine', `${row.lotNumber} is not in quarantine.`, { field: 'lotId' })
  changeLot(writing, row.lotId, { quarantineReason: null })
  return { said: `Released ${row.lotNumber}: ${input.checked}`, undoable: true }
}
