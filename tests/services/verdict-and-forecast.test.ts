import fc from 'fast-check'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { takeInOn } from '../builders/earlier-gift.ts'
import { germination } from '../builders/forecasts.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'
import { sized } from '../support/sized.ts'

const numRuns = sized(25, 400)

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

const result = fc
  .tuple(
    fc.constantFrom(1, 2, 5, 20, 50, 200),
    fc.nat(100),
    fc.constantFrom(TODAY, '2026-01-10', '2024-05-02', '2019-11-20'),
  )
  .map(([tested, part, on]) => ({ tested, sprouted: Math.round((tested * part) / 100), on }))

/** What a card says of a lot: the verdict of each of its tests, latest first, and its forecast. */
async function said(lotId: number) {
  const { germination: results } = await test.call('lot.get', { lotId })
  const forecast = await test.call('forecast.get', { lotId })
  const { tests } = await test.call('germination.list', { state: 'finished', lotId })
  const records = await Promise.all(tests.map(({ testId }) => test.call('germination.get', { testId })))
  return { results, forecast, lines: tests, records }
}

it('no verdict of a test contradicts the forecast of its lot, nor says surely of one or two seeds', async () => {
  const crop = fc.constantFrom('bean', 'onion', 'maize', 'parsnip', 'lettuce')
  const harvest = fc.constantFrom('2010', '2018', '2025', '')
  await fc.assert(
    fc.asyncProperty(
      crop,
      harvest,
      fc.array(result, { minLength: 1, maxLength: 3 }),
      async (cropId, year, tests) => {
        const variety = { newVariety: { cropId, name: 'Any' } }
        const { lotId } = await takeIn(test, { variety, harvest: year, amount: '5000 seeds' })
        for (const { tested, sprouted, on } of tests) await germination(test, lotId, tested, sprouted, on)
        const { results, forecast, lines, records } = await said(lotId)
        for (const { words, tested } of results) if (tested < 3) expect(words).not.toContain('surely')
        const everywhere = results.map(({ words }) => words).toSorted()
        expect(lines.map(({ words }) => words).toSorted()).toEqual(everywhere)
        expect(records.map((record) => record.result?.words).toSorted()).toEqual(everywhere)
        if (forecast.kind === 'refused') return
        for (const { words, testedOn } of results) {
          if (testedOn !== TODAY) continue
          const told = `${words}; ${forecast.crossingWords}, ${forecast.chanceBelow}`
          if (words.includes('surely above'))
            expect(forecast.chanceBelow, told).toBeLessThanOrEqual(0.025 + 1e-9)
          if (words.includes('likely above'))
            expect(forecast.chanceBelow, told).toBeLessThanOrEqual(0.3 + 1e-9)
          if (words.includes('likely below'))
            expect(forecast.chanceBelow, told).toBeGreaterThanOrEqual(0.7 - 1e-9)
          if (words.includes('surely below'))
            expect(forecast.chanceBelow, told).toBeGreaterThanOrEqual(0.975 - 1e-9)
          if (words.includes('above or below'))
            expect(forecast.crossingWords, told).not.toContain('almost surely')
        }
        for (const { words, testedOn } of results.filter((one) => one.testedOn < '2026-02-01'))
          expect(words, testedOn).toContain('; then ')
      },
    ),
    { numRuns, seed: 20261130, endOnFailure: true },
  )
}, 600_000)

it('an end that is only looked at is judged as if it were one', async () => {
  const { lotId } = await takeInOn(test, '2026-02-01', { amount: '400 seeds' })
  const { testId } = await test.call('germination.start', {
    lotId,
    on: '2026-03-01',
    replicates: [50],
    finalDay: 9,
  })
  await test.call('germination.record-count', { testId, on: '2026-03-10', replicates: [{ normal: 5 }] })
  const choice = { hard: false, fresh: false }
  const asked = await test.call('germination.get', { testId, choice })
  expect(asked.result).toMatchObject({
    chanceFrom: 'forecast',
    words: expect.stringContaining('surely below 85\u00a0%'),
  })
  await test.call('germination.finish', { testId, on: TODAY })
  const { result } = await test.call('germination.get', { testId })
  expect(result?.words).toBe(asked.result?.words)
})
