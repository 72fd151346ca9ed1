import { fold } from '../../domain/shared/fold.ts'
import { type Message, message } from '../../messages/message.ts'
import { type ListBook, type ListCrop, type Named, withinCrop } from './list-book.ts'
import type { NewNames } from './list-new-names.ts'
import { type Choice, LEAVE_OUT, LEAVE_OUT_CHOICE, type ListQuestions } from './list-questions.ts'

/** What a name in a list turned out to stand for: something known, something new, nothing yet, or a row to leave out. */
export type Found<T> = { readonly known: T } | { readonly fresh: string } | 'open' | 'left-out'

/** What stands in a cell where nobody knows, folded. */
const UNKNOWN =
  /^(?:|unknown|not known|n a|none|nobody|anonymous|unbekannt|inconnu|desconocid[oa]|no se sabe|ningun[oa]|nadie|anonim[oa])$/
const MOST_CHOICES = 8

/** The crop that a cell names, asking where it is none of the table; where the cell is empty, the crop that the variety names. */
export function cropNamed(
  book: ListBook,
  questions: ListQuestions,
  row: number,
  cell: string,
  variety: string,
): ListCrop | 'open' | 'left-out' | null {
  const typed = cell === '' ? variety : cell
  const exact = onlyOf(book.cropNames.called(cell)) ?? (cell === '' ? cropWithin(book, variety) : undefined)
  if (exact !== undefined) return exact
  if (fold(typed) === '') return null
  const answer = questions.ask(row, `crop:${fold(typed)}`, () => ({
    about: 'crop',
    sentence:
      cell === ''
        ? message('import.which-crop-of', { variety })
        : message('import.which-crop', { crop: cell }),
    choices: [
      ...book.cropNames
        .find(typed)
        .slice(0, MOST_CHOICES)
        .map(({ crop }) => cropChoice(crop)),
      LEAVE_OUT_CHOICE,
    ],
  }))
  if (answer === null) return 'open'
  if (answer === LEAVE_OUT) return 'left-out'
  return book.crops.get(answer.slice('crop:'.length)) ?? 'open'
}

function cropChoice(crop: ListCrop): Choice {
  return { value: `crop:${crop.id}`, words: `${crop.commonName} (${crop.species})` }
}

function onlyOf<T>(found: readonly T[]): T | undefined {
  return found.length === 1 ? found[0] : undefined
}

/** Shorter names in another language may be part of a variety's: papa, col, lin. Common practice, no source. */
const SHORTEST_WITHIN = 5

/** The one crop that is named within a text, such as 'Brandy Vale tomato': by two words before by one. */
function cropWithin(book: ListBook, text: string): ListCrop | undefined {
  const words = fold(text).split(' ')
  const meant = (name: string) => {
    const crop = onlyOf(book.cropNames.called(name))
    const sure = name.length >= SHORTEST_WITHIN || fold(crop?.commonName ?? '').includes(name)
    return sure ? crop : undefined
  }
  const named = (names: readonly string[]) =>
    onlyOf([...new Set(names.map(meant).filter((crop) => crop !== undefined))])
  return named(words.slice(1).map((word, index) => `${words[index]} ${word}`)) ?? named(words)
}

/** The variety that a cell names within its crop, asking where one is spelt nearly so. */
export function varietyNamed(
  book: ListBook,
  questions: ListQuestions,
  row: number,
  crop: ListCrop,
  cell: string,
): Found<Named> {
  const full = withinCrop(crop.id, cell)
  const same = book.varieties.same.get(fold(full)) ?? []
  if (same.length === 1 && same[0] !== undefined) return { known: same[0] }
  const spelt = book.varieties.near.near(cell).filter(({ cropId }) => cropId === crop.id)
  const near = same.length > 1 ? same : spelt
  const asNew = () =>
    newName(book.brought.varieties, questions, row, {
      about: 'variety',
      group: crop.id,
      cell,
      apart: message('import.no-own-variety', { variety: cell }),
    })
  if (near.length === 0) return asNew()
  return settled(
    near,
    asNew,
    questions.ask(row, `variety:${crop.id}:${fold(cell)}`, () => ({
      about: 'variety',
      sentence: message('import.is-variety', { variety: cell, crop: crop.commonName }),
      choices: choicesOf(near, message('import.no-own-variety', { variety: cell })),
    })),
  )
}

/** Who a cell names, asking where somebody is spelt nearly so, or several are. Null: nobody is named. */
export function personNamed(
  book: ListBook,
  questions: ListQuestions,
  row: number,
  cell: string,
  town: string,
): Found<Named> | null {
  if (UNKNOWN.test(fold(cell))) return null
  const same = book.people.same.get(fold(cell)) ?? []
  const [only] = same
  const elsewhere = town !== '' && only !== undefined && only.apart !== '' && fold(only.apart) !== fold(town)
  if (same.length === 1 && only !== undefined && !elsewhere) return { known: only }
  const near = same.length > 0 ? same : book.people.near.near(cell)
  const who = { person: cell, placed: town === '' ? 'no' : 'yes', town }
  const asNew = () =>
    newName(book.brought.people, questions, row, {
      about: 'person',
      group: fold(town),
      cell,
      apart: message('import.no-other-person', who),
    })
  if (near.length === 0) return asNew()
  return settled(
    near,
    asNew,
    questions.ask(row, `person:${fold(`${cell} ${town}`)}`, () => ({
      about: 'person',
      sentence: message('import.is-person', who),
      choices: choicesOf(near, message('import.no-new-person', who)),
    })),
  )
}

/** The storage place that a cell names, asking where there is none of that name. Null: no place is named. */
export function placeNamed(
  book: ListBook,
  questions: ListQuestions,
  row: number,
  cell: string,
): Found<Named> | null {
  if (UNKNOWN.test(fold(cell))) return null
  const same = book.places.same.get(fold(cell)) ?? []
  if (same.length === 1 && same[0] !== undefined) return { known: same[0] }
  const near = same.length > 1 ? same : book.places.near.near(cell)
  const answer = questions.ask(row, `place:${fold(cell)}`, () => ({
    about: 'place',
    sentence: message('import.which-place', { place: cell }),
    choices: [
      ...near.slice(0, MOST_CHOICES).map(({ id, apart }) => ({
        value: `use:${id}`,
        words: message('import.in-place', { place: apart }),
      })),
      { value: 'new', words: message('import.in-new-place', { place: cell }) },
      { value: 'none', words: message('import.in-no-place') },
      LEAVE_OUT_CHOICE,
    ],
  }))
  return answer === 'none' ? null : settled(near, () => ({ fresh: cell }), answer)
}

function settled(near: readonly Named[], asNew: () => Found<Named>, answer: string | null): Found<Named> {
  if (answer === null) return 'open'
  if (answer === LEAVE_OUT) return 'left-out'
  const known = near.find(({ id }) => answer === `use:${id}`)
  return known === undefined ? asNew() : { known }
}

interface NewlyNamed {
  readonly about: 'variety' | 'person'
  /** Names are held against those of their group only. */
  readonly group: string
  readonly cell: string
  /** What it is if it is not the one spelt nearly so. */
  readonly apart: Message
}

/** A name that the book has not, asking where an earlier row of the same list spells one nearly so. */
function newName(
  names: NewNames,
  questions: ListQuestions,
  row: number,
  { about, group, cell, apart }: NewlyNamed,
): Found<Named> {
  const first = names.firstOf(group, cell)
  if (first !== null) return { fresh: first.name }
  const near = names.near(group, cell).slice(0, MOST_CHOICES)
  const [nearest] = near
  if (nearest === undefined) {
    names.addFirst(group, cell, row)
    return { fresh: cell }
  }
  const answer = questions.ask(row, `spelling:${about}:${group}:${fold(cell)}`, () => ({
    about,
    sentence: message('import.same-spelling', { name: cell, other: nearest.name, row: nearest.row }),
    choices: [
      ...near.map(({ name }) => ({ value: `as:${name}`, words: message('import.yes-spelt', { name }) })),
      { value: 'new', words: apart },
      LEAVE_OUT_CHOICE,
    ],
  }))
  if (answer === null) return 'open'
  if (answer === LEAVE_OUT) return 'left-out'
  const same = near.find(({ name }) => answer === `as:${name}`)
  if (same !== undefined) return { fresh: same.name }
  names.add(group, cell, row)
  return { fresh: cell }
}

function choicesOf(near: readonly Named[], fresh: Message): Choice[] {
  const whole = ({ name, apart }: Named) => (apart === '' ? name : `${name}, ${apart}`)
  return [
    ...near.slice(0, MOST_CHOICES).map((named) => ({
      value: `use:${named.id}`,
      words: message('import.yes-known', { name: whole(named) }),
    })),
    { value: 'new', words: fresh },
    LEAVE_OUT_CHOICE,
  ]
}
