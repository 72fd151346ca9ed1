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
  readonly harvest: string
  /** The year of harvest; 0 where nobody knows it, as if it were the oldest. */
  readonly harvestYear: number
  /** What to be careful about, such as 'treated seed'; '' where nothing is. */
  readonly careful: string
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
    Number(a.careful !== '') - Number(b.careful !== '') ||
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
export function whyOffered(lot: OfferedLot): string {
  return `${lot.careful === '' ? '' : `${lot.careful}; `}${howItStands(lot)}`
}

function howItStands(lot: OfferedLot): string {
  const harvest = lot.harvest === '' ? 'harvest year unknown' : `harvest ${lot.harvest}`
  const as = offeredAs(lot)
  if (lot.test === null) return `${harvest}, not tested yet`
  const sprouted = `${percent(lot.test.sprouted / lot.test.tested)} sprouted in ${lot.test.year}`
  switch (as) {
    case 'tested-good':
    case 'untested':
      return `${harvest}, ${sprouted}`
    case 'tested-weak':
      return `${harvest}; only ${sprouted}`
    case 'aged':
      return `${harvest}; ${sprouted}, but by now about ${percent(lot.viability)} are alive`
    default:
      return assertNever(as, 'A lot on offer has no words yet')
  }
}

function percent(part: number): string {
  return `${Math.round(100 * part)} %`
}
