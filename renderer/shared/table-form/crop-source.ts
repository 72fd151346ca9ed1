import { call } from '../client/call.ts'
import { type CropFound, matchingCrops } from './crop-letters.ts'
import type { SuggestionSource } from './use-suggestions.ts'

/** Crops by their everyday or botanical name. */
export const CROPS: SuggestionSource<CropFound> = {
  name: 'crops',
  find: async (text) => {
    const { crops } = await call('crop.list', {})
    return matchingCrops(crops, text).map((crop) => ({
      key: crop.cropId,
      name: crop.commonName,
      detail: [crop.species, crop.own ? 'a crop of your own' : '']
        .filter((words) => words !== '')
        .join(' · '),
      item: crop,
    }))
  },
}
