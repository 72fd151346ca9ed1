import { expect, test } from 'vitest'
import { NearNames } from '../../../db/domain/shared/near-names.ts'

const among = (...names: readonly string[]) => {
  const book = new NearNames<string>()
  for (const name of names) book.add(name, name)
  return book
}

test.each([
  ['a letter that is wrong', 'Ferry Lane Pink', 'Ferry Lane Pank'],
  ['a letter too many', 'Millpond', 'Milllpond'],
  ['a letter too few', 'Millpond', 'Milpond'],
  ['the first letter', 'Millpond', 'illpond'],
  ['the last letter', 'Millpond', 'Millpon'],
  ['two letters that changed places', 'Lantern', 'Lantren'],
  ['spaces', 'Widow Tarn', 'Widowtarn'],
  ['accents and capitals', 'Hrášek', 'HRASEK'],
  ['five letters, as few as a slip is looked for in', 'Amber', 'Ambor'],
])('%s is a slip', (_, known, typed) => {
  expect(among(known, 'Something Else').near(typed)).toEqual([known])
})

test.each([
  ['two slips', 'Millpond', 'Milpand'],
  ['a short name', 'Rosa', 'Rose'],
  ['a digit', 'Line 1', 'Line 2'],
  ['nothing typed', 'Rosa', ''],
])('%s is none', (_, known, typed) => {
  expect(among(known).near(typed)).toEqual([])
})

test('a short name is near itself, however its accents are written', () => {
  expect(among('Zoë').near('zoe')).toEqual(['Zoë'])
})

test('a name of digits only is near itself only', () => {
  expect(among('20261').near('20261')).toEqual(['20261'])
  expect(among('20261').near('20251')).toEqual([])
})

test('all that stands near is named, each once', () => {
  expect(among('Harrow Red', 'Harrow Rad', 'Harrow Rod', 'Quay Red').near('Harrow Rid')).toEqual([
    'Harrow Red',
    'Harrow Rad',
    'Harrow Rod',
  ])
  const book = new NearNames<number>()
  book.add('Lantern', 7)
  book.add('Lanterne', 7)
  expect(book.near('Lantern')).toEqual([7])
})

test('an empty name is near nothing', () => {
  expect(among('').near('')).toEqual([])
})
