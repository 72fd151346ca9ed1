import { FREEZES_SAFELY_TO, freezingAdvice } from '../domain/moisture/fit-for-freezing.ts'
import { containerOfLot } from '../queries/lot-climate.ts'
import type { Reading } from './context.ts'

interface StoredLot {
  readonly family: string
  /** The highest moisture that its last measurement leaves possible, percent of fresh weight; null: not measured. */
  readonly highPercent: number | null
  readonly freezes: boolean
}

/** Families whose seed weevils and moths like to eat in store. Common practice, no source. */
const EATEN_IN_STORE = new Set(['Fabaceae', 'Poaceae'])

/** Why a lot should not lie as it is where it does; empty where nothing speaks against it. */
export function storageCaution(reading: Reading, lotId: number, lot: StoredLot): string {
  return [...freezingCautions(lot), ...pestCautions(reading, lotId, lot)].join(' ')
}

/** Why seed should not be frozen yet. */
export function freezingCautions({ highPercent, freezes }: StoredLot): string[] {
  if (!freezes) return []
  switch (freezingAdvice(highPercent)) {
    case 'dry-enough':
      return []
    case 'too-moist':
      return [
        `Too moist to freeze: it may hold up to ${highPercent} % water. Frost can kill it: dry it to ${FREEZES_SAFELY_TO} % or less first.`,
      ]
    case 'not-known':
      return [
        `Its moisture is not known. Frost can kill seed above about ${FREEZES_SAFELY_TO} %: measure it first.`,
      ]
  }
}

function pestCautions(reading: Reading, lotId: number, { family, freezes }: StoredLot): string[] {
  const container = containerOfLot(reading.sqlite, lotId)
  if (freezes || container === null || container.pest_proof === 1 || !EATEN_IN_STORE.has(family)) return []
  return ['Weevils and moths like this seed, and what it is kept in does not keep them out.']
}
