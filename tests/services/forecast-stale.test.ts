import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { isoDate } from '../../db/domain/dates/iso-date.ts'
import { afresh, kept, readings, write } from '../builders/forecasts.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

describe('what was measured round a lot makes its forecast stale, and the next refresh computes it', () => {
  const refreshed = async (lotId: number) => {
    expect(kept(test, lotId).stale_since).not.toBeNull()
    expect(await test.call('forecast.get-progress', {})).toEqual({ left: 1, lots: 1, held: false })
    expect(await test.call('forecast.pause', { held: true })).toEqual({ left: 1, lots: 1, held: true })
    expect(await test.call('forecast.refresh', {})).toEqual({ computed: 0, left: 1, lots: 1, held: true })
    expect((await test.call('collection.get-revision', {})).forecasts).toMatchObject({ left: 1, held: true })
    expect(await test.call('forecast.pause', { held: false })).toMatchObject({ left: 1, held: false })
    expect(await test.call('forecast.refresh', {})).toEqual({ computed: 1, left: 0, lots: 1, held: false })
    return kept(test, lotId)
  }
  const inCupboard = async () => {
    const room = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    const cupboard = await test.call('place.create', {
      name: 'Oak',
      kind: 'cupboard',
      parentId: room.placeId,
    })
    const variety = { newVariety: { cropId: 'pea', name: 'Ferry Lane' } }
    const { lotId } = await takeIn(test, { variety, placeId: cupboard.placeId, harvest: '2025' })
    return { lotId, room: room.placeId, cupboard: cupboard.placeId }
  }

  it('readings of a place around it: warm and damp brings the day nearer', async () => {
    const { lotId, room } = await inCupboard()
    const before = kept(test, lotId)
    const entryId = readings(test, room, 30, 70)
    const warm = await refreshed(lotId)
    expect((warm.crosses_on ?? '') < (before.crosses_on ?? '')).toBe(true)
    await test.call('entry.undo', { entryId })
    expect(kept(test, lotId).crosses_on).toBe(before.crosses_on)
  })

  it('a dry jar: the day moves away', async () => {
    const { lotId } = await inCupboard()
    const before = kept(test, lotId).crosses_on ?? ''
    write(
      test,
      (entryId) =>
        `INSERT INTO seed_moisture VALUES (1, ${lotId}, '${TODAY}', 'oven', 5.5, 5, 6, '{}', '', ${entryId});
         INSERT INTO lot_container VALUES (1, ${lotId}, 'jar', 1, 1, '${TODAY}', '', ${entryId});`,
    )
    const dry = await refreshed(lotId)
    expect((dry.crosses_on ?? '9999') > before).toBe(true)
  })

  it('drying today slows what is to come and gives nothing back of what was lost', async () => {
    const { lotId } = await inCupboard()
    const damp = afresh(test, lotId).ageing
    const noted = { lotId, on: TODAY, measured: { method: 'meter', percent: 7 }, note: '' } as const
    await test.call('moisture.record', noted)
    const { ageing, moisture } = afresh(test, lotId)
    expect(moisture.measured).toBe(7)
    expect(ageing.lostOn(isoDate(TODAY))).toBeCloseTo(damp.lostOn(isoDate(TODAY)), 12)
    expect(ageing.dailyAhead).toBeLessThan(damp.dailyAhead / 3)
  })

  it('seed that lay airtight before it was measured was as dry since it was closed in', async () => {
    const { lotId } = await inCupboard()
    const damp = afresh(test, lotId).ageing
    write(
      test,
      (entryId) =>
        `INSERT INTO lot_container VALUES (1, ${lotId}, 'jar', 1, 1, '2025-10-01', '', ${entryId});
         INSERT INTO seed_moisture VALUES (1, ${lotId}, '${TODAY}', 'oven', 7, 7, 7, '{}', '', ${entryId});`,
    )
    const { ageing } = afresh(test, lotId)
    expect(ageing.lostOn(isoDate(TODAY))).toBeCloseTo(
      (damp.lostOn(isoDate(TODAY)) * ageing.dailyAhead) / damp.dailyAhead,
      9,
    )
  })

  it('a move to the fridge, at once', async () => {
    const { lotId } = await inCupboard()
    const before = kept(test, lotId).crosses_on ?? ''
    const fridge = await test.call('place.create', { name: 'Fridge', kind: 'fridge', parentId: null })
    await test.call('lot.move', { lotIds: [lotId], placeId: fridge.placeId, on: TODAY })
    expect(kept(test, lotId).stale_since).toBeNull()
    expect((kept(test, lotId).crosses_on ?? '9999') > before).toBe(true)
  })

  it('seed too moist for any equation is refused, in words', async () => {
    const { lotId } = await inCupboard()
    write(
      test,
      (entryId) =>
        `INSERT INTO seed_moisture VALUES (1, ${lotId}, '${TODAY}', 'oven', 31, 30, 32, '{}', '', ${entryId});`,
    )
    expect(await refreshed(lotId)).toMatchObject({ basis: 'refused', viability: null, crosses_on: null })
  })
})
