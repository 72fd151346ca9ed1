import { type Message, message } from '../../messages/message.ts'
import type { CountedUnitName } from '../crops/counted-unit.ts'
import type { LotRole } from '../shared/closed-sets.ts'

/** A lot from which nothing can be sown as it stands. */
export interface LotNotSown {
  readonly lotNumber: string
  readonly seeds: number
  readonly role: LotRole
  /** Null: not in quarantine. */
  readonly quarantine: string | null
}

/** Why no seed of an accession can go out to be grown, lot by lot: '300 seeds of HL24-0001-A are in quarantine (mould)'. */
export function whyNoSeed(lots: readonly LotNotSown[], unit: CountedUnitName): readonly Message[] {
  const held = lots.filter(({ seeds }) => seeds > 0)
  return held.length === 0
    ? [message('season.no-seed-left', { unit })]
    : held.map((lot) => whereTheyAre(lot, unit))
}

function whereTheyAre(
  { lotNumber, seeds: count, role, quarantine }: LotNotSown,
  unit: CountedUnitName,
): Message {
  const lot = { seeds: { seeds: count, unit }, lot: lotNumber }
  // It is said within a sentence, and a keeper may have ended the reason as one.
  if (quarantine !== null)
    return message('season.lot-in-quarantine', { ...lot, reason: quarantine.replace(/[.\s]+$/, '') })
  switch (role) {
    case 'reference':
      return message('season.lot-reference', lot)
    case 'duplicate-elsewhere':
      return message('season.lot-elsewhere', lot)
    case 'working':
    case 'reserve':
      return message('season.lot-dead', lot)
  }
}
