import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { takeInOn } from '../builders/earlier-gift.ts'
import { afresh, germination, kept } from '../builders/forecasts.ts'
import {
  aCollection,
  aGift,
  type TemporaryCollection,
  TODAY,
  takeIn,
} from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

describe('a lot begins to age', () => {
  const startOf = (lotId: number) => afresh(test, lotId).ageing.start
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
  expect(afresh(test, newLotId).forecast.today).toEqual(afresh(test, whole.lotId).forecast.today)
})

it('a part of a lot has all tests of the whole up to the day it was split off, and none of later', async () => {
  const whole = await takeInOn(test, '2026-01-01', { harvest: '2023' })
  await germination(test, whole.lotId, 100, 95, '2024-01-10')
  await germination(test, whole.lotId, 100, 80, '2026-01-10')
  await germination(test, whole.lotId, 50, 20, '2026-03-12')
  const part = { lotId: whole.lotId, on: '2026-03-01', amount: '20 g', role: 'reserve' } as const
  const { newLotId } = await test.call('lot.split', part)
  const shown = await test.call('forecast.get', { lotId: newLotId })
  if (shown.kind !== 'forecast') throw new Error(shown.because)
  expect(shown.tests.map(({ on, sprouted }) => [on, sprouted])).toEqual([
    ['2024-01-10', 95],
    ['2026-01-10', 80],
  ])
})

it('a part of a dried lot is as dry as the whole', async () => {
  const whole = await takeIn(test)
  await test.call('moisture.record', {
    lotId: whole.lotId,
    on: TODAY,
    measured: { method: 'meter', percent: 6 },
    note: '',
  })
  const part = { lotId: whole.lotId, on: TODAY, amount: '20 g', role: 'reserve' } as const
  const { newLotId } = await test.call('lot.split', part)
  expect(afresh(test, newLotId).moisture.measured).toBe(6)
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
    await germination(test, good.lotId, 100, 96)
    await germination(test, newLotId, 100, 40)
    return { good: good.lotId, poor: newLotId }
  }
  const sure = async (lotId: number) => {
    const shown = await test.call('forecast.get', { lotId })
    return shown.kind === 'forecast' ? shown.howSure.join(' ') : shown.because
  }

  it('are told as the one thought least alive, whichever was merged, and it is said', async () => {
    const { good, poor } = await two()
    const [before, weak] = [kept(test, good), kept(test, poor)]
    expect(before.viability).toBeGreaterThan(0.9)
    const { entryId } = await test.call('lot.merge', { intoLotId: good, fromLotIds: [poor], on: TODAY })
    expect(kept(test, good).stale_since).toBeNull()
    expect(kept(test, good).viability).toBeCloseTo(weak.viability ?? 0, 2)
    expect(await sure(good)).toContain('were poured together')
    await test.call('entry.undo', { entryId })
    expect(kept(test, good)).toEqual(before)
    expect(await sure(good)).not.toContain('merged')
  })

  it('are recomputed, and so are their parts, when a test of what was merged is taken back', async () => {
    const { good, poor } = await two()
    const { entryId } = await germination(test, poor, 400, 40)
    await test.call('lot.merge', { intoLotId: good, fromLotIds: [poor], on: TODAY })
    const part = { lotId: good, on: TODAY, amount: '5 g', role: 'reserve' } as const
    const { newLotId } = await test.call('lot.split', part)
    const before = [kept(test, good).viability ?? 0, kept(test, newLotId).viability ?? 0]
    await test.call('entry.undo', { entryId })
    expect(kept(test, good).viability).toBeGreaterThan((before[0] ?? 0) + 0.1)
    expect(kept(test, newLotId).viability).toBeGreaterThan((before[1] ?? 0) + 0.1)
  })

  it('are known better by a test of the whole', async () => {
    const { good, poor } = await two()
    await test.call('lot.merge', { intoLotId: good, fromLotIds: [poor], on: TODAY })
    const width = () => (kept(test, good).viability_high ?? 0) - (kept(test, good).viability_low ?? 0)
    const before = kept(test, good).viability ?? 0
    expect(width()).toBeLessThan(0.3)
    await germination(test, good, 400, 320)
    expect(kept(test, good).viability).toBeGreaterThan(before)
  })

  it('hand what they were merged from on to a part, but not to one split off before', async () => {
    const { good, poor } = await two()
    const split = { lotId: good, on: TODAY, amount: '5 g', role: 'reserve' } as const
    const early = await test.call('lot.split', split)
    await test.call('lot.merge', { intoLotId: good, fromLotIds: [poor], on: TODAY })
    const late = await test.call('lot.split', split)
    expect(kept(test, early.newLotId).viability).toBeGreaterThan(0.9)
    expect(kept(test, late.newLotId).viability).toBeLessThan(0.6)
  })
})
