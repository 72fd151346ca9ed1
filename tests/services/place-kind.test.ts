import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const place = async (
  name: string,
  kind: 'room' | 'cupboard' | 'box' | 'freezer',
  parentId: number | null = null,
) => (await test.call('place.create', { name, kind, parentId })).placeId
const change = (placeId: number, kind: 'room' | 'cupboard' | 'fridge' | 'freezer') =>
  test.call('place.change-kind', { placeId, kind })
const kindOf = async (placeId: number) =>
  (await test.call('place.list', {})).places.find((line) => line.placeId === placeId)?.kind

async function yearsOf(lotId: number): Promise<number> {
  const forecast = await test.call('forecast.get', { lotId })
  if (forecast.kind !== 'forecast') throw new Error('No forecast')
  return forecast.places[0]?.years?.middle ?? 0
}

describe('the kind of a place', () => {
  it('changes what its seed is taken to lie in, inside it too, and is put back with the forecasts', async () => {
    const cupboard = await place('Cupboard', 'cupboard')
    const { lotId } = await takeIn(test, { harvest: '2026', placeId: await place('Box', 'box', cupboard) })
    const before = await yearsOf(lotId)
    const { entryId, words } = await change(cupboard, 'fridge')
    expect(words.join(' ')).toBe(
      'Nobody measured there. Until now its seed counted as kept at about 20 °C. From now on it counts as kept at about 5 °C all the time. The forecast of the lot there changes. Readings would tell better.',
    )
    expect(await yearsOf(lotId)).toBeGreaterThan(1.5 * before)
    await test.call('entry.undo', { entryId })
    expect(await kindOf(cupboard)).toBe('cupboard')
    expect(await yearsOf(lotId)).toBeCloseTo(before, 6)
  })

  it('changes nothing where somebody measured, and between rooms and cupboards', async () => {
    const room = await place('Back room', 'room')
    expect((await change(room, 'cupboard')).words).toEqual([
      'Its seed still counts as kept at about 20 °C: no forecast changes.',
    ])
    await test.call('reading.record', { placeId: room, on: TODAY, time: '08:30', temperature: 21 })
    const { words } = await test.call('place.preview-kind', { placeId: room, kind: 'freezer' })
    expect(words).toContain('The readings of Back room still count: no forecast changes.')
    expect(words.join(' ')).toContain('Frost kills moist seed')
  })

  it('a fridge or freezer in a room that is read does not go by the air of the room', async () => {
    const room = await place('Back room', 'room')
    const chest = await place('Chest', 'freezer', room)
    const drawer = await place('Drawer', 'box', chest)
    const { lotId } = await takeIn(test, { harvest: '2026', placeId: drawer })
    const frozen = await yearsOf(lotId)
    await test.call('reading.record', { placeId: room, on: TODAY, time: '08:30', temperature: 21 })
    expect(await yearsOf(lotId)).toBe(frozen)
    const shown = (await test.call('storage.list', {})).places.find(({ placeId }) => placeId === drawer)
    expect(shown).toMatchObject({ readingsFrom: null, state: 'no-readings' })
    const { entryId, words } = await change(chest, 'cupboard')
    expect(words.join(' ')).toBe(
      'Nobody measured there. Until now its seed counted as kept at about −18 °C. From now on it counts as kept in the air of Back room. The forecast of the lot there changes.',
    )
    expect(await yearsOf(lotId)).toBeLessThan(frozen / 2)
    expect((await test.call('place.preview-kind', { placeId: chest, kind: 'fridge' })).words.join(' ')).toBe(
      'Until now its seed counted as kept in the air of Back room. From now on it counts as kept at about 5 °C all the time. The forecast of the lot there changes. Readings would tell better.',
    )
    await test.call('entry.undo', { entryId })
    await test.call('reading.record', { placeId: chest, on: TODAY, time: '09:00', temperature: -21 })
    expect((await test.call('storage.get', { placeId: drawer })).place.readingsFrom?.path).toContain('Chest')
  })

  it('is refused where it is that already, and taken back the later change first', async () => {
    const room = await place('Back room', 'room')
    expect(await test.refused('place.change-kind', { placeId: room, kind: 'room' })).toMatchObject({
      field: 'kind',
    })
    const first = await change(room, 'cupboard')
    const second = await change(room, 'fridge')
    expect((await test.refused('entry.undo', { entryId: first.entryId })).sentence).toContain(
      'changed again later',
    )
    await test.call('entry.undo', { entryId: second.entryId })
    await test.call('entry.undo', { entryId: first.entryId })
    expect(await kindOf(room)).toBe('room')
  })
})
