import { afterEach, beforeEach, expect, it } from 'vitest'
import {
  aCollection,
  aGift,
  type TemporaryCollection,
  TODAY,
  takeIn,
} from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const person = async (name: string, more: object = {}) =>
  (await test.call('person.create', { name, ...more })).personId

/** Somebody who gave, took and brought back one lot each. */
async function history(personId: number) {
  const { taken } = await test.call('intake.record', {
    donor: { personId },
    receivedOn: TODAY,
    gifts: [aGift({ amount: '400 seeds' })],
  })
  const lotId = taken[0]?.lotId ?? 0
  const { withdrawalId } = await test.call('withdrawal.record', {
    person: { personId },
    on: TODAY,
    promised: 'a handful',
    lines: [{ lotId, amount: '20 seeds' }],
  })
  await test.call('return.record', {
    person: { personId },
    parentLotId: lotId,
    withdrawalId,
    receivedOn: TODAY,
    amount: '50 seeds',
  })
  return lotId
}

const names = async (input: { text?: string; role?: 'donor' | 'member' | 'grower' } = {}) =>
  (await test.call('person.list', input)).people.map(({ name }) => name)

it('lists everybody by name, narrowed by letters and role, a page at a time', async () => {
  await person('Zoë Brontë', { roles: ['donor'] })
  await person('Ilka Brandt', { roles: ['member', 'donor'] })
  await person('Adam Pell', { roles: ['grower'] })
  expect(await names()).toEqual(['Adam Pell', 'Ilka Brandt', 'Zoë Brontë'])
  expect(await names({ text: 'bron' })).toEqual(['Zoë Brontë'])
  expect(await names({ role: 'donor' })).toEqual(['Ilka Brandt', 'Zoë Brontë'])
  const page = await test.call('person.list', { offset: 1, limit: 1 })
  expect(page).toMatchObject({ total: 3, people: [{ name: 'Ilka Brandt', roles: ['donor', 'member'] }] })
})

it('counts what somebody gave, took and brought back, less what was taken back', async () => {
  const personId = await person('Ilka Brandt')
  const lotId = await history(personId)
  const { entryId } = await test.call('withdrawal.record', {
    person: { personId },
    on: TODAY,
    lines: [{ lotId, amount: '5 seeds' }],
  })
  await test.call('entry.undo', { entryId })
  const { people } = await test.call('person.list', {})
  expect(people[0]).toMatchObject({ gave: 1, took: 1, broughtBack: 1, roles: ['donor', 'grower', 'member'] })
})

it('shows the history of a person both ways', async () => {
  const personId = await person('Ilka Brandt')
  const lotId = await history(personId)
  expect(await test.call('person.get', { personId })).toMatchObject({
    gave: [{ lotId, number: 'HL26-0001', variety: 'Miller’s Pole' }],
    took: [{ lots: [{ lotId, words: '20 seeds' }], promise: { words: 'a handful', state: 'met' } }],
    broughtBack: [{ lotNumber: 'HL26-0001-B', on: TODAY }],
  })
})

it('changes what is given, leaves the rest, shows what was before, and puts it back', async () => {
  const personId = await person('Ilka Brand', { town: 'Quillhaven', roles: ['donor'] })
  const before = await test.call('person.get', { personId })
  const { entryId, said } = await test.call('person.change', {
    personId,
    name: 'Ilka Brandt',
    email: 'ilka@example.org',
    mayWrite: true,
    roles: ['member', 'donor'],
  })
  expect(said).toBe('Changed Ilka Brandt: name, e-mail, whether we may write, day they agreed and roles')
  const after = await test.call('person.get', { personId })
  expect(after).toMatchObject({
    name: 'Ilka Brandt',
    town: 'Quillhaven',
    email: 'ilka@example.org',
    consentOn: TODAY,
    roles: ['donor', 'member'],
  })
  expect(after.changes.map(({ words }) => words)).toContain('name: it was ‘Ilka Brand’')
  expect(await names({ text: 'brandt' })).toEqual(['Ilka Brandt'])
  await test.call('entry.undo', { entryId })
  const back = await test.call('person.get', { personId })
  expect({ ...back, changes: [] }).toEqual(before)
  expect(back.changes.every(({ takenBack }) => takenBack)).toBe(true)
})

it('keeps the day of consent given, drops it with the consent, and takes no day to come', async () => {
  const personId = await person('Ilka Brandt')
  const day = { personId, mayWrite: true, consentOn: '2025-11-02' }
  await test.call('person.change', day)
  expect((await test.call('person.get', { personId })).consentOn).toBe('2025-11-02')
  await test.call('person.change', { personId, mayWrite: false })
  expect((await test.call('person.get', { personId })).consentOn).toBeNull()
  expect((await test.refused('person.change', { ...day, consentOn: '2026-03-15' })).field).toBe('consentOn')
})

it('keeps no name in the sentence of an entry, and tells the one they go by', async () => {
  const personId = await person('Ilka Brandt')
  const key = 'change-of-town-1'
  const change = { key, personId, town: 'Quillhaven' }
  expect((await test.call('person.change', change)).said).toBe('Changed Ilka Brandt: town')
  const kept = test.collection.sqlite.prepare('SELECT said, answer FROM entry WHERE key = ?').raw().get(key)
  expect(JSON.stringify(kept)).not.toContain('Ilka')
  await test.call('person.change', { personId, name: 'Ilka Sommerfeld' })
  expect((await test.call('person.change', change)).said).toBe('Changed Ilka Sommerfeld: town')
})

it('says when nothing changed, and offers no undo for it', async () => {
  const personId = await person('Ilka Brandt', { town: 'Quillhaven' })
  expect(await test.call('person.change', { personId, town: 'Quillhaven' })).toMatchObject({
    said: 'Ilka Brandt stays as it was',
    undoable: false,
  })
})

it('does not put back what was changed again later', async () => {
  const personId = await person('Ilka Brandt')
  const { entryId } = await test.call('person.change', { personId, town: 'Quillhaven' })
  await test.call('person.change', { personId, town: 'Harrow Lane' })
  expect((await test.refused('entry.undo', { entryId })).sentence).toContain('changed again later')
})

it('finds gifts by a donor’s changed name', async () => {
  const personId = await person('Ilka Brand')
  await history(personId)
  await test.call('person.change', { personId, name: 'Ilka Sommerfeld' })
  expect((await test.call('lot.list', { text: 'sommerfeld' })).total).toBe(2)
  expect((await test.call('lot.list', { text: 'brand' })).total).toBe(0)
})

it('joins two records: one is found, shown and listed for both, with the history of both', async () => {
  const keepId = await person('Ilka Brandt', { town: 'Quillhaven' })
  const joinId = await person('I. Brandt-Sommer', { email: 'ilka@example.org' })
  const keptLot = await history(keepId)
  const joinedLot = await history(joinId)
  const ledger = async () => (await test.call('lot.get', { lotId: joinedLot })).ledger
  const before = await ledger()
  const { said, undoable } = await test.call('person.merge', { keepId, joinId })
  expect([said, undoable]).toEqual(['Joined I. Brandt-Sommer into Ilka Brandt', true])

  expect(await names()).toEqual(['Ilka Brandt'])
  expect(await names({ text: 'sommer' })).toEqual(['Ilka Brandt'])
  expect((await test.call('collection.get', {})).people).toBe(1)
  const { people } = await test.call('person.search', { text: 'sommer' })
  expect(people).toMatchObject([{ personId: keepId, name: 'Ilka Brandt' }])
  expect(people[0]?.tellApart).toContain('also in the book as I. Brandt-Sommer')
  expect((await test.call('person.search', { text: 'brandt' })).people).toHaveLength(1)

  for (const personId of [keepId, joinId]) {
    const record = await test.call('person.get', { personId })
    expect(record).toMatchObject({ personId: keepId, name: 'Ilka Brandt', town: 'Quillhaven' })
    expect(record.gave.map(({ lotId }) => lotId)).toEqual([joinedLot, keptLot])
    expect([record.took.length, record.broughtBack.length]).toEqual([2, 2])
    expect(record.joined).toMatchObject([{ personId: joinId, email: 'ilka@example.org' }])
  }
  expect((await test.call('withdrawal.list-open', { personId: joinId })).total).toBe(2)

  const lot = await test.call('lot.get', { lotId: joinedLot })
  expect([lot.donor, lot.donorId]).toEqual(['Ilka Brandt', keepId])
  expect(new Set(lot.ledger.map((line) => line.person))).toEqual(new Set(['Ilka Brandt']))
  expect(lot.ledger.map(({ movementId, count }) => [movementId, count])).toEqual(
    before.map(({ movementId, count }) => [movementId, count]),
  )
  expect((await test.call('lot.list', { text: 'ilka' })).total).toBe(4)
  expect((await test.call('lot.list', { text: 'sommer' })).rows.map(({ donor }) => donor)).toEqual([
    'Ilka Brandt',
    'Ilka Brandt',
  ])
})

it('takes a join back: each record stands for itself again, and what was written since stays with the kept one', async () => {
  const keepId = await person('Ilka Brandt')
  const joinId = await person('I. Sommer')
  const joinedLot = await history(joinId)
  const before = await test.call('person.get', { personId: joinId })
  const { entryId } = await test.call('person.merge', { keepId, joinId })
  await test.call('withdrawal.record', {
    person: { personId: joinId },
    on: TODAY,
    lines: [{ lotId: joinedLot, amount: '5 seeds' }],
  })
  expect((await test.call('person.get', { personId: keepId })).joined[0]?.entryId).toBe(entryId)
  await test.call('entry.undo', { entryId })
  expect(await test.call('person.get', { personId: joinId })).toEqual(before)
  const kept = await test.call('person.get', { personId: keepId })
  expect([kept.joined, kept.gave.length, kept.took.length]).toEqual([[], 0, 1])
  expect((await test.call('lot.list', { text: 'ilka' })).total).toBe(0)
})

it('joins a record that others were joined into, all at once, and takes that back in turn', async () => {
  const first = await person('Ada One')
  const second = await person('Ada Two')
  const third = await person('Ada Three')
  const one = await test.call('person.merge', { keepId: second, joinId: first })
  const two = await test.call('person.merge', { keepId: third, joinId: second })
  expect((await test.call('person.get', { personId: first })).personId).toBe(third)
  expect((await test.refused('entry.undo', { entryId: one.entryId })).code).toBe('cannot-undo')
  await test.call('entry.undo', { entryId: two.entryId })
  expect((await test.call('person.get', { personId: first })).personId).toBe(second)
  await test.call('entry.undo', { entryId: one.entryId })
  expect(await names()).toHaveLength(3)
})

it('joins no record with itself, none that is joined already, and none that is not there', async () => {
  const first = await person('Ada One')
  const second = await person('Ada Two')
  const third = await person('Ada Three')
  expect((await test.refused('person.merge', { keepId: first, joinId: first })).field).toBe('joinId')
  await test.call('person.merge', { keepId: first, joinId: second })
  const again = await test.refused('person.merge', { keepId: third, joinId: second })
  expect([again.field, again.sentence]).toEqual([
    'joinId',
    'That record was joined into Ada One. Choose Ada One instead.',
  ])
  expect((await test.refused('person.merge', { keepId: second, joinId: third })).field).toBe('keepId')
  expect((await test.refused('person.change', { personId: second, town: 'X' })).field).toBe('personId')
  expect((await test.refused('person.merge', { keepId: first, joinId: 99 })).code).toBe('not-found')
})

it('writes a joined person’s return and gift under the kept record', async () => {
  const keepId = await person('Ilka Brandt')
  const joinId = await person('I. Sommer')
  const { lotId } = await takeIn(test, { amount: '200 seeds' })
  await test.call('person.merge', { keepId, joinId })
  await test.call('return.record', {
    person: { personId: joinId },
    parentLotId: lotId,
    receivedOn: TODAY,
    amount: '30 seeds',
  })
  const kept = await test.call('person.get', { personId: keepId })
  expect([kept.broughtBack.length, kept.roles]).toEqual([1, ['grower']])
})

it('finds a chain of joined records when the file was spoilt', async () => {
  const [one, two, three] = [await person('Ada One'), await person('Ada Two'), await person('Ada Three')]
  const set = test.collection.sqlite.prepare('UPDATE person SET merged_into_id = ? WHERE id = ?')
  set.run(two, one)
  set.run(three, two)
  const { findings } = await test.call('collection.check', {})
  expect(findings.map(({ check }) => check)).toEqual(['people'])
  set.run(null, two)
})
