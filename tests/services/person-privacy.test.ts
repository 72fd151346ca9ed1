import { readFileSync } from 'node:fs'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let book: TemporaryCollection
beforeEach(async () => {
  book = await aCollection()
})
afterEach(() => book.remove())

const SECRETS = ['Ilka', 'Brandt', 'ilka@example.org', '555 0142', '3 Ferry Lane', 'Millbrook', 'likes tea']

/** Somebody who gave, took, was renamed, joined with another record and is written of in a story and a draft. */
async function somebody() {
  const newPerson = {
    name: 'Ilka Brandt',
    town: 'Millbrook',
    email: 'ilka@example.org',
    phone: '555 0142',
    address: '3 Ferry Lane',
    note: 'likes tea',
    creditAs: 'Ilka of Millbrook',
    mayWrite: true,
  }
  const { personId, taken } = await book.call('intake.record', {
    donor: { newPerson },
    receivedOn: TODAY,
    gifts: [aGift({ story: 'Grown by Ilka Brandt since 1950.' })],
  })
  if (personId === null) throw new Error('Nobody was made')
  const lotId = taken[0]?.lotId ?? 0
  const line = { lotId, amount: '20 seeds' }
  await book.call('withdrawal.record', { person: { personId }, on: TODAY, lines: [line] })
  await book.call('person.update', { personId, name: 'Ilka Brandt-Reed', phone: '555 0142 9' })
  const other = await book.call('person.create', { name: 'Brandt Ilka', phone: '555 0142' })
  await book.call('person.join', { keepId: personId, joinId: other.personId })
  await book.call('draft.keep', { draftId: 'a-draft-01', kind: 'take-in', text: '{"donor":"Ilka Brandt"}' })
  return { personId, lotId }
}

it('exports every row that names somebody, of all their records', async () => {
  const { personId } = await somebody()
  const { text, fileName } = await book.call('person.export', { personId })
  expect(fileName).toMatch(/\.json$/)
  const { held } = JSON.parse(text)
  expect(held.person).toHaveLength(2)
  for (const part of ['person_contact', 'person_change', 'accession', 'withdrawal']) {
    expect(
      Object.keys(held).some((name) => name.startsWith(`${part} by`)),
      part,
    ).toBe(true)
  }
  for (const secret of SECRETS) expect(text).toContain(secret)
})

it('erases who somebody was from every byte of the file, and keeps what they gave and took', async () => {
  const { personId, lotId } = await somebody()
  const before = await book.call('lot.get', { lotId })
  const erased = await book.call('person.erase', { personId })
  expect(erased).toMatchObject({ undoable: false, said: `Erased who Former person 000${personId} was` })
  const after = await book.call('lot.get', { lotId })
  expect(after.quantity).toEqual(before.quantity)
  expect(after.ledger.map(({ count, massMg }) => [count, massMg])).toEqual(
    before.ledger.map(({ count, massMg }) => [count, massMg]),
  )
  const record = await book.call('person.get', { personId })
  expect(record).toMatchObject({ town: '', email: '', phone: '', address: '', note: '', mayWrite: false })
  expect(record.gave).toHaveLength(1)
  expect(record.took).toHaveLength(1)
  expect((await book.call('collection.check', {})).findings).toEqual([])
  expect((await book.call('lot.list', { text: 'ilka' })).total, 'the search has forgotten the name').toBe(0)
  const bytes = readFileSync(book.collection.file, 'latin1')
  for (const secret of SECRETS) expect(bytes.includes(secret), secret).toBe(false)
})

it('erases the name from what a list said, from an unfinished list and from the lines of the ledger', async () => {
  const { personId, lotId } = await somebody()
  const { personId: rose } = await book.call('person.create', { name: 'Rosalind' })
  await book.call('person.create', { name: 'Ilka Brandtner' })
  const content = Buffer.from('Crop;Variety;Amount\nBean;Ferry Pole;50 g\n').toString('base64')
  await book.call('list.take-in', { fileName: 'beans of Ilka Brandt.csv', content })
  const keep = book.collection.sqlite.prepare(
    'INSERT INTO accession_passport (accession_id, code, value, entry_id) SELECT max(id), ?, ?, entry_id FROM accession',
  )
  keep.run('COLLNAME', 'Brandt, Ilka')
  keep.run('DONORNAME', 'Rosalind')
  keep.run('REMARKS', 'ACCENAME:told by ILKA BRANDT')
  const text = JSON.stringify({ rows: [{ donor: 'Ilka Brandt', note: 'for "Ilka Brandt"' }] })
  await book.call('draft.keep', { draftId: 'a-draft-02', kind: 'paper-sheet', text })
  await book.call('lot.take-stock', { lotId, on: TODAY, found: '90 seeds', reason: 'Ilka Brandt counted' })
  const notes = () =>
    book.collection.sqlite.prepare("SELECT note FROM movement WHERE note LIKE '%counted'").pluck()
  expect(notes().all()).toEqual(['Ilka Brandt counted'])
  const passport = () =>
    book.collection.sqlite.prepare('SELECT code, value FROM accession_passport').raw().all()
  expect(JSON.stringify(passport())).toContain('Rosalind')
  await book.call('person.erase', { personId })
  await book.call('person.erase', { personId: rose })
  expect(notes().all()).toEqual([`Former person 000${personId} counted`])
  expect(JSON.stringify(passport())).not.toContain('Rosalind')
  const left = readFileSync(book.collection.file, 'latin1').replaceAll(/Ilka Brandtner|ilka brandtner/g, '')
  expect(left).not.toMatch(/Ilka Brandt|Brandt, Ilka|ILKA BRANDT/)
  expect((await book.call('person.list', { text: 'brandtner' })).people).toHaveLength(1)
  expect((await book.call('collection.check', {})).findings).toEqual([])
})

it('leaves a variety alone that is called like a person of one word', async () => {
  const { personId } = await book.call('person.create', { name: 'Rose' })
  await book.call('variety.create', { cropId: 'bean', name: 'Rose' })
  await book.call('person.erase', { personId })
  const { entries } = await book.call('entry.list', {})
  expect(entries.map(({ said }) => said)).toContain('Added the variety Rose')
  expect(entries.map(({ said }) => said)).not.toContain('Added Rose')
})

it('refuses somebody who is not there', async () => {
  expect(await book.refused('person.erase', { personId: 99 })).toMatchObject({
    code: 'not-found',
    field: 'personId',
  })
})
