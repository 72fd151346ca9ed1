import { type Message, message } from '../../messages/message.ts'
import { assertNever } from '../shared/assert-never.ts'

/** What tells whether a lot is to be handed out before another of its variety. */
export interface OfferedLot {
  /** Of its tests; null where it was never tested. */
  readonly test: { readonly sprouted: number; readonly tested: number; readonly year: string } | null
  /** The part alive by now, as its tests and its age tell. */
  readonly viability: number
  /** The part that must be alive. */
  readonly threshold: number
  /** In words, '' where nobody knows it. */
  readonly harvest: Message | string
  /** The year of harvest; 0 where nobody knows it, as if it were the oldest. */
  readonly harvestYear: number
  /** What to be careful about, each in a word or two. */
  readonly careful: readonly Message[]
}

export type OfferedAs = 'tested-good' | 'untested' | 'aged' | 'tested-weak'

/** How a lot stands: good or weak by its test, aged where the test was good and the seed no longer is, or untested. */
export function offeredAs({ test, viability, threshold }: OfferedLot): OfferedAs {
  if (test === null) return 'untested'
  if (viability >= threshold) return 'tested-good'
  return test.sprouted / test.tested < threshold ? 'tested-weak' : 'aged'
}

/** Seed without a caution first; then tested good lots, untested ones, weak ones; within each the oldest harvest first. */
export function oldestGoodLotFirst(a: OfferedLot, b: OfferedLot): number {
  return (
    Number(a.careful.length > 0) - Number(b.careful.length > 0) ||
    placeOf(a) - placeOf(b) ||
    a.harvestYear - b.harvestYear
  )
}

function placeOf(lot: OfferedLot): number {
  switch (offeredAs(lot)) {
    case 'tested-good':
      return 0
    case 'untested':
      return 1
    case 'aged':
    case 'tested-weak':
      return 2
  }
}

/** Why a lot stands where it does: what to be careful about, its harvest, its test, and what has become of it since. */
export function whyOffered(lot: OfferedLot): Message {
  const why = howItStands(lot)
  return lot.careful.length === 0
    ? why
    : message('withdrawal.why.careful', { cautions: { list: lot.careful }, why })
}

function howItStands(lot: OfferedLot): Message {
  const harvest =
    lot.harvest === ''
      ? message('withdrawal.why.harvest-unknown')
      : message('withdrawal.why.harvest', { harvest: lot.harvest })
  if (lot.test === null) return message('withdrawal.why.untested', { harvest })
  const { sprouted, tested, year } = lot.test
  const told = { harvest, sprouted: { part: sprouted / tested }, year }
  const as = offeredAs(lot)
  switch (as) {
    case 'tested-good':
    case 'untested':
      return message('withdrawal.why.good', told)
    case 'tested-weak':
      return message('withdrawal.why.weak', told)
    case 'aged':
      return message('withdrawal.why.aged', { ...told, alive: { part: lot.viability } })
    default:
      return assertNever(as, 'OfferedAs')
  }
}
