import { expect, test } from 'vitest'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { adviseRescue } from '../../../db/domain/needs/rescue.ts'
import { seasonOf } from '../../../db/domain/needs/season.ts'
import { SEEDS } from '../../builders/domain-values.ts'

const facts = {
  lots: [
    { lotId: 1, lotNumber: 'HL-0001-A', seeds: 30, viability: 0.1 },
    { lotId: 2, lotNumber: 'HL-0001-B', seeds: 12, viability: 0.5 },
  ],
  plants: 20,
  fewestPlants: 1,
  emergence: 0.8,
  matingSystem: 'selfer',
  family: 'Fabaceae',
  hardSeeded: true,
  unit: SEEDS,
  setAside: 0,
  mayHaveIt: ['Ilka Brandt, donor'],
}

test('sow two thirds of the lot with most living seed, and keep the rest of everything back', () => {
  const advice = adviseRescue(facts)
  expect(advice.sow).toEqual({ lotId: 2, lotNumber: 'HL-0001-B', seeds: 8 })
  expect(advice.keepBack).toBe(34)
  expect(advice.expectedPlants).toBeCloseTo(3.2, 12)
  expect(advice.chance).toBeCloseTo(1 - 0.6 ** 8, 9)
  expect(advice.advice[0]).toBe(
    'Sow 8 seeds of HL-0001-B, the lot with most living seed, and keep 34 back for a second try.',
  )
  expect(advice.advice[1]).toBe('Expect about 3 of the 20 plants: 8 x 0.5 alive x 0.8 emergence.')
  expect(advice.advice.at(-1)).toBe('Ask for seed before it is too late: Ilka Brandt, donor.')
})

test('pulses are damped, hard seed is nicked, and others are neither', () => {
  const treated = (family: string, hardSeeded: boolean) =>
    adviseRescue({ ...facts, family, hardSeeded }).advice.join(' ')
  expect(treated('Fabaceae', true)).toMatch(/damp for a day.*Nick or sand/)
  expect(treated('Solanaceae', false)).not.toMatch(/damp for a day|Nick/)
})

test('a cross-pollinated variety is warned of inbreeding', () => {
  expect(adviseRescue({ ...facts, matingSystem: 'outcrosser' }).advice.join(' ')).toMatch(/inbreeding/)
  expect(adviseRescue(facts).advice.join(' ')).not.toMatch(/inbreeding/)
})

test('the last seed of all is sown, and where there is none nobody is told to sow', () => {
  const one = [{ lotId: 1, lotNumber: 'A', seeds: 1, viability: 0.9 }]
  expect(adviseRescue({ ...facts, lots: one })).toMatchObject({ sow: { seeds: 1 }, keepBack: 0 })
  const none = adviseRescue({ ...facts, lots: [], mayHaveIt: [] })
  expect(none).toMatchObject({ sow: null, chance: 0 })
  expect(none.advice.join(' ')).toMatch(/No seed is left.*Nobody is known/)
})

test.each([
  ['2026-03-01', '2026-04-15'],
  ['2026-06-14', '2026-04-15'],
  ['2026-06-15', '2027-04-15'],
  ['2026-11-27', '2027-04-15'],
])('on %s the season is that of %s', (today, sowing) => {
  const season = seasonOf(isoDate(today), '04-15')
  expect(season.sowing).toBe(sowing)
  expect(season.year).toBe(Number(sowing.slice(0, 4)))
  expect(season.nextSowing.slice(4)).toBe('-04-15')
})
