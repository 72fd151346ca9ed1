import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { isoDate } from '../../db/domain/dates/iso-date.ts'
import { sigmaDays } from '../../db/domain/viability/equation.ts'
import { moistureInAir } from '../../db/domain/viability/pace-model.ts'
import { constantsOf } from '../builders/crop-table.ts'
import { afresh, readings, write } from '../builders/forecasts.ts'
import { aCollection, type TemporaryCollection, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

describe('ageing in a changing climate', () => {
  const pea = constantsOf('pea')
  if (pea === null) throw new Error('Pea has constants')
  const perDay = (celsius: number, percent: number) => {
    const oil = 0.015
    const moisture = moistureInAir(oil, { celsius, humidity: percent / 100 })
    return 1 / sigmaDays(pea, { moisture, celsius })
  }

  it('adds up days / sigma over the readings of each place, across a move', async () => {
    const warm = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    const cool = await test.call('place.create', { name: 'Cellar', kind: 'room', parentId: null })
    const variety = { newVariety: { cropId: 'pea', name: 'Ferry Lane' } }
    const { lotId } = await takeIn(test, { variety, placeId: warm.placeId, harvest: '' })
    write(
      test,
      (entryId) =>
        `UPDATE lot_place SET since = '2026-02-01' WHERE lot_id = ${lotId};
         INSERT INTO lot_place (lot_id, place_id, since, entry_id) VALUES (${lotId}, ${cool.placeId}, '2026-02-08', ${entryId});
         UPDATE lot SET place_id = ${cool.placeId} WHERE id = ${lotId};`,
    )
    readings(test, warm.placeId, 28, 65)
    readings(test, cool.placeId, 9, 40)
    const { ageing } = afresh(test, lotId)
    const between = (from: string, until: string) =>
      ageing.lostOn(isoDate(until)) - ageing.lostOn(isoDate(from))
    expect(between('2026-02-01', '2026-02-08')).toBeCloseTo(7 * perDay(28, 65), 10)
    expect(between('2026-02-08', '2026-02-15')).toBeCloseTo(7 * perDay(9, 40), 10)
    expect(between('2026-02-05', '2026-02-12')).toBeCloseTo(3 * perDay(28, 65) + 4 * perDay(9, 40), 10)
    // Days without readings age as the usual one of those with.
    expect(between('2026-03-01', '2026-03-11')).toBeCloseTo(10 * perDay(9, 40), 10)
    expect(ageing.dailyAhead).toBeCloseTo(perDay(9, 40), 10)
  })

  it('counts a week that failed once, with its own days, and not in the time that nobody measured', async () => {
    const { placeId } = await test.call('place.create', { name: 'Chest', kind: 'fridge', parentId: null })
    const variety = { newVariety: { cropId: 'pea', name: 'Ferry Lane' } }
    const { lotId } = await takeIn(test, { variety, placeId, harvest: '' })
    test.collection.sqlite.exec(`UPDATE lot_place SET since = '2020-01-01' WHERE lot_id = ${lotId}`)
    const days = Array.from({ length: 28 }, (_, day) => {
      const celsius = day >= 10 && day < 17 ? 26 : 6
      return `2026-02-${String(day + 1).padStart(2, '0')} 12:00,${celsius},40`
    })
    const text = ['Time,Temperature °C,Humidity %', ...days].join('\n')
    await test.call('reading.import-file', { placeId, fileName: 'chest.csv', text })
    const { ageing, usualDays } = afresh(test, lotId)
    const between = (from: string, until: string) =>
      ageing.lostOn(isoDate(until)) - ageing.lostOn(isoDate(from))
    expect(between('2026-02-01', '2026-03-01')).toBeCloseTo(21 * perDay(6, 40) + 7 * perDay(26, 40), 10)
    expect(between('2021-01-01', '2022-01-01')).toBeCloseTo(365 * perDay(6, 40), 10)
    expect(ageing.dailyAhead).toBeCloseTo(perDay(6, 40), 10)
    expect(usualDays).toBe(true)
  })
})

describe('days on which a lot was not there', () => {
  const maizeIn = async (placeId: number) => {
    const variety = { newVariety: { cropId: 'maize', name: 'Weir Dent' } }
    const { lotId } = await takeIn(test, { variety, placeId, harvest: '' })
    test.collection.sqlite.exec(`UPDATE lot_place SET since = '2026-02-01' WHERE lot_id = ${lotId}`)
    return lotId
  }

  it('are not remarked on', async () => {
    const { placeId } = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    readings(test, placeId, 55, 40, '2023-08')
    readings(test, placeId, 18, 50)
    expect(afresh(test, await maizeIn(placeId)).remarks).toEqual([])
    const other = await test.call('place.create', { name: 'Attic', kind: 'room', parentId: null })
    readings(test, other.placeId, 55, 40)
    expect(afresh(test, await maizeIn(other.placeId)).remarks).toContain('warmer-than-fitted')
  })

  it('do not refuse a forecast; days on which it was there do', async () => {
    const { placeId } = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    readings(test, placeId, 95, 40, '2023-08')
    readings(test, placeId, 18, 50)
    const lotId = await maizeIn(placeId)
    expect(afresh(test, lotId).forecast.today.middle).toBeGreaterThan(0.8)
    test.collection.sqlite.exec(`UPDATE lot_place SET since = '2023-08-03' WHERE lot_id = ${lotId}`)
    expect(() => afresh(test, lotId)).toThrow('forecast.too-hot')
  })
})
