import { afterEach, beforeEach, expect, it } from 'vitest'
import { message } from '../../db/messages/message.ts'
import { takeInOn } from '../builders/earlier-gift.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const visit = (lotId: number, amount: string) =>
  test.call('withdrawal.record', { person: null, on: TODAY, lines: [{ lotId, amount }] })

it('restores both numbers exactly and says so in the ledger', async () => {
  const { lotId } = await takeIn(test, { amount: '100 g', sample: '30 weigh 7.7 g' })
  const before = (await test.call('lot.get', { lotId })).quantity
  const { entryId } = await visit(lotId, '31 seeds')
  const { said, lines } = await test.call('entry.undo', { entryId, reason: 'wrong jar' })
  expect(said).toContain('Undone: Handed out from HL26-0001-A')
  expect(lines).toHaveLength(1)
  const after = await test.call('lot.get', { lotId })
  expect(after.quantity).toEqual(before)
  expect(after.ledger.map(({ kind, takenBack }) => [kind, takenBack])).toEqual([
    ['intake', false],
    ['withdrawal', true],
    ['reversal', false],
  ])
})

it('tells what it undid, of an entry that keeps a message and of one that keeps a text', async () => {
  const place = { name: 'Jar', kind: 'jar', parentId: null } as const
  const { entryId } = await test.call('place.create', place)
  const saidOf = test.collection.sqlite.prepare('SELECT said FROM entry WHERE id = ?').pluck()
  const written = String(saidOf.get(entryId))
  const sentence = async (said: string) => {
    test.collection.sqlite.prepare('UPDATE entry SET said = ? WHERE id = ?').run(said, entryId)
    return (await test.call('entry.list', { limit: 1 })).entries[0]?.said
  }
  expect(await sentence(JSON.stringify(message('settings.changed')))).toBe('Changed the settings')
  expect(await sentence('Changed {"id": the settings')).toBe('Changed {"id": the settings')
  await sentence(written)
})

it('happens once', async () => {
  const { lotId } = await takeIn(test, { amount: '400 seeds' })
  const { entryId } = await visit(lotId, '10 seeds')
  await test.call('entry.undo', { entryId })
  expect((await test.refused('entry.undo', { entryId })).sentence).toContain('was undone already')
})

it('is refused, with why, when later seed went out of it, and changes nothing', async () => {
  const gift = await takeIn(test, { amount: '400 seeds' })
  await visit(gift.lotId, '10 seeds')
  const problem = await test.refused('entry.undo', { entryId: gift.entryId })
  expect(problem.sentence).toContain('the hand-out of 14 Mar 2026 took from it')
  expect((await test.call('lot.get', { lotId: gift.lotId })).quantity.count).toBe(390)
})

it('is refused past a stocktake, which already saw the seed as it was', async () => {
  const { lotId } = await takeIn(test, { amount: '400 seeds' })
  const { entryId } = await visit(lotId, '10 seeds')
  await test.call('lot.record-count', { lotId, on: TODAY, found: '395 seeds', reason: 'counted' })
  expect((await test.refused('entry.undo', { entryId })).sentence).toContain('The stocktake of')
})

it('takes all lines of a visit back as one, or none', async () => {
  const one = await takeIn(test, { amount: '400 seeds' })
  const two = await takeIn(test, { amount: '300 seeds' })
  const { entryId } = await test.call('withdrawal.record', {
    person: null,
    on: TODAY,
    lines: [
      { lotId: one.lotId, amount: '10 seeds' },
      { lotId: two.lotId, amount: '20 seeds' },
    ],
  })
  await test.call('lot.record-count', { lotId: one.lotId, on: TODAY, found: '390 seeds', reason: 'counted' })
  await test.refused('entry.undo', { entryId })
  expect((await test.call('lot.get', { lotId: two.lotId })).quantity.count).toBe(280)
})

it('never prints a number again after a gift was taken back', async () => {
  const { entryId } = await takeIn(test)
  await test.call('entry.undo', { entryId })
  expect((await takeIn(test)).lotNumber).toBe('HL26-0002-A')
})

it('is not offered for what has no opposite', async () => {
  const { entryId } = await test.call('place.create', { name: 'Box', kind: 'box' })
  expect((await test.refused('entry.undo', { entryId })).code).toBe('cannot-undo')
})

it('names whom an entry is with as they are called now', async () => {
  const { personId } = await test.call('person.create', { name: 'Zoë Brontë' })
  const { lotId } = await takeInOn(test, '2026-01-01')
  await test.call('withdrawal.record', {
    person: { personId },
    on: '2026-01-14',
    lines: [{ lotId, amount: '5 seeds' }],
    despite: ['too-few-left'],
    reason: 'to grow on',
  })
  await test.call('person.change', { personId, name: 'Zoë Marlow' })
  const { entries } = await test.call('entry.list', {})
  expect(entries.map(({ operation, people }) => [operation, people])).toContainEqual([
    'withdrawal.record',
    ['Zoë Marlow'],
  ])
})

it('lists what was written, newest first, with what can be taken back', async () => {
  const gift = await takeIn(test)
  await test.call('entry.undo', { entryId: gift.entryId })
  const { entries } = await test.call('entry.list', {})
  expect(entries.map(({ operation, undoable, takenBack }) => [operation, undoable, takenBack])).toEqual([
    ['entry.undo', false, false],
    ['intake.record', false, true],
    ['collection.create', false, false],
  ])
})
