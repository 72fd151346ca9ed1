import { fold } from '../shared/fold.ts'

const POISONOUS = 'Parts of it are poisonous: say so on the packet, and keep it from children and animals.'
const RULES = 'Local rules decide whether it may be grown or passed on: ask before you do.'

/**
 * Plants that seed is often given of and that hurt somebody or are ruled by law somewhere, by genus or species and by the
 * names people call them. From memory, surely not all: a plant that is not here is not harmless.
 */
const PLANTS: readonly { readonly names: readonly string[]; readonly caution: string }[] = [
  {
    names: ['papaver somniferum', 'opium poppy', 'bread seed poppy', 'breadseed poppy'],
    caution: `Opium poppy, also sold as bread seed poppy, is restricted in some places. ${RULES}`,
  },
  {
    names: ['cannabis', 'hemp', 'nicotiana', 'tobacco', 'erythroxylum', 'lophophora'],
    caution: `It is restricted in many places. ${RULES}`,
  },
  {
    names: [
      ...['ricinus', 'castor bean', 'castor oil', 'digitalis', 'foxglove', 'aconitum', 'monkshood'],
      ...['datura', 'thorn apple', 'brugmansia', 'hyoscyamus', 'henbane', 'atropa', 'abrus', 'colchicum'],
      ...['delphinium', 'larkspur', 'consolida', 'nerium', 'oleander', 'laburnum', 'convallaria', 'conium'],
      ...['lathyrus odoratus', 'sweet pea', 'lupinus', 'lupin', 'ipomoea', 'morning glory', 'euphorbia'],
    ],
    caution: `${POISONOUS} ${RULES}`,
  },
  {
    names: [
      ...['heracleum', 'giant hogweed', 'impatiens glandulifera', 'himalayan balsam', 'lythrum salicaria'],
      ...['fallopia japonica', 'reynoutria', 'japanese knotweed', 'buddleja', 'cytisus', 'ulex', 'cirsium'],
    ],
    caution: `It is listed as invasive or noxious in some places. ${RULES}`,
  },
]

/** A poppy of which nobody said which. */
const WHICH_POPPY: readonly string[] = ['poppy', 'poppies']

/**
 * The usual caution for a plant, by its everyday or botanical name; '' where none is known here.
 *
 * From memory, no source; it only reminds. Whole words count: 'sweet peas' is found, 'chickpea' is not.
 */
export function plantCaution(name: string, species: string): string {
  const words = ` ${fold(name)} ${fold(species)} `
  const called = (plant: string) => words.includes(` ${plant} `) || words.includes(` ${plant}s `)
  const found = PLANTS.find(({ names }) => names.some(called))
  return found?.caution ?? (WHICH_POPPY.includes(fold(name)) ? (PLANTS[0]?.caution ?? '') : '')
}
