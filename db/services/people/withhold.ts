import { withoutContact } from '../../domain/shared/contact-shapes.ts'
import { fold } from '../../domain/shared/fold.ts'
import { inEveryText, SoughtInTexts, waysToWrite } from '../../domain/shared/names-in-text.ts'
import { DESCRIPTORS } from '../../exchange/mcpd-table.ts'
import { type Message, message } from '../../messages/message.ts'
import { limitsOfAccessions } from '../../queries/gift-limits.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Kept, WholeTable } from '../../queries/whole-tables.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { addressesOf, namesOf } from './person-names.ts'

/** What is left out of what goes out. */
export interface Withheld {
  readonly people: boolean
  readonly places: boolean
}

type Row = Record<string, Kept>
type Change = (row: Row) => Row | null

/** Tables that say how to reach a person, or what was changed of them: their rows stay here. */
const OF_PEOPLE = new Set(['person_contact', 'person_change'])
/** Names in these are those of plants, though some remember a person. */
const OF_PLANTS = new Set(['variety', 'variety_synonym', 'crop'])
const PERSONAL = new Set(DESCRIPTORS.filter((one) => one.personal_data).map(({ code }) => code))
const PLACED = new Set(DESCRIPTORS.filter((one) => one.sensitive).map(({ code }) => code))

/** What rows are known by and named by: no text that anybody wrote. */
const IDENTITIES = new Set(['number', 'bare', 'series', 'key', 'uuid', 'digest', 'input_digest'])

/** What is asked for beside the seed. */
interface Asked {
  readonly people: boolean
  readonly places: boolean
}

/** What leaves out what was not asked for, by the names of everybody in the book, of its keeper, and those asked for. */
export function withholdingOf(
  reading: Reading,
  asked: Asked,
  maskedNames: readonly string[] = settingsOf(reading).maskedNames,
  instead: Instead = IN_ENGLISH,
): Withholding {
  return new Withholding(
    { people: !asked.people, places: !asked.places },
    [
      ...namesOf(reading, 'everybody'),
      ...addressesOf(reading, 'everybody').filter((address) => address.trim().includes(' ')),
      ...namedByLists(reading),
      ...waysToWrite(settingsOf(reading).keeper),
      ...maskedNames,
    ],
    instead,
  )
}

/** What leaves out people and places of what anybody may read, with what stands for them told by `say`. */
export function withholdingForAll(reading: Reading, say: (told: Message) => string): Withholding {
  return withholdingOf(reading, { people: false, places: false }, undefined, insteadOfPeople(say))
}

/** Collectors, breeders and donors whom only lists name: they have no record, and are people all the same. */
function namedByLists(reading: Reading): string[] {
  const values = prepared(reading.sqlite, 'SELECT DISTINCT code, value FROM accession_passport').raw().all()
  return (values as [string, string][])
    .filter(([code]) => /NAME$/.test(code) && PERSONAL.has(code))
    .flatMap(([, value]) => value.split(';').map((name) => name.trim()))
    .filter((name) => name.includes(' '))
    .flatMap(waysToWrite)
}

/** What stands where somebody was named, and where it was said how they are reached. */
interface Instead {
  readonly somebody: string
  readonly contact: string
}

/** In files whose readers are other programs. */
const IN_ENGLISH: Instead = { somebody: 'somebody', contact: '(contact left out)' }

/** What stands instead of people in what others read, in their language. */
function insteadOfPeople(say: (told: Message) => string): Instead {
  return { somebody: say(message('amount.somebody')), contact: say(message('people.contact-left-out')) }
}

/** What is left out of a file that goes out, sentence by sentence. */
export function withheldOf({ sqlite }: Reading, { people, places }: Asked): Message[] {
  const isUnpublished = [...limitsOfAccessions(sqlite, 'all').values()].some(
    ({ publishStory, publishName }) => !publishStory || !publishName,
  )
  return [
    message(people ? 'people.withheld-none' : 'people.withheld-people'),
    ...(places ? [] : [message('people.withheld-places')]),
    ...(isUnpublished ? [message('terms.withheld')] : []),
  ]
}

/** Rows without the people, or without the exact places, that they tell of. Everything that names a row still does. */
export class Withholding {
  readonly #withheld: Withheld
  readonly #names: SoughtInTexts
  readonly #instead: Instead

  /** `names` are all that people in the book are called, in every way it is written. */
  constructor(withheld: Withheld, names: readonly string[], instead: Instead = IN_ENGLISH) {
    this.#instead = instead
    this.#withheld = withheld
    this.#names = new SoughtInTexts(names.filter((name) => name.length > 2))
  }

  rows(table: WholeTable, rows: readonly Kept[][]): Kept[][] {
    const { people, places } = this.#withheld
    const changes = [...(people ? this.#personal(table.name) : []), ...(places ? placed(table.name) : [])]
    if (changes.length === 0) return rows.map((row) => [...row])
    return rows.flatMap((cells) => {
      let row: Row | null = Object.fromEntries(
        table.columns.map(({ name }, index) => [name, cells[index] ?? null]),
      )
      for (const change of changes) row = row === null ? null : change(row)
      return row === null ? [] : [table.columns.map(({ name }) => (row as Row)[name] ?? null)]
    })
  }

  /** A text in which nobody of the book is named or reached, unless people were asked for. */
  text(text: string): string {
    if (!this.#withheld.people) return text
    const { somebody, contact } = this.#instead
    return inEveryText(text, (part) => withoutContact(this.#names.replaced(part, somebody), contact))
  }

  #personal(table: string): Change[] {
    if (OF_PEOPLE.has(table)) return [() => null]
    if (table === 'person')
      return [
        (row) => {
          const name = `Person ${row['id']}`
          return { ...row, name, name_folded: fold(name), town: '', credit_as: '', note: '' }
        },
      ]
    if (table === 'entry_text') return [(row) => ({ ...row, salt: '' })]
    if (table === 'collection') return [(row) => ({ ...row, keeper: '', masked_names: '[]' })]
    if (table === 'entry') return [(row) => ({ ...row, said: row['operation'] ?? '', answer: '{}' })]
    if (table === 'accession_passport')
      return [(row) => (PERSONAL.has(String(row['code'])) ? null : row), (row) => this.#unnamed(row)]
    return [(row) => ({ ...this.#unnamed(row), ...(OF_PLANTS.has(table) ? plantNamesOf(row) : {}) })]
  }

  /** A row whose texts name nobody of the book any more. */
  #unnamed(row: Row): Row {
    return Object.fromEntries(
      Object.entries(row).map(([column, value]) => [
        column,
        typeof value === 'string' && !IDENTITIES.has(column) ? this.text(value) : value,
      ]),
    )
  }
}

/** What a plant is called, as it stands: it may remember a person. */
function plantNamesOf(row: Row): Row {
  return Object.fromEntries(Object.entries(row).filter(([column]) => column !== 'story'))
}

function placed(table: string): Change[] {
  if (table === 'growing_site')
    return [
      (row) => ({
        ...row,
        name: `Garden ${row['id']}`,
        note: '',
        latitude: null,
        longitude: null,
        east_m: null,
        north_m: null,
      }),
    ]
  if (table === 'accession' || table === 'lot') return [(row) => ({ ...row, grown_at: '' })]
  if (table === 'accession_passport') return [(row) => (PLACED.has(String(row['code'])) ? null : row)]
  return []
}
