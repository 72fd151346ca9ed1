import { type Message, message } from '../../messages/message.ts'
import { fold } from '../shared/fold.ts'
import plants from './plants.json' with { type: 'json' }

/**
 * Plants that seed is often given of and that hurt somebody or are ruled by law somewhere, by genus or species and by the
 * names people call them in the languages shipped, folded. From memory, surely not all: a plant that is not there is not
 * harmless.
 */
const KINDS = ['opium-poppy', 'restricted', 'poisonous', 'invasive'] as const

/**
 * The usual caution for a plant, by its everyday or botanical name; null where none is known here.
 *
 * From memory, no source; it only reminds. Whole words count: 'sweet peas' is found, 'chickpea' is not. A poppy of which nobody
 * said which may be the one that is restricted.
 */
export function plantCaution(name: string, species: string): Message | null {
  const words = ` ${fold(name)} ${fold(species)} `
  const called = (plant: string) => words.includes(` ${plant} `) || words.includes(` ${plant}s `)
  const found = KINDS.find((kind) => plants[kind].some(called))
  if (found !== undefined) return message(`plant-caution.${found}`)
  return plants['unclear-poppy'].includes(fold(name)) ? message('plant-caution.opium-poppy') : null
}
