import { createElement } from 'react'
import { fold } from '../../../db/domain/shared/fold.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { call } from '../client/call.ts'
import { CropDetail } from './crop-detail.tsx'
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
      detail: createElement(CropDetail, { crop, foundBy: isTold(crop, name) ? '' : name }),
      item: crop,
    }))
  },
}

/** Whether the name that a crop was found by can be read in its own names. */
function isTold({ commonName, species }: CropFound, name: string): boolean {
  return fold(`${commonName} ${species}`).includes(fold(name))
}

/** What to do where no crop was found, or none was typed. */
export function noCropFound(typed: string): Message {
  return typed === '' ? message('table.which-crop') : message('table.no-crop', { typed })
}
