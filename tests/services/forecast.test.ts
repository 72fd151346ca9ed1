import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { isoDate } from '../../db/domain/dates/iso-date.ts'
import { crossingBand } from '../../db/domain/viability/band.ts'
import { constantsOf } from '../../db/domain/viability/constants.ts'
import { sigmaDays } from '../../db/domain/viability/equation.ts'
import { moistureInAir } from '../../db/domain/viability/pace-model.ts'
import { readingOf } from '../../db/services/context.ts'
import { forecastsLeft, refreshForecasts } from '../../db/services/keep-forecasts.ts'
import { forecastLots } from '../../db/services/lot-forecast.ts'
import { PlacesAgeing } from '../../db/services/place-ageing.ts'
import { settingsOf } from '../../db/services/settings.ts'
import {
  aCollection,
  aGift,
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

interface Kept {
  readonly stale_since: number | null
  readonly reckoned_on: string | null
  readonly basis: string | null
  readonly viability: number | null
  readonly viability_low: number | null
  readonly viability_high: number | null
  readonly crosses_on: string | null
}

function kept(lotId: number): Kept {
  return test.collection.sqlite.prepare('SELECT * FROM lot_forecast WHERE lot_id = ?').get(lotId) as Kept
}

/** The same forecast, worked out now from everything in the file. */
function afresh(lotId: number) {
  const reading = readingOf(test.collection, NOW)
  const [found] = forecastLots(reading, [lotId], settingsOf(reading), new PlacesAgeing(reading))
  if (found?.kind !== 'forecast') throw new Error(found?.because ?? 'No such lot')
  return found
}

let entries = 0
/** Writes rows that no operation writes yet, under an entry of their own. */
function write(sql: (entryId: number) => string): number {
  const { sqlite } = test.collection
  entries += 1
  const { lastInsertRowid } = sqlite
    .prepare(
      "INSERT INTO entry (key, operation, input_digest, answer, said, recorded_at) VALUES (?, 'by-hand', '', '{\"undoable\":true}', 'by hand', '')",
    )
    .run(`forecast-entry-${entries}`)
  sqlite.exec(sql(Number(lastInsertRowid)))
  return Number(lastInsertRowid)
}

const germination = (lotId: number, tested: number, sprouted: number, on = TODAY) =>
  test.call('germination.record', { lotId, on, tested, sprouted, fromStock: false })

/** Two weeks of readings of a place, so warm and so damp. */
function readings(placeId: number, celsius: number, percent: number): number {
  return write((entryId) => {
    const batch = `INSERT INTO climate_batch VALUES (${entryId}, ${placeId}, NULL, NULL, 14, 0, '', ${entryId});`
    const days = Array.from({ length: 14 }, (_, day) => {
      const at = `2026-02-${String(day + 1).padStart(2, '0')}T12:00`
      return `INSERT INTO climate_reading VALUES (${placeId}, '${at}', ${entryId}, ${100 * celsius}, ${10 * percent});`
    })
    return [batch, ...days].join('\n')
  })
}

describe('a forecast is kept with the lot', () => {
  it('from the entry that takes it in, as wide as a crop is known', async () => {
    const { lotId } = await takeIn(test)
    const row = kept(lotId)
    expect(row).toMatchObject({ stale_since: null, reckoned_on: TODAY, basis: 'constants-seen' })
    expect((row.viability_high ?? 0) - (row.viability_low ?? 0)).toBeGreaterThan(0.2)
  })

  it('by a rule of thumb where a crop has no constants', async () => {
    const { lotId } = await takeIn(test, { variety: { newVariety: { cropId: 'tomato', name: 'Weir' } } })
    expect(kept(lotId)).toMatchObject({ stale_since: null, basis: 'rule-of-thumb' })
  })

  it('of a crop that no law of sale names as one that starts like most, and not like poor seed', async () => {
    const { lotId } = await takeIn(test, {
      variety: { newVariety: { cropId: 'chickpea', name: 'Lock Gate' } },
      harvest: '',
    })
    expect(kept(lotId).viability).toBeGreaterThan(0.9)
  })

  it('and anew with each test: what is kept is what is worked out afresh', async () => {
    const { lotId } = await takeIn(test)
    await germination(lotId, 200, 120)
    const row = kept(lotId)
    const { forecast } = afresh(lotId)
    expect(row.viability).toBeCloseTo(forecast.today.middle, 12)
    expect(row.crosses_on).toBe(forecast.crossing.middle)
    expect(row.viability).toBeGreaterThan(0.53)
    expect(row.viability).toBeLessThan(0.67)
    expect((row.viability_high ?? 0) - (row.viability_low ?? 0)).toBeLessThan(0.15)
  })

  it('and as before when a test is taken back', async () => {
    const { lotId } = await takeIn(test)
    const before = kept(lotId)
    const { entryId } = await germination(lotId, 200, 60)
    expect(kept(lotId)).not.toEqual(before)
    await test.call('entry.take-back', { entryId })
    expect(kept(lotId)).toEqual(before)
  })

  it('and the other way of reading 85 % changes when it crosses', async () => {
    const { lotId } = await takeIn(test)
    await germination(lotId, 200, 176)
    const absolute = kept(lotId).crosses_on
    await test.call('collection.change-settings', { settings: { viabilityThresholdOf: 'the-start' } })
    expect((kept(lotId).crosses_on ?? '') > (absolute ?? '')).toBe(true)
  })
})

describe('what was measured round a lot makes its forecast stale, and the next refresh reckons it', () => {
  const refreshed = async (lotId: number) => {
    expect(kept(lotId).stale_since).not.toBeNull()
    expect(await test.call('forecast.left', {})).toEqual({ left: 1, lots: 1, held: false })
    expect(await test.call('forecast.hold', { held: true })).toEqual({ left: 1, lots: 1, held: true })
    expect(await test.call('forecast.refresh', {})).toEqual({ reckoned: 0, left: 1, lots: 1, held: true })
    expect((await test.call('collection.revision', {})).forecasts).toMatchObject({ left: 1, held: true })
    expect(await test.call('forecast.hold', { held: false })).toMatchObject({ left: 1, held: false })
    expect(await test.call('forecast.refresh', {})).toEqual({ reckoned: 1, left: 0, lots: 1, held: false })
    return kept(lotId)
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
    const before = kept(lotId)
    const entryId = readings(room, 30, 70)
    const warm = await refreshed(lotId)
    expect((warm.crosses_on ?? '') < (before.crosses_on ?? '')).toBe(true)
    await test.call('entry.take-back', { entryId })
    expect(kept(lotId).crosses_on).toBe(before.crosses_on)
  })

  it('a dry jar: the day moves away', async () => {
    const { lotId } = await inCupboard()
    const before = kept(lotId).crosses_on ?? ''
    write(
      (entryId) =>
        `INSERT INTO seed_moisture VALUES (1, ${lotId}, '${TODAY}', 'oven', 5.5, 5, 6, '{}', '', ${entryId});
         INSERT INTO lot_container VALUES (1, ${lotId}, 'jar', 1, 1, '${TODAY}', '', ${entryId});`,
    )
    const dry = await refreshed(lotId)
    expect((dry.crosses_on ?? '9999') > before).toBe(true)
  })

  it('drying today slows what is to come and gives nothing back of what was lost', async () => {
    const { lotId } = await inCupboard()
    const damp = afresh(lotId).ageing
    const noted = { lotId, on: TODAY, measured: { method: 'meter', percent: 7 }, note: '' } as const
    await test.call('moisture.note', noted)
    const { ageing, moisture } = afresh(lotId)
    expect(moisture.measured).toBe(7)
    expect(ageing.lostOn(isoDate(TODAY))).toBeCloseTo(damp.lostOn(isoDate(TODAY)), 12)
    expect(ageing.dailyAhead).toBeLessThan(damp.dailyAhead / 3)
  })

  it('seed that lay airtight before it was measured was as dry since it was closed in', async () => {
    const { lotId } = await inCupboard()
    const damp = afresh(lotId).ageing
    write(
      (entryId) =>
        `INSERT INTO lot_container VALUES (1, ${lotId}, 'jar', 1, 1, '2025-10-01', '', ${entryId});
         INSERT INTO seed_moisture VALUES (1, ${lotId}, '${TODAY}', 'oven', 7, 7, 7, '{}', '', ${entryId});`,
    )
    const { ageing } = afresh(lotId)
    expect(ageing.lostOn(isoDate(TODAY))).toBeCloseTo(
      (damp.lostOn(isoDate(TODAY)) * ageing.dailyAhead) / damp.dailyAhead,
      9,
    )
  })

  it('a move to the fridge, at once', async () => {
    const { lotId } = await inCupboard()
    const before = kept(lotId).crosses_on ?? ''
    const fridge = await test.call('place.create', { name: 'Fridge', kind: 'fridge', parentId: null })
    await test.call('lot.move', { lotIds: [lotId], placeId: fridge.placeId, on: TODAY })
    expect(kept(lotId).stale_since).toBeNull()
    expect((kept(lotId).crosses_on ?? '9999') > before).toBe(true)
  })

  it('seed too moist for any equation is refused, in words', async () => {
    const { lotId } = await inCupboard()
    write(
      (entryId) =>
        `INSERT INTO seed_moisture VALUES (1, ${lotId}, '${TODAY}', 'oven', 31, 30, 32, '{}', '', ${entryId});`,
    )
    expect(await refreshed(lotId)).toMatchObject({ basis: 'refused', viability: null, crosses_on: null })
  })
})

it('a part of a lot has aged where the whole lay before it was split off', async () => {
  const fridge = await test.call('place.create', { name: 'Fridge', kind: 'fridge', parentId: null })
  const whole = await takeIn(test, { placeId: fridge.placeId })
  const { newLotId } = await test.call('lot.split', {
    lotId: whole.lotId,
    on: TODAY,
    amount: '20 g',
    role: 'reserve',
    placeId: fridge.placeId,
  })
  expect(afresh(newLotId).forecast.today).toEqual(afresh(whole.lotId).forecast.today)
})

it('a part of a lot has all tests of the whole up to the day it was split off, and none of later', async () => {
  const whole = await takeIn(test, { harvest: '2023' })
  await germination(whole.lotId, 100, 95, '2024-01-10')
  await germination(whole.lotId, 100, 80, '2026-01-10')
  await germination(whole.lotId, 50, 20, '2026-03-12')
  const part = { lotId: whole.lotId, on: '2026-03-01', amount: '20 g', role: 'reserve' } as const
  const { newLotId } = await test.call('lot.split', part)
  const shown = await test.call('forecast.get', { lotId: newLotId })
  if (shown.kind !== 'forecast') throw new Error(shown.because)
  expect(shown.tests.map(({ on, sprouted }) => [on, sprouted])).toEqual([
    ['2024-01-10', 95],
    ['2026-01-10', 80],
  ])
})

describe('lots that were poured together', () => {
  const two = async () => {
    const good = await takeIn(test, { harvest: '2025' })
    const { newLotId } = await test.call('lot.split', {
      lotId: good.lotId,
      on: TODAY,
      amount: '20 g',
      role: 'reserve',
    })
    await germination(good.lotId, 100, 96)
    await germination(newLotId, 100, 40)
    return { good: good.lotId, poor: newLotId }
  }
  const sure = async (lotId: number) => {
    const shown = await test.call('forecast.get', { lotId })
    return shown.kind === 'forecast' ? shown.howSure.join(' ') : shown.because
  }

  it('are told as the one thought least alive, whichever was poured, and it is said', async () => {
    const { good, poor } = await two()
    const [before, weak] = [kept(good), kept(poor)]
    expect(before.viability).toBeGreaterThan(0.9)
    const { entryId } = await test.call('lot.join', { intoLotId: good, fromLotIds: [poor], on: TODAY })
    expect(kept(good).stale_since).toBeNull()
    expect(kept(good).viability).toBeCloseTo(weak.viability ?? 0, 2)
    expect(await sure(good)).toContain('were poured together')
    await test.call('entry.take-back', { entryId })
    expect(kept(good)).toEqual(before)
    expect(await sure(good)).not.toContain('poured')
  })

  it('are reckoned anew, and so are their parts, when a test of what was poured is taken back', async () => {
    const { good, poor } = await two()
    const { entryId } = await germination(poor, 400, 40)
    await test.call('lot.join', { intoLotId: good, fromLotIds: [poor], on: TODAY })
    const part = { lotId: good, on: TODAY, amount: '5 g', role: 'reserve' } as const
    const { newLotId } = await test.call('lot.split', part)
    const before = [kept(good).viability ?? 0, kept(newLotId).viability ?? 0]
    await test.call('entry.take-back', { entryId })
    expect(kept(good).viability).toBeGreaterThan((before[0] ?? 0) + 0.1)
    expect(kept(newLotId).viability).toBeGreaterThan((before[1] ?? 0) + 0.1)
  })

  it('are known better by a test of the whole', async () => {
    const { good, poor } = await two()
    await test.call('lot.join', { intoLotId: good, fromLotIds: [poor], on: TODAY })
    const width = () => (kept(good).viability_high ?? 0) - (kept(good).viability_low ?? 0)
    const before = kept(good).viability ?? 0
    expect(width()).toBeLessThan(0.3)
    await germination(good, 400, 320)
    expect(kept(good).viability).toBeGreaterThan(before)
  })

  it('hand what they were poured from on to a part, but not to one split off before', async () => {
    const { good, poor } = await two()
    const split = { lotId: good, on: TODAY, amount: '5 g', role: 'reserve' } as const
    const early = await test.call('lot.split', split)
    await test.call('lot.join', { intoLotId: good, fromLotIds: [poor], on: TODAY })
    const late = await test.call('lot.split', split)
    expect(kept(early.newLotId).viability).toBeGreaterThan(0.9)
    expect(kept(late.newLotId).viability).toBeLessThan(0.6)
  })
})

it('a part of a dried lot is as dry as the whole', async () => {
  const whole = await takeIn(test)
  await test.call('moisture.note', {
    lotId: whole.lotId,
    on: TODAY,
    measured: { method: 'meter', percent: 6 },
    note: '',
  })
  const part = { lotId: whole.lotId, on: TODAY, amount: '20 g', role: 'reserve' } as const
  const { newLotId } = await test.call('lot.split', part)
  expect(afresh(newLotId).moisture.measured).toBe(6)
})

describe('a lot begins to age', () => {
  const startOf = (lotId: number) => afresh(lotId).ageing.start
  it.each([
    ['2024', '2024-10-01'],
    ['2018-2021', '2019-10-01'],
    ['', TODAY],
    ['2026', TODAY],
  ])('of the harvest ‘%s’ on %s', async (harvest, start) => {
    expect(startOf((await takeIn(test, { harvest })).lotId)).toBe(start)
  })

  const longAgo = async (harvest: string) => {
    const gifts = [aGift({ harvest, amount: '400 seeds' })]
    const { taken } = await test.call('intake.record', { donor: null, receivedOn: '2020-05-01', gifts })
    return { lotId: taken[0]?.lotId ?? 0 }
  }

  it('when it came in, though it got its place only later', async () => {
    const { lotId } = await longAgo('')
    const { placeId } = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    await test.call('lot.move', { lotIds: [lotId], placeId, on: TODAY })
    expect(startOf(lotId)).toBe('2020-05-01')
  })

  it('a part of what was brought back as the whole: not when its accession first came in', async () => {
    const { lotId } = await longAgo('2019')
    const back = await test.call('return.record', {
      person: { newPerson: { name: 'Ilse Corran' } },
      receivedOn: TODAY,
      parentLotId: lotId,
      amount: '100 seeds',
      harvest: '2025',
    })
    const part = { lotId: back.taken.lotId, on: TODAY, amount: '40 seeds', role: 'reserve' } as const
    const { newLotId } = await test.call('lot.split', part)
    expect([startOf(back.taken.lotId), startOf(newLotId)]).toEqual(['2025-10-01', '2025-10-01'])
  })

  it('at its own harvest where it was grown from an older lot', async () => {
    const { lotId } = await takeIn(test, { harvest: '2015', amount: '400 seeds' })
    const person = { newPerson: { name: 'Ilse Corran' } }
    const back = await test.call('return.record', {
      person,
      receivedOn: TODAY,
      parentLotId: lotId,
      amount: '100 seeds',
      harvest: '2025',
    })
    expect(startOf(back.taken.lotId)).toBe('2025-10-01')
  })
})

describe('a threshold of its own', () => {
  it('of the accession or the crop moves the crossing at once', async () => {
    const { lotId, accessionId } = await takeIn(test)
    const usual = kept(lotId).crosses_on ?? '9999'
    await test.call('accession.override', { accessionId, viabilityThreshold: 0.5 })
    const lower = kept(lotId).crosses_on ?? '9999'
    expect(lower > usual).toBe(true)
    await test.call('accession.override', { accessionId, viabilityThreshold: null })
    expect(kept(lotId).crosses_on).toBe(usual)
    await test.call('crop.override', { cropId: 'bean', viabilityThreshold: 0.5, reason: 'our own tests' })
    expect(kept(lotId).crosses_on).toBe(lower)
  })
})

it('a forecast is worked out anew after a month', async () => {
  await takeIn(test)
  const later = readingOf(test.collection, new Date(2026, 3, 20, 10))
  expect(forecastsLeft(later)).toEqual({ left: 1, lots: 1, held: false })
  expect(refreshForecasts(later, { limit: 10 })).toEqual({ reckoned: 1, left: 0, lots: 1, held: false })
})

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
      (entryId) =>
        `UPDATE lot_place SET since = '2026-02-01' WHERE lot_id = ${lotId};
         INSERT INTO lot_place (lot_id, place_id, since, entry_id) VALUES (${lotId}, ${cool.placeId}, '2026-02-08', ${entryId});
         UPDATE lot SET place_id = ${cool.placeId} WHERE id = ${lotId};`,
    )
    readings(warm.placeId, 28, 65)
    readings(cool.placeId, 9, 40)
    const { ageing } = afresh(lotId)
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
    await test.call('readings.import-file', { placeId, fileName: 'chest.csv', text })
    const { ageing, usualDays } = afresh(lotId)
    const between = (from: string, until: string) =>
      ageing.lostOn(isoDate(until)) - ageing.lostOn(isoDate(from))
    expect(between('2026-02-01', '2026-03-01')).toBeCloseTo(21 * perDay(6, 40) + 7 * perDay(26, 40), 10)
    expect(between('2021-01-01', '2022-01-01')).toBeCloseTo(365 * perDay(6, 40), 10)
    expect(ageing.dailyAhead).toBeCloseTo(perDay(6, 40), 10)
    expect(usualDays).toBe(true)
  })
})

describe('days on which a lot was not there', () => {
  const days = (placeId: number, month: string, celsius: number, percent: number) =>
    write((entryId) => {
      const batch = `INSERT INTO climate_batch VALUES (${entryId}, ${placeId}, NULL, NULL, 14, 0, '', ${entryId});`
      const rows = Array.from(
        { length: 14 },
        (_, day) =>
          `INSERT INTO climate_reading VALUES (${placeId}, '${month}-${String(day + 1).padStart(2, '0')}T12:00', ${entryId}, ${100 * celsius}, ${10 * percent});`,
      )
      return [batch, ...rows].join('\n')
    })
  const maizeIn = async (placeId: number) => {
    const variety = { newVariety: { cropId: 'maize', name: 'Weir Dent' } }
    const { lotId } = await takeIn(test, { variety, placeId, harvest: '' })
    test.collection.sqlite.exec(`UPDATE lot_place SET since = '2026-02-01' WHERE lot_id = ${lotId}`)
    return lotId
  }

  it('are not remarked on', async () => {
    const { placeId } = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    days(placeId, '2023-08', 55, 40)
    days(placeId, '2026-02', 18, 50)
    expect(afresh(await maizeIn(placeId)).remarks).toEqual([])
    const other = await test.call('place.create', { name: 'Attic', kind: 'room', parentId: null })
    days(other.placeId, '2026-02', 55, 40)
    expect(afresh(await maizeIn(other.placeId)).remarks).toContain('warmer-than-fitted')
  })

  it('do not refuse a forecast; days on which it was there do', async () => {
    const { placeId } = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    days(placeId, '2023-08', 95, 40)
    days(placeId, '2026-02', 18, 50)
    const lotId = await maizeIn(placeId)
    expect(afresh(lotId).forecast.today.middle).toBeGreaterThan(0.8)
    test.collection.sqlite.exec(`UPDATE lot_place SET since = '2023-08-03' WHERE lot_id = ${lotId}`)
    expect(() => afresh(lotId)).toThrow(/nothing is known of stored seed/)
  })
})

describe('the outlook of a lot', () => {
  it('tells the curve, its tests, the line and what every other place would bring', async () => {
    const room = await test.call('place.create', { name: 'Hall', kind: 'room', parentId: null })
    const freezer = await test.call('place.create', { name: 'Chest', kind: 'freezer', parentId: null })
    const { lotId } = await takeIn(test, { placeId: room.placeId, harvest: '2025' })
    await germination(lotId, 100, 95)
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
    expect(await sureOf(lotId)).toContain('the 3 to 5 years that its seed is said to keep are weighed in')
    const { forecast, ageing } = afresh(lotId)
    const yearsToHalf = crossingBand(forecast.learnt.posterior, { part: 0.5, of: 'all-seeds' }).middle
    expect(yearsToHalf / ageing.dailyAhead / 365.25).toBeGreaterThan(1.5)
    readings(room.placeId, 20, 50)
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
    await test.call('moisture.note', noted)
    expect(await sureOf(lotId)).not.toContain('said to keep')
  })

  it('of seed far too moist says why there is none', async () => {
    const { lotId } = await takeIn(test)
    write(
      (entryId) =>
        `INSERT INTO seed_moisture VALUES (1, ${lotId}, '${TODAY}', 'oven', 31, 30, 32, '{}', '', ${entryId});`,
    )
    expect(await test.call('forecast.get', { lotId })).toMatchObject({
      kind: 'refused',
      because: expect.stringMatching(/moulds/),
    })
  })
})
