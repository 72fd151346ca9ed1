import { countInWords, type Manner } from '../amounts/in-words.ts'
import type { CountedUnit } from '../crops/counted-unit.ts'

/** A lot from which nothing can be sown as it stands. */
export interface LotNotSown {
  readonly lotNumber: string
  readonly seeds: number
  readonly role: 'working' | 'reserve' | 'reference' | 'duplicate-elsewhere'
  /** Null: not in quarantine. */
  readonly quarantine: string | null
}

/** Why no seed of an accession can go out to be grown, lot by lot: '300 seeds of HL24-0001-A are in quarantine: mould'. */
export function noSeedInWords(lots: readonly LotNotSown[], unit: CountedUnit, manner: Manner): string {
  const held = lots.filter(({ seeds }) => seeds > 0)
  if (held.length === 0) return `no ${unit.one} of it is left here`
  return held
    .map((lot) => `${countInWords(lot.seeds, unit, manner)} of ${lot.lotNumber} ${whereTheyAre(lot)}`)
    .join('; ')
}

function whereTheyAre({ role, quarantine }: LotNotSown): string {
  // It is said within a sentence, and a keeper may have ended the reason as one.
  if (quarantine !== null) return `are in quarantine: ${quarantine.replace(/[.\s]+$/, '')}`
  switch (role) {
    case 'reference':
      return 'are the reference sample, which is not sown without a reason'
    case 'duplicate-elsewhere':
      return 'are kept elsewhere'
    case 'working':
    case 'reserve':
      return 'are thought to be dead'
  }
}
