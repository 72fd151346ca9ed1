import fc from 'fast-check'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { firstChangedEntry } from '../../db/services/book/entry-chain.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let book: TemporaryCollection
beforeEach(async () => {
  book = await aCollection()
})
afterEach(() => book.remove())

const sqlite = () => book.collection.sqlite
const changed = () => firstChangedEntry(sqlite())

/** A gift, a weight, two hand-outs with notes, one of them undone. */
async function written() {
  const { taken } = await book.call('intake.record', {
    donor: { newPerson: { name: 'Ilka Brandt', note: '', town: '' } },
    receivedOn: TODAY,
    gifts: [aGift({})],
  })
  const lotId = taken[0]?.lotId ?? 0
  const out = (note: string) =>
    book.call('withdrawal.record', {
      person: { personId: 1 },
      on: TODAY,
      note,
      lines: [{ lotId, amount: '5 seeds' }],
    })
  await out('for Ilka Brandt, who asked')
  const { entryId } = await out('for the school')
  await book.call('entry.undo', { entryId, reason: 'the school has its own' })
  return { lotId, entryId }
}

it('holds after any entries, and says the first whose record was changed from outside', async () => {
  const { lotId } = await written()
  expect(changed()).toBeNull()
  sqlite().exec('DROP TRIGGER movement_is_never_edited')
  const rows = sqlite()
    .prepare('SELECT id, entry_id FROM movement WHERE lot_id = ? ORDER BY id')
    .all(lotId) as { id: number; entry_id: number }[]
  const changes = [
    'count = count + 1',
    "note = note || '.'",
    'weight_ug = 1 + coalesce(weight_ug, 1)',
    "on_date = '2020-01-01'",
  ]
  fc.assert(
    fc.property(fc.constantFrom(...rows), fc.constantFrom(...changes), ({ id, entry_id }, change) => {
      sqlite().exec('SAVEPOINT tried')
      sqlite().exec(`UPDATE movement SET ${change} WHERE id = ${id}`)
      const found = changed()
      sqlite().exec('ROLLBACK TO tried')
      expect(found, change).toBe(entry_id)
    }),
    { numRuns: 20 },
  )
})

it.each([
  ['what an entry says', "UPDATE entry SET said = 'other' WHERE id = ?"],
  ['when it was written', "UPDATE entry SET recorded_at = '2020-01-01T00:00:00.000Z' WHERE id = ?"],
  ['what it undoes', 'UPDATE entry SET undoes_id = NULL WHERE id = ?'],
  ['a digest of it', "UPDATE entry_text SET digest = 'x' WHERE entry_id = ?"],
  ['a text of it that is gone', 'DELETE FROM entry_text WHERE entry_id = ?'],
  ['its hash', "UPDATE entry SET hash = '' WHERE id = ?"],
])('finds that %s was changed', async (_, sql) => {
  await written()
  const undoing = sqlite().prepare('SELECT id FROM entry WHERE undoes_id IS NOT NULL').pluck().get() as number
  sqlite().prepare(sql).run(undoing)
  expect(changed()).toBe(undoing)
  const { findings } = await book.call('collection.check', {})
  expect(findings.map(({ sentence }) => sentence)).toContain(
    `Entry ${undoing} is not as the app wrote it: the file was changed from outside.`,
  )
})

it('finds an entry that was taken out', async () => {
  await written()
  const [, second, third] = sqlite().prepare('SELECT id FROM entry ORDER BY id').pluck().all() as number[]
  sqlite().pragma('foreign_keys = OFF')
  sqlite().prepare('DELETE FROM entry WHERE id = ?').run(second)
  expect(changed()).toBe(third)
})

it('stays whole when somebody is erased, guards the other notes, and keeps nothing their name could be guessed from', async () => {
  await written()
  const before = sqlite().prepare('SELECT part, salt, digest FROM entry_text').all() as {
    part: string
    salt: string
    digest: string
  }[]
  await book.call('person.erase', { personId: 1 })
  expect(changed()).toBeNull()
  const after = sqlite().prepare("SELECT part FROM entry_text WHERE salt = ''").pluck().all()
  expect(after).toHaveLength(1)
  const named = before.find(({ part }) => part === after[0])
  expect(named?.part).toMatch(/^withdrawal\.note /)
  expect(sqlite().prepare('SELECT digest FROM entry_text WHERE part = ?').pluck().get(named?.part)).toBe(
    named?.digest,
  )
  const digests = sqlite().prepare("SELECT count(*) FROM entry WHERE input_digest <> ''").pluck().get()
  expect(digests, 'what was asked before cannot be guessed either').toBe(1)
  const other = before.find(({ part }) => part.startsWith('withdrawal.note') && part !== named?.part)
  const id = Number(other?.part.split(' ')[1])
  sqlite().prepare("UPDATE withdrawal SET note = 'for the fair' WHERE id = ?").run(id)
  expect(changed()).not.toBeNull()
})

it('names nobody in what an entry says and answers, by a person’s id only', async () => {
  await written()
  await book.call('person.create', { name: 'Rosalind Ferrow', roles: ['member'] })
  const stored = sqlite().prepare('SELECT said || answer FROM entry').pluck().all().join('\n')
  expect(stored).not.toMatch(/Ilka|Brandt|Rosalind|Ferrow/)
  const { entries } = await book.call('entry.list', {})
  expect(entries[0]?.said).toBe('Added Rosalind Ferrow')
})

it('keeps who wrote an entry, and at which station', async () => {
  const { personId } = await book.call('person.create', { name: 'Rosalind Ferrow', roles: ['member'] })
  await book.call('person.create', { name: 'A. N. Other', by: { personId, station: 'Table 2' } })
  const { entries } = await book.call('entry.list', {})
  expect(entries[0]).toMatchObject({ by: 'Rosalind Ferrow', station: 'Table 2' })
  expect(entries[1]).toMatchObject({ by: '', station: '' })
  sqlite().exec("UPDATE entry SET station = 'Table 3' WHERE station = 'Table 2'")
  expect(changed()).toBe(entries[0]?.entryId)
})
