import { fold } from '../../../db/domain/shared/fold.ts'
import { call } from '../client/call.ts'
import { type CropFound, matchingCrops } from './crop-letters.ts'
import type { SuggestionSource } from './use-suggestions.ts'

/** Crops by what people call them in one of four languages, or by their botanical name. */
export const CROPS: SuggestionSource<CropFound> = {
  name: 'crops',
  find: async (text) => {
    const { crops } = await call('crop.list', {})
    return matchingCrops(crops, text).map(({ crop, name }) => ({
      key: crop.cropId,
      name: crop.commonName,
      detail: [isTold(crop, name) ? '' : name, crop.species, crop.own ? 'a crop of your own' : '']
        .filter((words) => words !== '')
        .join(' · '),
      item: crop,
    }))
  },
}

/** Whether the name that a crop was found by can be read in its own names. */
function isTold({ commonName, species }: CropFound, name: string): boolean {
  return fold(`${commonName} ${species}`).includes(fold(name))
}

/** What to do where no crop was found, or none was typed. */
export function noCropFound(text: string): string {
  return text === ''
    ? 'Which crop is it? Type a few letters of what people call it, or of its botanical name.'
    : `No crop is known as ‘${text}’. Try another name of it, or choose with ↓ to add it as a crop of your own.`
}
