import type { Result } from '../../contract/contract.ts'
import { fold } from '../../domain/shared/fold.ts'
import { SoughtInTexts } from '../../domain/shared/names-in-text.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { namesOf } from './person-names.ts'
import { type TextOfBook, textsOfBook } from './person-traces.ts'
import { withholdingOf } from './withhold.ts'

const SHORTEST_NAME = 3
const MOST_NAMES = 200
const MOST_PLACES = 20
/** What stays here, or is left out of what goes out, whoever is named in it. */
const STAYS = new Set(['entry', 'draft', 'person', 'person_contact', 'person_change', 'collection'])

/**
 * First names and surnames of people in the book that stand by themselves in texts which may go out, each with where.
 *
 * They may be a variety's name or a word, so that only the keeper can say whom they mean; names of varieties are left.
 */
export function namesGoingOut(reading: Reading): Result<'person.list-names-in-texts'> {
  const masked = new Set(settingsOf(reading).maskedNames)
  const words = [...new Set([...namesOf(reading, 'everybody').flatMap(singleNames), ...masked])]
  const sought = new SoughtInTexts(words)
  const whole = withholdingOf(reading, { people: false, places: false }, [])
  const found = new Map(words.map((word) => [word, [] as TextOfBook[]]))
  for (const one of textsOfBook(
    reading,
    (table, column) => !STAYS.has(table) && !isPlantName(table, column),
  )) {
    const text = whole.text(one.text)
    const here = sought.places(text).map(({ start, end }) => fold(text.slice(start, end)))
    for (const word of new Set(here)) found.get(word)?.push({ ...one, text })
  }
  const names = [...found]
    .filter(([word, at]) => at.length > 0 || masked.has(word))
    .toSorted(([one], [other]) => one.localeCompare(other, 'en'))
  return {
    total: names.length,
    names: names.slice(0, MOST_NAMES).map(([name, at]) => ({
      name,
      masked: masked.has(name),
      total: at.length,
      places: at.slice(0, MOST_PLACES).map((one) => one.told(new SoughtInTexts([name]))),
    })),
  }
}

const isPlantName = (table: string, column: string) =>
  ['variety', 'variety_synonym', 'crop'].includes(table) && column !== 'story'

/** The words of a name that can name somebody alone: 'Ilka' and 'Brandt' of 'Ilka Brandt', not the 'of' between names. */
function singleNames(name: string): string[] {
  return name
    .split(/[\s,]+/)
    .filter((word) => /^\p{Lu}/u.test(word))
    .map(fold)
    .filter((word) => word.length >= SHORTEST_NAME && !word.includes(' '))
}
