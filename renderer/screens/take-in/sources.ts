import type { Value } from '../../../db/contract/contract.ts'
import { fold } from '../../../db/domain/shared/fold.ts'
import { call } from '../../shared/client/call.ts'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'

type VarietyFound = Value<'variety.search'>['varieties'][number]
type CropFound = Value<'crop.list'>['crops'][number]

/** Varieties by any of their names. */
export const VARIETIES: SuggestionSource<VarietyFound> = {
  name: 'varieties',
  find: async (text) => {
    const { varieties } = await call('variety.search', { text, limit: 8 })
    return varieties.map((variety) => ({
      key: String(variety.varietyId),
      name: variety.name,
      detail: [variety.cropName, ...(variety.matched === '' ? [] : [`also called ${variety.matched}`])].join(
        ' · ',
      ),
      item: variety,
    }))
  },
}

/** Crops by their everyday or botanical name. */
export const CROPS: SuggestionSource<CropFound> = {
  name: 'crops',
  find: async (text) => {
    const { crops } = await call('crop.list', {})
    return matchingCrops(crops, text).map((crop) => ({
      key: crop.cropId,
      name: crop.commonName,
      detail: crop.species,
      item: crop,
    }))
  },
}

/** The crops a few letters fit, those whose everyday name begins with them first. */
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
    .toSorted((a, b) => rank(a) - rank(b) || a.commonName.localeCompare(b.commonName))
    .slice(0, 8)
}
