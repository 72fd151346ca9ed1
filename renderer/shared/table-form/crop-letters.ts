import type { Value } from '../../../db/contract/contract.ts'
import { fold } from '../../../db/domain/shared/fold.ts'

export type CropFound = Value<'crop.list'>['crops'][number]

/** The crops a few letters fit, those whose everyday name begins with them first, the shorter first. */
export function matchingCrops(crops: readonly CropFound[], text: string): readonly CropFound[] {
  const letters = fold(text)
  const rank = (crop: CropFound) => {
    const name = fold(crop.commonName)
    if (name.startsWith(letters)) return 0
    if (name.includes(` ${letters}`)) return 1
    return name.includes(letters) || fold(crop.species).includes(letters) ? 2 : 3
  }
  return crops
    .filter((crop) => rank(crop) < 3)
    .toSorted(
      (a, b) =>
        rank(a) - rank(b) ||
        a.commonName.length - b.commonName.length ||
        a.commonName.localeCompare(b.commonName),
    )
    .slice(0, 8)
}
