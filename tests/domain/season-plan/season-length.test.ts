import { expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { isBiennial } from '../../../db/domain/crops/life-cycle.ts'
import { hoursOfIsolation } from '../../../db/domain/season-plan/isolation-method.ts'
import { choiceWorth } from '../../../db/domain/season-plan/plan.ts'
import { isSeasonShort, toldShortSeason } from '../../../db/domain/season-plan/season-length.ts'
import { readCropTable } from '../../../db/migrations/crop-table.ts'
import { cropOfTable } from '../../builders/crop-table.ts'
import { inEnglish } from '../../builders/in-english.ts'
import { aCandidate, aSite } from '../../builders/season-plans.ts'

test('tender crops have a figure, and crops that stand frost have none', () => {
  for (const crop of ['tomato', 'pepper', 'bean', 'maize', 'squash-moschata', 'basil'])
    expect(cropOfTable(crop).daysToSeed).toBeGreaterThanOrEqual(90)
  for (const crop of ['pea', 'fava-bean', 'kale', 'rye', 'lettuce'])
    expect(cropOfTable(crop).daysToSeed).toBeNull()
})

test('no crop that takes two seasons has a figure', () => {
  const told = readCropTable().filter(({ daysToSeed }) => daysToSeed !== null)
  expect(told).toHaveLength(25)
  expect(told.filter(({ lifeCycle }) => isBiennial(lifeCycle))).toEqual([])
})

test('a season is short below what the crop needs, and never where either is not known', () => {
  expect(isSeasonShort(110, 109)).toBe(true)
  expect(isSeasonShort(110, 110)).toBe(false)
  expect(isSeasonShort(null, 30)).toBe(false)
  expect(isSeasonShort(110, null)).toBe(false)
})

test('the grower is told both figures and what to do', () => {
  expect(inEnglish<Told>(toldShortSeason('Pepper', 110, { name: 'Mill bed', seasonDays: 95 }, 0))).toMatch(
    /^Pepper usually takes 110 days without frost to ripe seed, and Mill bed has 95: raise it indoors/,
  )
  expect(inEnglish<Told>(toldShortSeason('Maize', 148, { name: 'Mill bed', seasonDays: 130 }, 28))).toMatch(
    /^Maize sown 28 days later takes 148 days/,
  )
  expect(inEnglish<Told>(toldShortSeason('Pepper', 110, { name: 'Mill bed', seasonDays: 110 }, 0))).toBe('')
  expect(inEnglish<Told>(toldShortSeason('Pea', null, { name: 'Mill bed', seasonDays: 30 }, 0))).toBe('')
})

test('a garden with a short season is worth half as much to a crop that needs a long one', () => {
  const pepper = aCandidate(1, { daysToSeed: 110, worth: 2 })
  const long = choiceWorth(pepper, aSite(1, 0, { seasonDays: 110 }), 'open')
  expect(choiceWorth(pepper, aSite(2, 0, { seasonDays: 109 }), 'open')).toBeCloseTo(long / 2)
  expect(choiceWorth(pepper, aSite(3, 0), 'open')).toBe(long)
  expect(choiceWorth(pepper, aSite(2, 0, { seasonDays: 109 }), 'covered')).toBeCloseTo(
    long / 2 - 0.01 * hoursOfIsolation('covered', 20, 'insect'),
  )
})
