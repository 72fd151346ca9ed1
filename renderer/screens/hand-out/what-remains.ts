import type { LotRecord } from '../../../db/contract/stock-operations.ts'
import { aboutCount } from '../../../db/domain/amounts/in-words.ts'

/** What is known of a lot before an amount leaves it. */
export type BeforeOut = Pick<LotRecord, 'lotNumber' | 'quantity' | 'lotLiving' | 'stock'>

/** What would be left if this were handed out: foreseen for the table, decided by the collection when it is saved. */
export interface Remains {
  readonly enough: boolean
  readonly leftInLot: number
  /** The accession's stock with the amount gone, for its seed bar. */
  readonly stock: LotRecord['stock']
  readonly belowKeep: boolean
  readonly sentence: string
}

/**
 * What remains of a lot and its accession when `count` seeds leave it.
 *
 * `alsoOut` are seeds of the same lot that the visit lists already. The seeds that leave are taken to be as alive as
 * the lot.
 */
export function whatRemains(before: BeforeOut, count: number, alsoOut: number): Remains {
  const { quantity, stock } = before
  const out = count + alsoOut
  const enough = out <= quantity.count
  const leftInLot = Math.max(0, quantity.count - out)
  const livingOut = quantity.count === 0 ? 0 : Math.round((before.lotLiving * out) / quantity.count)
  const lowered = (seeds: number) => Math.max(0, seeds - livingOut)
  const after = {
    ...stock,
    living: lowered(stock.living),
    low: lowered(stock.low),
    high: lowered(stock.high),
    total: Math.max(0, stock.total - out),
  }
  return { enough, leftInLot, stock: after, belowKeep: after.living < stock.keep, sentence: inWords() }

  function inWords(): string {
    if (!enough) return `${before.lotNumber} holds ${quantity.words}: less than that.`
    const left = leftInLot === 0 ? 'nothing' : aboutCount(leftInLot, quantity.countDoubt)
    const living = aboutCount(after.living, 1)
    return `leaves ${left} in the lot; ${living} living ${stock.unit} of the ${stock.keep} to keep`
  }
}
