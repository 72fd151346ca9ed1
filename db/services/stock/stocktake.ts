import { Refusal, refuse } from '../../contract/refusal.ts'
import type { Amount } from '../../domain/amounts/amount.ts'
import { measuredOf } from '../../domain/amounts/amount.ts'
import { type Change, stocktakeChange } from '../../domain/ledger/movement.ts'
import { message } from '../../messages/message.ts'
import type { LotRow } from '../../queries/lot-rows.ts'
import { amountOrRefuse, balanceOf, heldIn, weightInForce } from '../book/amounts.ts'
import { changeLot } from '../book/change-lot.ts'
import type { Reading, Reads, Writes, Writing } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { settingsOf } from '../book/settings.ts'
import { writeMovement } from '../book/write-movement.ts'

/** What was found in a jar, beside what the book says: null where the jar was empty. */
interface Finding {
  readonly row: LotRow
  readonly found: Amount | null
  readonly change: Change
}

function findingOf(reading: Reading, lotId: number, typed: string, field: string): Finding {
  const row = lotOrRefuse(reading, lotId, `${field}lotId`)
  const balance = balanceOf(row)
  if (typed === 'nothing')
    return { row, found: null, change: { count: 0 - balance.count, mass: 0 - balance.mass } }
  const found = amountOrRefuse(settingsOf(reading), typed, row.packetSeeds, `${field}found`)
  return { row, found, change: stocktakeChange(balance, found, weightInForce(row).weight) }
}

function writeFinding(writing: Writing, { row, found, change }: Finding, on: string, reason: string): void {
  writeMovement(writing, {
    lotId: row.lotId,
    kind: 'stocktake',
    on,
    change,
    measured: found === null ? 'carried' : measuredOf(found),
    weight: found === null ? null : weightInForce(row).weight,
    note: reason,
  })
  if (found === null) return
  const basis = found.kind === 'mass' ? 'weighed' : 'counted'
  changeLot(writing, row.lotId, { basis, estimated: found.kind === 'count' && found.estimated })
}

export const takeStock: Writes<'lot.record-count'> = (writing, input) => {
  const finding = findingOf(writing, input.lotId, input.found, '')
  writeFinding(writing, finding, input.on, input.reason)
  const balance = heldIn(lotOrRefuse(writing, input.lotId, 'lotId'))
  const lot = finding.row.lotNumber
  return {
    change: { count: finding.change.count, massMg: finding.change.mass },
    balance,
    said:
      finding.found === null
        ? message('stock.counted-nothing', { lot })
        : message('stock.counted', { lot, amount: balance.words }),
    undoable: true,
  }
}

export const previewStocktake: Reads<'stocktake.preview'> = (reading, input) => {
  return {
    lines: input.lines.map(({ lotId, found }, index) => {
      try {
        const { row, change } = findingOf(reading, lotId, found, `lines.${index}.`)
        return {
          lotId,
          book: heldIn(row),
          change: { count: change.count, massMg: change.mass },
          problem: null,
        }
      } catch (cause) {
        if (!(cause instanceof Refusal)) throw cause
        return { lotId, book: null, change: null, problem: cause.problem }
      }
    }),
  }
}

export const recordStocktake: Writes<'stocktake.record'> = (writing, input) => {
  const twice = input.lines.findIndex(
    ({ lotId }, index) => input.lines.findIndex((line) => line.lotId === lotId) < index,
  )
  if (twice >= 0) {
    refuse('named-twice', message('stock.lot-twice'), {
      field: `lines.${twice}.lotId`,
    })
  }
  const lines = input.lines.map(({ lotId, found }, index) => {
    const finding = findingOf(writing, lotId, found, `lines.${index}.`)
    writeFinding(writing, finding, input.on, input.reason)
    return {
      lotId,
      lotNumber: finding.row.lotNumber,
      change: { count: finding.change.count, massMg: finding.change.mass },
      balance: heldIn(lotOrRefuse(writing, lotId, `lines.${index}.lotId`)),
    }
  })
  const differing = lines.filter(({ change }) => change.count !== 0 || change.massMg !== 0).length
  return {
    lines,
    said: message('stock.counted-lots', { lots: lines.length, differing }),
    undoable: true,
  }
}
