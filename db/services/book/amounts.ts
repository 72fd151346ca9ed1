import type { Quantity } from '../../contract/fields.ts'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import type { Amount } from '../../domain/amounts/amount.ts'
import { decimalMark, type Manner, toFigures } from '../../domain/amounts/in-words.ts'
import { milligrams } from '../../domain/amounts/mass.ts'
import { readAmount } from '../../domain/amounts/read-amount.ts'
import { seedCount } from '../../domain/amounts/seed-count.ts'
import type { Balance } from '../../domain/ledger/movement.ts'
import {
  DOUBT_OF_A_GUESS,
  gramsPerHundred,
  type HundredSeedWeight,
  hundredSeedWeight,
  relativeDoubt,
  WEIGHT_WITHOUT_FIGURES,
  type WeightBasis,
} from '../../domain/weights/hundred-seed-weight.ts'
import { type Message, message } from '../../messages/message.ts'
import type { LifeRow, LotRow } from '../../queries/lot-rows.ts'

/** The hundred-seed weight in force for a lot and where it comes from. */
export function weightInForce(row: Pick<LifeRow, 'weightUg' | 'cropWeightUg'>): {
  weight: HundredSeedWeight
  basis: WeightBasis
} {
  if (row.weightUg !== null) return { weight: hundredSeedWeight(row.weightUg), basis: 'measured' }
  return {
    weight: cropWeight(row.cropWeightUg),
    basis: row.cropWeightUg === null ? 'guess' : 'crop-default',
  }
}

/** A crop's typical hundred-seed weight. */
export function cropWeight(micrograms: number | null): HundredSeedWeight {
  return micrograms === null ? WEIGHT_WITHOUT_FIGURES : hundredSeedWeight(micrograms)
}

/** Reads a typed amount or refuses with what to type instead, naming the field it stands in. */
export function amountOrRefuse(
  manner: Manner,
  typed: string,
  packetSeeds: number | null,
  field: string,
): Amount {
  const read = readAmount(typed, { packetSeeds, decimalMark: decimalMark(manner) })
  switch (read.kind) {
    case 'amount':
      return read.amount
    case 'ask':
      return refuse('amount-unclear', read.question, {
        field,
        todo: message('amount.choose-meant'),
        choices: read.choices.map(({ told }) => told),
      })
    case 'unreadable':
      return refuse('amount-unreadable', read.because, { field })
  }
}

/** How far the count of a lot is to be trusted, as a part of it. */
export function countDoubt(row: LifeRow): number {
  if (row.estimated === 1) return DOUBT_OF_A_GUESS
  if (row.basis === 'counted') return 0
  if (row.weightPooledDoubt !== null) return row.weightPooledDoubt
  const { weight, basis } = weightInForce(row)
  const sample = {
    replicates: row.weightReplicates ?? 0,
    seedsCounted: row.weightSeeds ?? 0,
    coefficientOfVariation: row.weightCv,
  }
  return relativeDoubt(basis, weight, sample, plausibleBand(row))
}

/** The plausible band of a crop's hundred-seed weight in grams, or null where the table has none. */
export function plausibleBand(row: {
  readonly plausibleLowG: number | null
  readonly plausibleHighG: number | null
}): readonly [number, number] | null {
  if (row.plausibleLowG === null || row.plausibleHighG === null) return null
  return [row.plausibleLowG, row.plausibleHighG]
}

/** What a lot holds, as the contract shows it, to be told in any language. */
export function heldIn(row: LotRow): Untold<Quantity> {
  return amountOf(balanceOf(row), countDoubt(row), row)
}

/** An amount of a lot's seed, as the contract shows it, to be told in any language. */
export function amountOf(balance: Balance, doubt: number, row: Held): Untold<Quantity> {
  const { count, mass: massMg } = balance
  return {
    count,
    massMg,
    weighed: row.basis === 'weighed',
    countDoubt: doubt,
    words: amountTold(balance, doubt, row),
  }
}

/** Both numbers of an amount of a lot's seed; no number of seeds where it would be a mere guess. */
export function amountTold(balance: Balance, doubt: number, row: Held): Message {
  const { countedUnit: unit } = row
  const about = balance.count * doubt >= 0.5
  const count = about ? toFigures(balance.count, doubt > 0.1 ? 2 : 3) : balance.count
  if (row.basis !== 'weighed') return message(about ? 'amount.seeds-about' : 'amount.seeds', { count, unit })
  const mass = { mg: balance.mass, about: 'where-rounded' } as const
  return isGuess(balance, doubt, row)
    ? message('amount.mass-alone', { mass, unit })
    : message(about ? 'amount.held-about' : 'amount.held', { count, unit, mass })
}

type Held = Pick<LotRow, 'basis' | 'countedUnit' | 'weightUg' | 'cropWeightUg'>

/** Whether the number of seeds rests on no known weight. */
function isGuess({ count }: Balance, doubt: number, row: Held): boolean {
  return doubt > 0 && count > 0 && weightInForce(row).basis === 'guess'
}

/** The kept balance of a lot. */
export function balanceOf(row: LotRow): Balance {
  return { count: seedCount(row.balanceCount), mass: milligrams(row.balanceMassMg) }
}

/** Grams per hundred seeds to four figures, as a message gives them. */
export function gramsTold(weight: HundredSeedWeight): number {
  return Number(gramsPerHundred(weight).toPrecision(4))
}
