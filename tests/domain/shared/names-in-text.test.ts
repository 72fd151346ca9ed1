import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inEveryText, SoughtInTexts, waysToWrite } from '../../../db/domain/shared/names-in-text.ts'

const without = (text: string, ...names: readonly string[]) => new SoughtInTexts(names).replaced(text, '…')

test('a name is written as it is, or with the family name first', () => {
  expect(waysToWrite('Ada Fennimore')).toEqual(['Ada Fennimore', 'Fennimore, Ada', 'Fennimore Ada'])
  expect(waysToWrite('Jean Luc Aubert')[1]).toBe('Aubert, Jean Luc')
  expect(waysToWrite('Rose')).toEqual(['Rose'])
})

test('it is found whole, whatever its capitals and what stands around it', () => {
  expect(without('From ADA FENNIMORE’s wall; (Ada Fennimore)', 'Ada Fennimore')).toBe('From …’s wall; (…)')
  expect(without('Roseau, Primrose, Rose', 'Rose')).toBe('Roseau, Primrose, …')
  expect(without('Řehořová, Žofie Řehoř', 'Žofie Řehoř')).toBe('Řehořová, …')
})

test('of two names the longer is found first', () => {
  expect(without('Ada Fennimore Lane', 'Ada Fennimore', 'Ada Fennimore Lane')).toBe('…')
})

test('signs of a name have no meaning of their own', () => {
  expect(without('J. (Jo) Venn and J( Venn', 'J. (Jo) Venn')).toBe('… and J( Venn')
  expect(without('Jx Venn', 'J. Venn')).toBe('Jx Venn')
})

test('no name finds nothing', () => {
  expect(without('Ada', '')).toBe('Ada')
  expect(new SoughtInTexts([]).isIn('Ada')).toBe(false)
})

test('every way to write the letters of a name is found: capitals, accents, how they are encoded, line breaks', () => {
  const letters = fc.stringMatching(/^[a-zéèûüñßøłçœąčžA-ZÉÅ]{1,9}$/)
  const spelling = fc.constantFrom<(name: string) => string>(
    (name) => name.toUpperCase(),
    (name) => name.toLowerCase(),
    (name) => name.normalize('NFD'),
    (name) => name.normalize('NFD').replace(/\p{M}/gu, ''),
    (name) => name.replaceAll(' ', '\n'),
    (name) => name.replaceAll(' ', '-'),
  )
  fc.assert(
    fc.property(letters, letters, spelling, spelling, (given, family, one, other) => {
      expect(without(`(${one(other(`${given} ${family}`))}), said`, `${given} ${family}`)).toBe('(…), said')
    }),
  )
})

test('a number is found however it is grouped, and never within another', () => {
  const sought = new SoughtInTexts([], ['+44 555 0142-9'])
  for (const way of ['4455501429', '0044 (555) 01429', '+44-555-0142 9'])
    expect(sought.replaced(`call ${way}!`, '…'), way).toMatch(/^call \+?…!$/)
  for (const other of ['44555014291', '944 555 01429']) expect(sought.isIn(other), other).toBe(false)
})

test('within JSON the texts are changed and the structure never, however deep', () => {
  const change = (text: string) => without(text, 'Ada Fennimore')
  const draft = {
    'ada fennimore': ['Ada', 'Fennimore'],
    line: JSON.stringify({ note: 'from\nAda "Fennimore"' }),
  }
  expect(JSON.parse(inEveryText(JSON.stringify(draft), change))).toEqual({
    '…': ['Ada', 'Fennimore'],
    line: JSON.stringify({ note: 'from\n…"' }),
  })
  for (const same of ['{ "a" : 1.0 }', '"Ada said', '[1, 2'])
    expect(inEveryText(same, change), 'nothing found: not a byte changes').toBe(same)
})
