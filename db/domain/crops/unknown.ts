import { type Message, message } from '../../messages/message.ts'
import type { CountedUnitName } from './counted-unit.ts'
import { isPiece, MONTHS_WITHOUT_FIGURE } from './pieces.ts'

/** What of a crop may be unknown; null where it is. */
export interface CropFigures {
  readonly commonName: string
  readonly species: string
  readonly hundredSeedWeightUg: number | null
  readonly packetSeeds: number | null
  readonly countedUnit: CountedUnitName
  readonly keepsMonths: number | null
  readonly matingSystem: string | null
  readonly storageYears: number | null
  /** Of the seed viability equation, as the file keeps them. */
  readonly viabilityConstants: string | null
  readonly federalMinimumPercent: number | null
  readonly stateMinimumPercent: number | null
}

/** Said wherever a number of seeds rests on no known weight. */
export function weightUnknown(crop: string): Message {
  return message('needs.weight-unknown', { crop })
}

/**
 * What is not known of a crop, a sentence each, with what the app does without it. Nothing is taken from another crop: what
 * stands in is what is usual for any plant, and is called so.
 */
export function unknownOf(crop: CropFigures): readonly Message[] {
  const { commonName } = crop
  return [
    ...(crop.species === '' ? [message('needs.crop.species')] : []),
    ...(crop.hundredSeedWeightUg === null ? [weightUnknown(commonName)] : []),
    ...(crop.packetSeeds === null ? [message('needs.crop.packet')] : []),
    ...(isPiece(crop.countedUnit) ? keepingUnknown(crop) : ageingUnknown(crop)),
  ]
}

function keepingUnknown({ keepsMonths }: CropFigures): readonly Message[] {
  return keepsMonths === null ? [message('pieces.keeps-unknown', { months: MONTHS_WITHOUT_FIGURE })] : []
}

function ageingUnknown(crop: CropFigures): readonly Message[] {
  const { federalMinimumPercent, stateMinimumPercent } = crop
  return [
    ...(crop.matingSystem === null ? [message('needs.crop.mating')] : []),
    ...(crop.storageYears === null
      ? [message(crop.viabilityConstants === null ? 'needs.crop.keeps' : 'needs.crop.keeps-years')]
      : []),
    ...(federalMinimumPercent === null && stateMinimumPercent === null ? [message('needs.crop.law')] : []),
  ]
}
