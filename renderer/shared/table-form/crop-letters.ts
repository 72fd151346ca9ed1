import type { Value } from '../../../db/contract/contract.ts'
import { fold } from '../../../db/domain/shared/fold.ts'

export type CropFound = Value<'crop.list'>['crops'][number]

/** The crops a few letters fit: first those with the letters for a word of their name, then those that begin with them. */
export function matchingCrops(crops: readonly CropFound[], text: string): readonly CropFound[] {
  const letters = fold(text)
  const rank = (crop: CropFound) => {
    const name = fold(crop.commonName)
    if (` ${name} `.includes(` ${letters} `)) return 0
    if (name.startsWith(letters)) return 1
    if (name.includes(` ${letters}`)) return 2
    return name.includes(letters) || fold(crop.species).includes(letters) ? 3 : NO_FIT
  }
  return crops
    .filter((crop) => rank(crop) < NO_FIT)
    .toSorted(
      (a, b) =>
        rank(a) - rank(b) ||
        a.commonName.length - b.commonName.length ||
        a.commonName.localeCompare(b.commonName),
    )
    .slice(0, 8)
}

const NO_FIT = 4
