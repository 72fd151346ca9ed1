import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fold } from '../../../db/domain/shared/fold.ts'

describe('two spellings of one name fold to the same text', () => {
  test.each([
    ['Hrášek  ranný', 'hrasek ranny'],
    ['Hra\u0301s\u030cek', 'Hrášek'],
    ['LOUČENÍ', 'louceni'],
    ['Łan pszenicy', 'lan pszenicy'],
    ['Øl-ærter', 'ol aerter'],
    ['Grønkål', 'gronkal'],
    ['Đurđevka', 'durdevka'],
    ['Große Bohne', 'GROSSE BOHNE'],
    ['GROẞE BOHNE', 'große bohne'],
    ['Þorskurð', 'thorskurd'],
    ['Ħal Għaxaq', 'hal ghaxaq'],
    ['Œillette', 'oeillette'],
    ['İnce uzun', 'ince uzun'],
    ['ISPANAK', 'ıspanak'],
    ['Müller', 'muller'],
    ["Aunt Rubys' pea", 'aunt rubys pea'],
    ['Aunt Ruby’s pea', 'aunt rubys pea'],
    ['col·liflor', 'colliflor'],
    ['ﬁg', 'fig'],
    ['Ｐｅａ', 'pea'],
    ['red/white—bean (dry)', 'red white bean dry'],
    ['ΣΟΦΟΣ', 'σοφός'],
    ['Ρόδινο', 'ροδινο'],
    ['Ёлка', 'елка'],
    ['Йод', 'иод'],
  ])('%s is %s', (one, other) => {
    expect(fold(one)).toBe(fold(other))
    expect(fold(one)).not.toBe('')
  })
})

describe('other scripts keep their own letters', () => {
  test.each([
    ['Ρόδινο', 'ροδινο'],
    ['Капуста', 'капуста'],
    ['白菜', '白菜'],
    ['बैंगन 2', 'बैंगन 2'],
    ['ملوخية', 'ملوخية'],
  ])('%s', (text, folded) => {
    expect(fold(text)).toBe(folded)
  })
})

test('different names stay different', () => {
  const names = ['pea', 'peas', 'bea', 'пea', 'πea', 'pea 2', 'pe a', '']
  expect(new Set(names.map(fold)).size).toBe(names.length)
})

test('whatever is folded is trimmed, single-spaced, without accents, and folds to itself', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      const folded = fold(text)
      expect(folded).not.toMatch(/^ | $| {2}|[\u0300-\u0344'’]/u)
      expect(fold(folded)).toBe(folded)
    }),
    { numRuns: 5_000 },
  )
})

test('plain letters fold as they do beside others', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme-ascii' }), (text) => {
      expect(`e ${fold(text)}`.trim()).toBe(fold(`é ${text}`))
    }),
    { numRuns: 5_000 },
  )
})

test('case and kind of composition never matter', () => {
  const letters = fc.string({ unit: fc.constantFrom(...'aábcčďéěíňóřšťúůýžäöüßøæłđþ αβγσς абвёй') })
  fc.assert(
    fc.property(letters, (text) => {
      expect(fold(text.toUpperCase())).toBe(fold(text))
      expect(fold(text.normalize('NFD'))).toBe(fold(text))
    }),
    { numRuns: 1_000 },
  )
})

test('words fold one by one, however many there are', () => {
  const words = fc.array(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }), { maxLength: 30 })
  fc.assert(
    fc.property(words, (parts) => {
      const oneByOne = parts.map(fold).filter((part) => part !== '')
      expect(fold(parts.join(' '))).toBe(oneByOne.join(' '))
    }),
  )
})
