import { describe, expect, test } from 'vitest'
import {
  fillLetter,
  LETTER_FIELDS,
  type LetterFacts,
  shippedLetter,
  unknownFields,
} from '../../../db/domain/letters/letter-words.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const FACTS: LetterFacts = {
  donor: 'Zoë Brontë',
  gifts: 'Painted Quill and Hollow Lane Tall',
  numbers: 'HL26-0001 and HL26-0002',
  received: '14 March 2026',
  date: '15 March 2026',
  library: 'Quillhaven Seed Library',
  keeping: 'We keep it cool.',
  keeper: 'Odile Marsh',
  keepers: 'the keepers',
}
const SHIPPED_LETTER = saidInEnglish(shippedLetter())
const text = (...lines: string[]) => ({ kind: 'text', lines })

describe('a letter is filled in', () => {
  test('every field with its fact, in small letters or large, with spaces inside its braces or none', () => {
    for (const field of LETTER_FIELDS) {
      for (const typed of [`{${field}}`, `{ ${field} }`, `{${field.toUpperCase()}}`])
        expect(fillLetter(`It is ${typed}.`, FACTS)).toEqual([text(`It is ${FACTS[field]}.`)])
    }
  })

  test('the letter that the app brings along: each paragraph and the list in their places', () => {
    const parts = fillLetter(SHIPPED_LETTER, FACTS)
    expect(parts.map((part) => (part.kind === 'gifts' ? 'the list' : part.lines[0]?.slice(0, 12)))).toEqual([
      'Dear Zoë Bro',
      'Thank you fo',
      'the list',
      'We keep it c',
      'With warm th',
      'Odile Marsh',
    ])
    expect(parts.at(-1)).toEqual(text('Odile Marsh', 'Quillhaven Seed Library'))
    expect(unknownFields(SHIPPED_LETTER)).toEqual([])
  })

  test('a blank line ends a paragraph, more than one no more than that; a single break stays within it', () => {
    expect(fillLetter('\n\none\r\n  two  \n \n\n\t\nthree\n\n', FACTS)).toEqual([
      text('one', 'two'),
      text('three'),
    ])
    expect(fillLetter(' \n', FACTS)).toEqual([])
  })

  test('the list stands where {gifts} is alone on its line, and ends what stands before it', () => {
    expect(fillLetter('Your gifts:\n  { Gifts }\nwith thanks', FACTS)).toEqual([
      text('Your gifts:'),
      { kind: 'gifts' },
      text('with thanks'),
    ])
    for (const [before, after] of [
      ['Thank you for ', ''],
      ['', ' came'],
    ])
      expect(fillLetter(`${before}{gifts}${after}`, FACTS)).toEqual([text(`${before}${FACTS.gifts}${after}`)])
  })

  test('who is not named is left out on a line of its own, and is the keepers within a sentence', () => {
    const nobody = { ...FACTS, keeper: '' }
    expect(fillLetter('Yours,\n{keeper}\n{library}', nobody)).toEqual([text('Yours,', FACTS.library)])
    expect(fillLetter('{keeper} {donor}', nobody)).toEqual([text(FACTS.donor)])
    expect(fillLetter('{keeper}', nobody)).toEqual([])
    expect(fillLetter('{keeper} of it', nobody)).toEqual([text('the keepers of it')])
    expect(fillLetter('from {keeper}', FACTS)).toEqual([text('from Odile Marsh')])
  })

  test('another fact that is empty leaves its place in the sentence empty', () => {
    expect(fillLetter('On {date}:', { ...FACTS, date: '' })).toEqual([text('On :')])
  })

  test('what is filled in is not filled again, whatever a name holds', () => {
    expect(fillLetter('Dear {donor},', { ...FACTS, donor: '{library} $& $1' })).toEqual([
      text('Dear {library} $& $1,'),
    ])
  })
})

describe('a field that no letter knows', () => {
  test('stays as it was typed and is named, each once', () => {
    const words = '{doner} and { doner2 } and {doner}, {} {two words} {donor} {toString}'
    expect(unknownFields(words)).toEqual(['{doner}', '{ doner2 }', '{}', '{two words}', '{toString}'])
    expect(fillLetter('Dear {doner}!', FACTS)).toEqual([text('Dear {doner}!')])
  })

  test('ends with its line, and begins with its last brace', () => {
    expect(unknownFields('{one\ntwo}')).toEqual([])
    expect(unknownFields('{{donor}}')).toEqual([])
    expect(fillLetter('{{donor}}', FACTS)).toEqual([text('{Zoë Brontë}')])
  })
})
