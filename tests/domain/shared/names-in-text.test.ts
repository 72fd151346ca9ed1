import { expect, test } from 'vitest'
import { anyOf, waysToWrite } from '../../../db/domain/shared/names-in-text.ts'

const without = (text: string, ...names: readonly string[]) => {
  const sought = anyOf(names)
  return sought === null ? text : text.replace(sought, '…')
}

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

test('what has a meaning in patterns has none in a name', () => {
  expect(without('J. (Jo) Venn and J( Venn', 'J. (Jo) Venn')).toBe('… and J( Venn')
  expect(without('Jx Venn', 'J. Venn')).toBe('Jx Venn')
})

test('no name finds nothing', () => {
  expect(anyOf([])).toBeNull()
  expect(anyOf([''])).toBeNull()
})
