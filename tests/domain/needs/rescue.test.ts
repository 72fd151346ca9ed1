import { expect, test } from 'vitest'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { adviseRescue } from '../../../db/domain/needs/rescue.ts'
import { seasonOf } from '../../../db/domain/needs/season.ts'
import { BRITISH, SEEDS } from '../../builders/domain-values.ts'

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
  manner: BRITISH,
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

test('a variety of which nothing is known is told to grow more, and a self-fertile one to save of every plant', () => {
  const told = (matingSystem: string | null) => adviseRescue({ ...facts, matingSystem }).advice.at(-2)
  expect(told('selfer')).toMatch(/^A few plants carry a self-fertile variety on/)
  expect(told('mixed')).toMatch(/^From a few plants the variety narrows/)
})

test('as much is sown as a full regrowing takes, where that is less than two thirds', () => {
  const lots = [{ lotId: 1, lotNumber: 'A', seeds: 90, viability: 0.5 }]
  expect(adviseRescue({ ...facts, lots })).toMatchObject({ sow: { seeds: 50 }, keepBack: 40 })
  const dead = [{ lotId: 1, lotNumber: 'A', seeds: 90, viability: 0 }]
  expect(adviseRescue({ ...facts, lots: dead })).toMatchObject({ sow: { seeds: 60 }, chance: 0 })
})

test('of lots with as many living seeds the better one is sown, and an empty one never', () => {
  const lots = [
    { lotId: 1, lotNumber: 'A', seeds: 0, viability: 1 },
    { lotId: 2, lotNumber: 'B', seeds: 40, viability: 0.25 },
    { lotId: 3, lotNumber: 'C', seeds: 20, viability: 0.5 },
  ]
  expect(adviseRescue({ ...facts, lots }).sow?.lotNumber).toBe('C')
})

test('the chance is that of the fewest plants, or more', () => {
  const lots = [{ lotId: 1, lotNumber: 'A', seeds: 3, viability: 0.5 }]
  const at = (fewestPlants: number) => adviseRescue({ ...facts, lots, emergence: 1, fewestPlants }).chance
  expect([0, 1, 2, 3].map(at)).toEqual([1, 0.75, 0.25, 0].map((chance) => expect.closeTo(chance, 12)))
})

test('seed that is set aside is told of where none is free, and all who may have the variety are asked', () => {
  const { advice } = adviseRescue({
    ...facts,
    lots: [],
    setAside: 12,
    mayHaveIt: ['Ilka Brandt', 'the Moor Library'],
  })
  expect(advice[0]).toMatch(/^No seed is free to sow here, but 12/)
  expect(advice[1]).toBe('Ask for seed before it is too late: Ilka Brandt; the Moor Library.')
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
