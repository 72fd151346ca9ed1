import type { Value } from '../../../db/contract/contract.ts'
import { type CropMatch, CropNames } from '../../../db/domain/crops/crop-names.ts'

export type CropFound = Value<'crop.list'>['crops'][number]

const MOST_OFFERED = 8

/** The crops that a text may mean, the likeliest first, with the name that each was found by. */
export function matchingCrops(crops: readonly CropFound[], text: string): readonly CropMatch<CropFound>[] {
  return new CropNames(crops).find(text).slice(0, MOST_OFFERED)
}
