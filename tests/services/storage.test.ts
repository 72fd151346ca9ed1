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

type Kind = 'room' | 'fridge' | 'freezer' | 'box'
const place = async (name: string, kind: Kind, parentId: number | null = null) =>
  (await test.call('place.create', { name, kind, parentId })).placeId
const aim = (placeId: number, to: 'short-term' | 'medium-term' | 'long-term', more: object = {}) =>
  test.call('place.change-terms', { placeId, aim: to, ...more })
const read = (placeId: number, temperature: number, humidity: number | null = null, more: object = {}) =>
  test.call('reading.record', { placeId, on: TODAY, time: '08:30', temperature, humidity, ...more })
const stateOf = async (placeId: number) =>
  (await test.call('storage.list', {})).places.find((line) => line.placeId === placeId)

describe('the state of a place', () => {
  it('is unknown until somebody reads, and said to have no aim until somebody says', async () => {
    const room = await place('Back room', 'room')
    expect(await stateOf(room)).toMatchObject({ state: 'no-readings', readingsFrom: null, aim: 'none' })
    await read(room, 21, 40)
    expect(await stateOf(room)).toMatchObject({ state: 'no-aim', readingsFrom: { placeId: room } })
  })

  it('judges a short-term place by degrees F and percent of humidity under 100', async () => {
    const room = await place('Back room', 'room')
    await aim(room, 'short-term')
    // 60 F and 38 % make 98; 70 F and 40 % make 110. The rule is common practice, seen in two storage guides.
    await read(room, 60, 38, { unit: 'F' })
    expect(await stateOf(room)).toMatchObject({ state: 'good', stateWords: 'dry and cool enough' })
    const { warnings } = await read(room, 70, 40, { unit: 'F', time: '09:00' })
    expect(warnings).toEqual(['That is too warm for Back room.'])
    const shown = await test.call('storage.get', { placeId: room })
    expect(shown.sum).toMatchObject({ readings: 2, shareOutside: 0.5 })
    expect(shown.sum?.meanSum).toBeCloseTo(104, 1)
    expect(shown.words.join(' ')).toContain('add up to 104 on average')
    expect(shown.words.join(' ')).toContain('common practice')
    expect(shown.spells).toMatchObject([{ from: `${TODAY}T09:00`, hours: 0.5 }])
  })

  it('holds for what stands inside, by the readings and the aim of the place around it', async () => {
    const freezer = await place('Freezer', 'freezer')
    const box = await place('Box', 'box', freezer)
    await aim(freezer, 'long-term')
    await read(freezer, -19)
    expect(await stateOf(box)).toMatchObject({
      state: 'good',
      stateWords: 'cold enough',
      aim: 'long-term',
      readingsFrom: { placeId: freezer, path: 'Freezer' },
    })
    await read(freezer, -9, null, { time: '12:00' })
    expect(await stateOf(box)).toMatchObject({ state: 'too-warm' })
  })

  it("takes the keeper's own limits before the usual ones, and the former again once that is taken back", async () => {
    const fridge = await place('Fridge', 'fridge')
    await aim(fridge, 'medium-term')
    const { entryId } = await aim(fridge, 'medium-term', { highestCelsius: 4 })
    await read(fridge, 6)
    expect(await stateOf(fridge)).toMatchObject({ state: 'too-warm' })
    await test.call('entry.undo', { entryId })
    expect(await stateOf(fridge)).toMatchObject({ state: 'good' })
  })

  it('suggests what such a place is usually meant for', async () => {
    const freezer = await place('Freezer', 'freezer')
    const box = await place('Box', 'box', freezer)
    expect((await test.call('storage.get', { placeId: box })).suggestedAim).toBe('long-term')
  })
})

describe('a reading', () => {
  it('is refused twice at one minute, and may be written again once the first is taken back', async () => {
    const room = await place('Back room', 'room')
    const { entryId } = await read(room, 21)
    const again = { placeId: room, on: TODAY, time: '08:30', temperature: 20 }
    expect(await test.refused('reading.record', again)).toMatchObject({
      code: 'already-there',
      field: 'time',
    })
    await test.call('entry.undo', { entryId })
    expect((await read(room, 20)).said).toBe('Read Back room: 20.0 °C')
  })

  it('is refused on a day that has not come', async () => {
    const room = await place('Back room', 'room')
    const tomorrow = { placeId: room, on: '2026-03-15', time: '08:30', temperature: 20 }
    expect(await test.refused('reading.record', tomorrow)).toMatchObject({ field: 'on' })
  })

  it('makes the forecast of the lots inside the place anew', async () => {
    const room = await place('Back room', 'room')
    const { lotId } = await takeIn(test, { harvest: '2026', placeId: await place('Box', 'box', room) })
    const before = await test.call('forecast.get', { lotId })
    await read(room, 35, 70)
    const after = await test.call('forecast.get', { lotId })
    expect(before.kind === 'forecast' && after.kind === 'forecast').toBe(true)
    if (before.kind !== 'forecast' || after.kind !== 'forecast') return
    expect(after.places[0]?.years?.middle).toBeLessThan(before.places[0]?.years?.middle ?? 0)
  })
})

describe('places side by side', () => {
  it('are compared over the seasons that were measured in each', async () => {
    const [cellar, loft] = [await place('Cellar', 'room'), await place('Loft', 'room')]
    for (const on of ['2026-01-10', '2026-01-11']) {
      await read(cellar, 9, 45, { on })
      await read(loft, 14, 60, { on })
    }
    await read(loft, 4, 20, { on: '2025-10-02' })
    const { places, words } = await test.call('storage.compare', { placeIds: [loft, cellar] })
    expect(places.map(({ path, seasons }) => [path, seasons.map(({ months }) => months)])).toEqual([
      ['Loft', ['Dec to Feb', 'Sep to Nov']],
      ['Cellar', ['Dec to Feb']],
    ])
    expect(words).toContain('Cellar keeps seed best over Dec to Feb.')
    expect(words).toContain('were not measured in all of them')
  })

  it('are not ranked without readings or without humidity in all', async () => {
    const [cellar, loft] = [await place('Cellar', 'room'), await place('Loft', 'room')]
    await read(cellar, 9, 45)
    const asked = { placeIds: [loft, cellar] }
    expect((await test.call('storage.compare', asked)).words).toContain(
      'At least two places must be measured',
    )
    await read(loft, 5)
    expect((await test.call('storage.compare', asked)).words).toContain('Humidity was read in some')
  })
})

describe('a logger file', () => {
  const TEXT =
    'Time,Temp °F,RH\n2026-03-01 08:00,64.4,42\n2026-03-01 09:00,68,43\nbattery,,\n2026-09-01 09:00,68,43'
  const file = (placeId: number, text = TEXT) => ({ placeId, fileName: 'room.csv', text })

  it('is shown as understood, with every refused row, before anything is written', async () => {
    const room = await place('Back room', 'room')
    const seen = await test.call('reading.preview-file', file(room))
    expect(seen).toMatchObject({ kind: 'read', readings: 2, unit: 'F', refusedRows: 2, already: 0 })
    if (seen.kind !== 'read') return
    expect(seen.sample[0]).toEqual({ at: '2026-03-01T08:00', words: '18.0 °C, 42 % humidity' })
    expect(seen.refused.map(({ because }) => because).join(' ')).toContain('that day has not come yet')
    expect((await stateOf(room))?.state).toBe('no-readings')
  })

  it('comes in whole or not at all, once, and is taken back as one', async () => {
    const room = await place('Back room', 'room')
    await read(room, 18, 42, { on: '2026-03-01', time: '08:00' })
    expect(await test.refused('reading.import-file', file(room))).toMatchObject({ field: 'leaveOut' })
    const { entryId, readings, leftOut } = await test.call('reading.import-file', {
      ...file(room),
      leaveOut: true,
    })
    expect([readings, leftOut]).toEqual([1, 3])
    expect(await test.refused('reading.import-file', file(room))).toMatchObject({ code: 'already-there' })
    expect((await test.call('storage.get', { placeId: room })).sum?.readings).toBe(2)
    await test.call('entry.undo', { entryId })
    expect((await test.call('storage.get', { placeId: room })).sum?.readings).toBe(1)
  })

  it('shows the cycles of a frost-free freezer and a week that failed', async () => {
    const freezer = await place('Freezer', 'freezer')
    await aim(freezer, 'long-term')
    const rows = Array.from({ length: 14 * 48 }, (_, index) => {
      const day = 1 + Math.floor(index / 48)
      const clock = `${String(Math.floor((index % 48) / 2)).padStart(2, '0')}:${index % 2 === 0 ? '00' : '30'}`
      const failed = day > 10 ? 15 : 0
      return `2026-02-${String(day).padStart(2, '0')} ${clock},${-19 + (index % 24 === 0 ? 7 : 0) + failed}`
    })
    const text = ['Time,Temp °C', ...rows].join('\n')
    await test.call('reading.import-file', file(freezer, text))
    const shown = await test.call('storage.get', { placeId: freezer })
    expect(shown.thaws).toMatchObject({ everyHours: 12, rise: 7 })
    expect(shown.thaws?.words).toContain('frost-free')
    expect(shown.spells[0]).toMatchObject({ from: '2026-02-11T00:00', hours: 96 })
    expect(shown.place.stateWords).toBe('too warm')
  })
})

it('takes no reading that cannot be, in either unit', async () => {
  const room = await place('Back room', 'room')
  for (const [temperature, unit] of [
    [150, 'C'],
    [-120, 'C'],
    [-149, 'F'],
    [212.5, 'F'],
  ] as const) {
    const ask = { placeId: room, on: TODAY, time: '08:30', temperature, humidity: null, unit }
    const told = await (async () => test.call('reading.record', ask))().then(
      () => 'taken',
      (thrown: Error) => thrown.name,
    )
    expect(told, `${temperature} ${unit}`).toMatch(/^(Refusal|ZodError)$/)
  }
  await read(room, 100)
})
