import { fold } from '../../domain/shared/fold.ts'
import { SoughtInTexts, waysToWrite } from '../../domain/shared/names-in-text.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Reading } from '../book/context.ts'

type Asked = readonly number[] | 'everybody'

/** Every value that some fields of a person's records ever had, or of everybody's, each once. */
function everHad(reading: Reading, ids: Asked, now: string, fields: readonly string[]): string[] {
  const only = (column: string) => (ids === 'everybody' ? '' : ` AND ${column} IN (${ids.join(', ')})`)
  const kept = prepared(reading.sqlite, `SELECT value FROM (${now}) WHERE value <> ''${only('person_id')}`)
    .pluck()
    .all() as string[]
  const changes = prepared(
    reading.sqlite,
    `SELECT before, after FROM person_change
     WHERE field IN (${fields.map((field) => `'${field}'`).join(', ')})${only('person_id')}`,
  )
    .raw()
    .all() as string[][]
  const earlier = changes.flat().map((json) => String(JSON.parse(json)))
  return [...new Set([...kept, ...earlier])].filter((value) => value !== '')
}

/** Every name that a person's records ever had or were credited by, or those of everybody, in all the ways they are written. */
export function namesOf(reading: Reading, ids: Asked): string[] {
  const now = `SELECT id AS person_id, name AS value FROM person UNION SELECT id, credit_as FROM person`
  return [...new Set(everHad(reading, ids, now, ['name', 'creditAs']).flatMap(waysToWrite))]
}

const contactOf = (reading: Reading, ids: Asked, field: 'email' | 'phone' | 'address') =>
  everHad(reading, ids, `SELECT person_id, ${field} AS value FROM person_contact`, [field])

/** Every address that they ever had, whole and its street by itself. */
export function addressesOf(reading: Reading, ids: Asked): string[] {
  const whole = contactOf(reading, ids, 'address')
  return [...whole, ...whole.flatMap(streetsOf)]
}

/** Words between a name and the town: Ada of Millbrook, Ada aus Millbrook. */
const BETWEEN = ['', 'of', 'from', 'in', 'at', 'von', 'aus', 'de', 'à']
const SHORTEST_WORD = 3
/** A shorter number is a weight or a year as well. */
const SHORTEST_PHONE = 6

/** What of a person is looked for in texts. */
export interface WhoIsSought {
  readonly ids: readonly number[]
  /** All of it, as it was once written. */
  readonly words: readonly string[]
  /** Speaks of this person wherever it stands. */
  readonly certain: SoughtInTexts
  /** Speaks of this person where only people can be meant: also names that are a plant's, or a word. */
  readonly amongPeople: SoughtInTexts
  /** May speak of this person, or of a plant or somebody else: parts of names. */
  readonly doubtful: SoughtInTexts
}

/**
 * What of a person is looked for: names now and before, names with the town, e-mail, telephone, address and street.
 *
 * A name of one word, and one that a variety or crop of the book has too, is certain only where people are meant.
 */
export function whoIsSought(reading: Reading, ids: readonly number[]): WhoIsSought {
  const names = namesOf(reading, ids)
  const plants = plantNames(reading)
  const isOwn = (name: string) =>
    fold(name).includes(' ') && !plants.some((plant) => plant.includes(` ${fold(name)}`))
  const words = partsOf(names)
  const towns = everHad(reading, ids, 'SELECT id AS person_id, town AS value FROM person', ['town'])
  const phones = contactOf(reading, ids, 'phone')
  const addresses = addressesOf(reading, ids)
  const certain = [
    ...names.filter(isOwn),
    ...towns.flatMap((town) =>
      [...names, ...words].flatMap((name) => BETWEEN.map((between) => `${name} ${between} ${town}`)),
    ),
    ...contactOf(reading, ids, 'email'),
    ...addresses.filter(isOwn),
  ]
  const long = phones.filter((phone) => phone.replace(/\D/g, '').length >= SHORTEST_PHONE)
  return {
    ids,
    words: [...names, ...words, ...addresses, ...phones, ...certain],
    certain: new SoughtInTexts(certain, long),
    amongPeople: new SoughtInTexts([...certain, ...names], long),
    doubtful: new SoughtInTexts([...names, ...words, ...addresses], phones),
  }
}

/** The words of names that can name somebody by themselves, with the -s of a possessive. */
export function partsOf(names: readonly string[]): string[] {
  const words = new Set(names.flatMap((name) => fold(name).split(' ')))
  return [...words].filter((word) => word.length >= SHORTEST_WORD).flatMap((word) => [word, `${word}s`])
}

/** The street of an address, with and without the number of the house: what stands before the first comma that holds letters. */
function streetsOf(address: string): string[] {
  const street = address.split(/[,;\n]/).find((part) => /\p{L}/u.test(part)) ?? ''
  return [street, street.replace(/\d+\s*\p{L}?(?!\p{L})/gu, '')]
}

/** The folded names of every variety and crop, a space before each. */
function plantNames(reading: Reading): string[] {
  const names = prepared(
    reading.sqlite,
    'SELECT name_folded FROM variety UNION SELECT name_folded FROM variety_synonym UNION SELECT name_folded FROM crop',
  )
    .pluck()
    .all() as string[]
  return names.map((name) => ` ${name}`)
}
