import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readingOf } from '../../db/services/book/context.ts'
import { forecastsLeft, refreshForecasts } from '../../db/services/forecast/save-forecasts.ts'
import { afresh, germination, kept } from '../builders/forecasts.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

describe('a forecast is kept with the lot', () => {
  it('from the entry that takes it in, as wide as a crop is known', async () => {
    const { lotId } = await takeIn(test)
    const row = kept(test, lotId)
    expect(row).toMatchObject({ stale_since: null, computed_on: TODAY, basis: 'constants-seen' })
    expect((row.viability_high ?? 0) - (row.viability_low ?? 0)).toBeGreaterThan(0.2)
  })

  it('by a rule of thumb where a crop has no constants', async () => {
    const { lotId } = await takeIn(test, { variety: { newVariety: { cropId: 'tomato', name: 'Weir' } } })
    expect(kept(test, lotId)).toMatchObject({ stale_since: null, basis: 'rule-of-thumb' })
  })

  it('of a crop that no law of sale names as one that starts like most, and not like poor seed', async () => {
    const { lotId } = await takeIn(test, {
      variety: { newVariety: { cropId: 'chickpea', name: 'Lock Gate' } },
      harvest: '',
    })
    expect(kept(test, lotId).viability).toBeGreaterThan(0.9)
  })

  it('and anew with each test: what is kept is what is worked out afresh', async () => {
    const { lotId } = await takeIn(test)
    await germination(test, lotId, 200, 120)
    const row = kept(test, lotId)
    const { forecast } = afresh(test, lotId)
    expect(row.viability).toBeCloseTo(forecast.today.middle, 12)
    expect(row.crosses_on).toBe(forecast.crossing.middle)
    expect(row.viability).toBeGreaterThan(0.53)
    expect(row.viability).toBeLessThan(0.67)
    expect((row.viability_high ?? 0) - (row.viability_low ?? 0)).toBeLessThan(0.15)
  })

  it('and as before when a test is taken back', async () => {
    const { lotId } = await takeIn(test)
    const before = kept(test, lotId)
    const { entryId } = await germination(test, lotId, 200, 60)
    expect(kept(test, lotId)).not.toEqual(before)
    await test.call('entry.undo', { entryId })
    expect(kept(test, lotId)).toEqual(before)
  })

  it('and the other way of reading 85 % changes when it crosses', async () => {
    const { lotId } = await takeIn(test)
    await germination(test, lotId, 200, 176)
    const absolute = kept(test, lotId).crosses_on
    await test.call('settings.change', { settings: { viabilityThresholdOf: 'the-start' } })
    expect((kept(test, lotId).crosses_on ?? '') > (absolute ?? '')).toBe(true)
  })
})

describe('a threshold of its own', () => {
  it('of the accession or the crop moves the crossing at once', async () => {
    const { lotId, accessionId } = await takeIn(test)
    const usual = kept(test, lotId).crosses_on ?? '9999'
    await test.call('accession.change-policy', { accessionId, viabilityThreshold: 0.5 })
    const lower = kept(test, lotId).crosses_on ?? '9999'
    expect(lower > usual).toBe(true)
    await test.call('accession.change-policy', { accessionId, viabilityThreshold: null })
    expect(kept(test, lotId).crosses_on).toBe(usual)
    await test.call('crop.change-policy', {
      cropId: 'bean',
      viabilityThreshold: 0.5,
      reason: 'our own tests',
    })
    expect(kept(test, lotId).crosses_on).toBe(lower)
  })
})

it('a forecast is worked out anew after a month', async () => {
  await takeIn(test)
  const later = readingOf(test.collection, new Date(2026, 3, 20, 10))
  expect(forecastsLeft(later)).toEqual({ left: 1, lots: 1, held: false })
  expect(refreshForecasts(later, { limit: 10 })).toEqual({ computed: 1, left: 0, lots: 1, held: false })
})
