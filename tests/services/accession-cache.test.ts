import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readingOf } from '../../db/services/book/context.ts'
import { judgements } from '../../db/services/regrow/judgements.ts'
import { warmCaches } from '../../db/services/warm-caches.ts'
import { keptAndFound } from '../builders/kept-and-found.ts'
import {
  aCollection,
  NOW,
  type TemporaryCollection,
  TODAY,
  takeIn,
} from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

const reading = () => readingOf(test.collection, NOW)

describe('what is kept of every accession', () => {
  it('holds after each kind of write that may concern it', async () => {
    const { lotId, accessionId } = await takeIn(test)
    const other = await takeIn(test, { variety: { newVariety: { cropId: 'pea', name: 'Lane’s Early' } } })
    const { placeId } = await test.call('place.create', { name: 'Chest', kind: 'cupboard' })
    await keptAndFound(test)
    const writes: Record<string, () => Promise<unknown>> = {
      'a test': () => test.call('germination.record', { lotId, on: TODAY, tested: 40, sprouted: 31 }),
      'a forecast worked out in the background': async () =>
        test.collection.sqlite.exec(
          `UPDATE lot_forecast SET computed_on = '2026-03-13', viability = 0.4, viability_low = 0.3, viability_high = 0.5,
             crosses_on = '2026-06-01' WHERE viability IS NOT NULL`,
        ),
      'seed handed out': () =>
        test.call('withdrawal.record', {
          person: null,
          on: TODAY,
          lines: [{ lotId, amount: '40 g' }],
          despite: ['too-few-left'],
          reason: 'made by hand',
        }),
      'a policy of its own': () => test.call('accession.change-policy', { accessionId, plantsToKeep: 2 }),
      quarantine: () => test.call('lot.quarantine', { lotId: other.lotId, reason: 'beetles' }),
      'the settings': () =>
        test.call('settings.change', { settings: { regrowingsKept: 1, sowingDay: '05-20' } }),
      'what a hundred seeds weigh': () =>
        test.call('lot.record-weight', { lotId, on: TODAY, replicates: [{ seeds: 50, grams: 20 }] }),
      'where it lies': () => test.call('lot.move', { lotIds: [lotId], placeId, on: TODAY }),
      'the kind of the place': () => test.call('place.change-kind', { placeId, kind: 'freezer' }),
      'a new lot of it': () => test.call('lot.split', { lotId, on: TODAY, amount: '1 g', role: 'reserve' }),
      'a third accession': () => takeIn(test),
    }
    for (const [what, write] of Object.entries(writes)) {
      await write()
      const { kept, found } = await keptAndFound(test)
      expect(kept, what).toEqual(found)
    }
  })

  it('is recomputed on another day', async () => {
    await takeIn(test)
    await keptAndFound(test)
    const { kept, found } = await keptAndFound(test, new Date('2029-05-02T10:30:00'))
    expect(kept).toEqual(found)
  })

  it('is of what is being written while it is written, and forgets that when it is refused', async () => {
    const { accessionId, lotId } = await takeIn(test)
    const living = () => judgements.all(reading()).get(accessionId)?.living
    const before = living()
    expect(() =>
      test.collection.sqlite.transaction(() => {
        test.collection.sqlite.prepare('UPDATE lot SET balance_count = 3 WHERE id = ?').run(lotId)
        expect(living()).toBeLessThanOrEqual(3)
        throw new Error('refused')
      })(),
    ).toThrow('refused')
    expect(living()).toBe(before)
  })

  it('is read ahead until nothing is left, and then only of what was touched', async () => {
    for (let gift = 0; gift < 3; gift += 1) await takeIn(test)
    let left = 1
    while (left > 0) left = warmCaches(reading())
    expect(judgements.ahead(reading(), 0)).toBe(0)
    const { accessionId } = await takeIn(test)
    judgements.all(reading())
    await test.call('accession.change-policy', { accessionId, plantsToKeep: 12 })
    expect(judgements.ahead(reading(), 0)).toBe(1)
  })
})
