import { afterEach, beforeEach, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
let lotId: number

beforeEach(async () => {
  test = await aCollection()
  const gift = await takeIn(test, { amount: '100 g' })
  lotId = gift.lotId
  await test.call('lot.split', { lotId, on: TODAY, amount: '50 seeds', role: 'reserve' })
  const { entryId } = await test.call('lot.discard', { lotId, on: TODAY, amount: '5 g', reason: 'spilt' })
  await test.call('entry.undo', { entryId })
  expect(await test.call('collection.check', {})).toMatchObject({
    clean: true,
    checked: { lots: 2, movements: 5 },
  })
})
afterEach(() => test.remove())

/** Spoils the file behind the book's back, with the guards off, as only a fault or a stranger could. */
function spoil(sql: string): void {
  const { sqlite } = test.collection
  const triggers = sqlite.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'").all() as {
    name: string
    sql: string
  }[]
  for (const { name } of triggers) sqlite.exec(`DROP TRIGGER ${name}`)
  sqlite.pragma('foreign_keys = OFF')
  sqlite.pragma('ignore_check_constraints = ON')
  sqlite.exec(sql)
  sqlite.pragma('ignore_check_constraints = OFF')
  sqlite.pragma('foreign_keys = ON')
  for (const trigger of triggers) sqlite.exec(trigger.sql)
}

it.each([
  [
    'balances',
    'a kept balance that is not the sum',
    'UPDATE lot SET balance_count = balance_count + 1 WHERE id = 1',
  ],
  ['agreement', 'a count that disagrees with its mass', 'UPDATE movement SET count = count + 3 WHERE id = 1'],
  [
    'below-zero',
    'a lot taken below zero on the way',
    'UPDATE movement SET count = -9000, mass_mg = -9000000 WHERE id = 2',
  ],
  ['conservation', 'a split that makes seed', 'UPDATE movement SET count = count + 1 WHERE id = 3'],
  [
    'reversals',
    'a reversal that is not the opposite',
    "UPDATE movement SET mass_mg = mass_mg + 1 WHERE kind = 'reversal'",
  ],
  ['numbers', 'a gap in the accession numbers', 'UPDATE number_series SET next = next + 1'],
  ['numbers', 'a gap in the lot letters', 'UPDATE lot SET ordinal = 3 WHERE id = 2'],
  ['numbers', 'a bare form that is not the number’s', "UPDATE lot SET bare = 'HL260001X' WHERE id = 2"],
  [
    'references',
    'a movement of a person who is not there',
    'UPDATE movement SET person_id = 99 WHERE id = 1',
  ],
  ['integrity', 'a value that its column forbids', "UPDATE lot SET role = 'lost' WHERE id = 2"],
])('finds (%s) %s', async (check, _what, sql) => {
  spoil(sql)
  const { clean, findings } = await test.call('collection.check', {})
  expect(clean).toBe(false)
  expect(findings.map((finding) => finding.check)).toContain(check)
})

it('cannot be brought about through the file itself: the ledger refuses edits and deletion', () => {
  const { sqlite } = test.collection
  expect(() => sqlite.exec('UPDATE movement SET count = 0')).toThrow('append-only')
  expect(() => sqlite.exec('DELETE FROM movement')).toThrow('append-only')
  expect(() => sqlite.exec("UPDATE lot SET number = 'X' WHERE id = 1")).toThrow('never changed')
  expect(() => sqlite.exec('UPDATE lot SET balance_count = -1 WHERE id = 1')).toThrow('CHECK')
})
