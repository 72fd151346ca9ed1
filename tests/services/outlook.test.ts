import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { isoDate } from '../../db/domain/dates/iso-date.ts'
import { crossingBand, viabilityBand } from '../../db/domain/viability/band.ts'
import { afresh, germination, readings, write } from '../builders/forecasts.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

describe('the outlook of a lot', () => {
  it('tells the curve, its tests, the line and what every other place would bring', async () => {
    const room = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    const freezer = await test.call('place.create', { name: 'Chest', kind: 'freezer', parentId: null })
    const { lotId } = await takeIn(test, { placeId: room.placeId, harvest: '2025' })
    await germination(test, lotId, 100, 95)
    const shown = await test.call('forecast.get', { lotId })
    if (shown.kind !== 'forecast') throw new Error(shown.because)
    expect(shown).toMatchObject({ on: TODAY, start: '2025-10-01', threshold: 0.85, line: 0.85 })
    expect(shown.curve[0]?.on).toBe('2025-10-01')
    expect(shown.tests).toMatchObject([{ on: TODAY, tested: 100, sprouted: 95, setAside: false }])
    expect(shown.basis.source).toContain('Wilson, McDonald & St. Martin 1989')
    const [here, chest] = shown.places
    expect(shown.places).toHaveLength(2)
    expect(chest?.placeId).toBe(freezer.placeId)
    expect(chest?.years?.middle).toBeGreaterThan(here?.years?.middle ?? 0)
    expect(chest?.caution).toMatch(/^Measure its moisture first/)
  })

  const sureOf = async (lotId: number) => {
    const shown = await test.call('forecast.get', { lotId })
    if (shown.kind !== 'forecast') throw new Error(shown.because)
    return shown.howSure.join(' ')
  }

  it('of untested wheat in a room that nobody measured weighs in the years that its seed keeps', async () => {
    const variety = { newVariety: { cropId: 'wheat', name: 'Mill Lane' } }
    const room = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    const { lotId } = await takeIn(test, { variety, placeId: room.placeId, harvest: '2025' })
    expect(await sureOf(lotId)).toContain('the 3 to 5 years that its seed is said to keep count beside')
    const { forecast, ageing } = afresh(test, lotId)
    const yearsToHalf = crossingBand(forecast.learnt.posterior, { part: 0.5, of: 'all-seeds' }).middle
    expect(yearsToHalf / ageing.dailyAhead / 365.25).toBeGreaterThan(1.5)
    readings(test, room.placeId, 20, 50)
    expect(await sureOf(lotId)).not.toContain('said to keep')
  })

  it.each(['fridge', 'freezer'] as const)(
    'in a %s is left to the equation: lists do not speak of it',
    async (kind) => {
      const variety = { newVariety: { cropId: 'wheat', name: 'Mill Lane' } }
      const cold = await test.call('place.create', { name: 'Cold', kind, parentId: null })
      const { lotId } = await takeIn(test, { variety, placeId: cold.placeId, harvest: '2025' })
      expect(await sureOf(lotId)).not.toContain('said to keep')
    },
  )

  it('of dried seed is left to the equation too', async () => {
    const variety = { newVariety: { cropId: 'wheat', name: 'Mill Lane' } }
    const { lotId } = await takeIn(test, { variety, harvest: '2025' })
    const noted = { lotId, on: TODAY, measured: { method: 'meter', percent: 7 }, note: '' } as const
    await test.call('moisture.record', noted)
    expect(await sureOf(lotId)).not.toContain('said to keep')
  })

  it('of seed far too moist says why there is none', async () => {
    const { lotId } = await takeIn(test)
    write(
      test,
      (entryId) =>
        `INSERT INTO seed_moisture VALUES (1, ${lotId}, '${TODAY}', 'oven', 31, 30, 32, '{}', '', ${entryId});`,
    )
    expect(await test.call('forecast.get', { lotId })).toMatchObject({
      kind: 'refused',
      because: expect.stringMatching(/moulds/),
    })
  })
})

describe('what it would bring to move all that lies in a place', () => {
  it('adds the lots up here and in each other place, also those in boxes inside', async () => {
    const room = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    const box = await test.call('place.create', { name: 'Box', kind: 'box', parentId: room.placeId })
    const freezer = await test.call('place.create', { name: 'Chest', kind: 'freezer', parentId: null })
    const dead = await takeIn(test, { placeId: room.placeId, harvest: '2025' })
    const boxed = await takeIn(test, { placeId: box.placeId, harvest: '2025' })
    await germination(test, dead.lotId, 200, 20)
    await germination(test, boxed.lotId, 200, 196)
    const dry = {
      lotId: boxed.lotId,
      on: TODAY,
      measured: { method: 'meter', percent: 6 },
      note: '',
    } as const
    await test.call('moisture.record', dry)
    const all = await test.call('place.preview-moves', { placeId: room.placeId })
    expect(all).toMatchObject({ lots: 2, notTold: 0, already: 1 })
    expect(all.places.map(({ place }) => place)).toEqual(['where they are now', 'Chest'])
    expect(all.places[1]?.caution).toMatch(/^1 of the 2 is too moist to freeze or not measured yet\./)
    const own = await test.call('forecast.get', { lotId: boxed.lotId })
    if (own.kind !== 'forecast') throw new Error(own.because)
    const inside = await test.call('place.preview-moves', { placeId: box.placeId })
    expect(inside.places.map(({ half }) => half)).toEqual(own.places.map(({ years }) => years))
    expect(inside.places.map(({ placeId }) => placeId)).toEqual([null, freezer.placeId])
    expect(inside.places[1]?.caution).toBe('')
  })

  it('says of how many lots nothing can be told, and of an empty place that there is none', async () => {
    const { placeId } = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    const empty = { lots: 0, notTold: 0, already: 0, places: [] }
    expect(await test.call('place.preview-moves', { placeId })).toEqual(empty)
    const { lotId } = await takeIn(test, { placeId })
    const wet = { lotId, on: TODAY, measured: { method: 'meter', percent: 31 }, note: '' } as const
    await test.call('moisture.record', wet)
    expect(await test.call('place.preview-moves', { placeId })).toEqual({ ...empty, notTold: 1 })
  })
})

describe('what a failed week cost the lots of a place', () => {
  const week = { from: '2026-02-10', until: '2026-02-16' }
  const aFreezer = async () => {
    const { placeId } = await test.call('place.create', { name: 'Chest', kind: 'freezer', parentId: null })
    const days = Array.from({ length: 28 }, (_, day) => {
      const celsius = day >= 9 && day < 16 ? 26 : -18
      return `2026-02-${String(day + 1).padStart(2, '0')} 12:00,${celsius}`
    })
    const text = ['Time,Temperature °C', ...days].join('\n')
    await test.call('reading.import-file', { placeId, fileName: 'chest.csv', text })
    return placeId
  }
  const lain = (lotId: number, since: string) =>
    test.collection.sqlite.exec(`UPDATE lot_place SET since = '${since}' WHERE lot_id = ${lotId}`)

  it('is the life that its days took beyond what usual days take, of those that lay there then', async () => {
    const placeId = await aFreezer()
    const { lotId } = await takeIn(test, { placeId, harvest: '2025' })
    const late = await takeIn(test, { placeId, harvest: '2025' })
    lain(lotId, '2026-01-01')
    lain(late.lotId, '2026-02-12')
    const told = await test.call('place.get-excursion-cost', { placeId, ...week })
    expect(told.lots).toBe(1)
    const { forecast, ageing } = afresh(test, lotId)
    const lost = ageing.lostOn(isoDate(TODAY))
    const spent = ageing.lostOn(isoDate('2026-02-17')) - ageing.lostOn(isoDate('2026-02-10'))
    const without = viabilityBand(forecast.learnt.posterior, lost - spent + 7 * ageing.dailyAhead)
    expect(told.most).toBeCloseTo(100 * (without.middle - forecast.today.middle), 9)
    expect(told.most).toBeGreaterThan(0.05)
    expect(told.words).toContain('The lot that was there then')
  })

  it('is nothing where no lot lay there then, and days the wrong way round are refused', async () => {
    const placeId = await aFreezer()
    await takeIn(test, { placeId, harvest: '2025' })
    expect(await test.call('place.get-excursion-cost', { placeId, ...week })).toMatchObject({
      lots: 0,
      words: 'None of the lots that are there now was there then.',
    })
    const turned = { placeId, from: week.until, until: week.from }
    expect((await test.refused('place.get-excursion-cost', turned)).sentence).toBe(
      'It ends before it begins.',
    )
  })
})
