import { fold } from '../../domain/shared/fold.ts'
import type { ListRow } from '../../exchange/list-row.ts'
import { type Message, message } from '../../messages/message.ts'
import type { ListGift } from './list-gift.ts'

export const LONGEST_NAME = 200
export const LONGEST_TERMS = 2_000
export const LONGEST_STORY = 20_000
/** The longest that a caution keeps of a treatment. */
const LONGEST_TREATMENT = 500

/** The other names in a cell, but those that are too long for a name. */
export function namesIn(cell: string): string[] {
  return partsOf(cell).filter((name) => name.length <= LONGEST_NAME)
}

function partsOf(cell: string): string[] {
  return cell
    .split(/[;,/|\n]/)
    .map((name) => name.trim())
    .filter((name) => name !== '')
}

/** What else is known of a row when its story is written. */
interface Settled {
  readonly day: { readonly words?: string }
  /** What the harvest says beyond its year, and the second amount that gave no weight; empty where nothing is left. */
  readonly harvest: string
  readonly amount: Message | string
  readonly donor: ListGift['donor']
}

/** Cells that may have no place elsewhere. */
type Untaken = 'donorTown' | 'hundredWeight' | 'ownNumber' | 'otherNames' | 'grownAt' | 'terms' | 'treated'

/** The story of a gift: its notes, and what of its other cells has no place elsewhere, so that nothing is lost. */
export function storyOf(
  row: ListRow,
  { day, harvest, amount, donor }: Settled,
  say: (told: Message) => string,
): string {
  const { cells, passport } = row
  const told = (field: Untaken, text = cells[field]) => say(message(`import.story.${field}`, { text }))
  const whole = (field: Untaken, most: number) => (cells[field].length > most ? told(field) : '')
  const longNames = partsOf(cells.otherNames).filter((name) => name.length > LONGEST_NAME)
  return [
    cells.note,
    passport.get('REMARKS') ?? '',
    day.words === undefined ? '' : say(message('import.story.received', { when: day.words })),
    harvest === '' ? '' : say(message('import.story.harvest', { text: harvest })),
    typeof amount === 'string' ? amount : say(amount),
    townIsKept(row, donor) ? '' : told('donorTown'),
    cells.sample !== '' && cells.hundredWeight !== '' ? told('hundredWeight') : '',
    passport.has('ACCENUMB') && cells.ownNumber !== '' ? told('ownNumber') : '',
    longNames.length === 0 ? '' : told('otherNames', longNames.join('; ')),
    whole('grownAt', LONGEST_NAME),
    whole('terms', LONGEST_TERMS),
    whole('treated', LONGEST_TREATMENT),
  ]
    .filter((part) => part !== '')
    .join('\n')
}

/** Whether the town of a row is that of its donor's record, or becomes it. */
function townIsKept({ cells }: ListRow, donor: ListGift['donor']): boolean {
  if (cells.donorTown === '') return true
  if (donor === null) return false
  return 'fresh' in donor || fold(donor.known.apart) === fold(cells.donorTown)
}
