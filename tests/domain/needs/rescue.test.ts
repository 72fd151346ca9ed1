import { expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { adviseRescue, type RescueFacts } from '../../../db/domain/needs/rescue.ts'
import { seasonOf } from '../../../db/domain/needs/season.ts'
import { sowingAdvice } from '../../../db/domain/needs/sowing.ts'
import { inEnglish } from '../../builders/in-english.ts'

const POLICY = { regrowings: 3, plants: 20, emergence: 0.8 }
const LOTS = [
  { lotId: 1, lotNumber: 'HL-0001-A', seeds: 30, viability: 0.1, deviation: 0 },
  { lotId: 2, lotNumber: 'HL-0001-B', seeds: 12, viability: 0.5, deviation: 0 },
]

/** Advice for the last seeds of these lots, as the card of a need asks for it. */
const advise = (changes: Partial<RescueFacts> = {}) => {
  const lots = changes.lots ?? LOTS
  const advice = adviseRescue({
    lots,
    sow: sowingAdvice(lots, POLICY),
    plants: POLICY.plants,
    fewestPlants: 1,
    emergence: POLICY.emergence,
    matingSystem: 'selfer',
    family: 'Fabaceae',
    hardSeeded: true,
    unit: 'seed',
    setAside: 0,
    mayHaveIt: ['Ilka Brandt, donor'],
    ...changes,
  })
  return inEnglish<{ forKeeper: readonly Told[]; forGrower: readonly Told[] }>(advice)
}

test('sow two thirds of the lot with most living seed, and keep the rest of everything back', () => {
  const { forKeeper } = advise()
  expect(forKeeper[0]).toBe(
    'Sow 8 seeds of HL-0001-B, the lot with most living seed, and keep 34 back for a second try.',
  )
  expect(forKeeper[1]).toBe(
    'Expect about 3 of the 20 plants: 8 x 0.5 alive x 0.8 emergence. At least 1 plant, the fewest whose seed is worth saving: 98 times in 100.',
  )
  expect(forKeeper.at(-1)).toBe('Ask for seed before it is too late: Ilka Brandt, donor.')
})

test('the grower is told how to treat the seed, and of no other person', () => {
  const { forKeeper, forGrower } = advise()
  expect(forGrower.join(' ')).toMatch(/damp for a day.*Sow the seeds indoors.*save seed of every plant/)
  expect(forKeeper).toEqual(expect.arrayContaining([...forGrower]))
  expect(forGrower.join(' ')).not.toContain('Ilka')
})

test('pulses are damped, hard seed is nicked, and others are neither', () => {
  const treated = (family: string, hardSeeded: boolean) => advise({ family, hardSeeded }).forKeeper.join(' ')
  expect(treated('Fabaceae', true)).toMatch(/damp for a day.*Nick or sand/)
  expect(treated('Solanaceae', false)).not.toMatch(/damp for a day|Nick/)
})

test('a cross-pollinated variety is warned of inbreeding', () => {
  expect(advise({ matingSystem: 'outcrosser' }).forKeeper.join(' ')).toMatch(/inbreeding/)
  expect(advise().forKeeper.join(' ')).not.toMatch(/inbreeding/)
})

test('a variety of which nothing is known is told to grow more, and a self-fertile one to save of every plant', () => {
  const told = (matingSystem: string | null) => advise({ matingSystem }).forGrower.at(-1)
  expect(told('selfer')).toMatch(/^A few plants carry a self-fertile variety on/)
  expect(told('mixed')).toMatch(/^With few plants the variety loses/)
})

test('of lots with as many living seeds the better one is sown, and an empty one never', () => {
  const lots = [
    { lotId: 1, lotNumber: 'A', seeds: 0, viability: 1, deviation: 0 },
    { lotId: 2, lotNumber: 'B', seeds: 40, viability: 0.25, deviation: 0 },
    { lotId: 3, lotNumber: 'C', seeds: 20, viability: 0.5, deviation: 0 },
  ]
  expect(advise({ lots }).forKeeper[0]).toContain('13 seeds of C')
})

test('seed that is set aside is told of where none is free, and all who may have the variety are asked', () => {
  const { forKeeper } = advise({ lots: [], setAside: 12, mayHaveIt: ['Ilka Brandt', 'the Moor Library'] })
  expect(forKeeper[0]).toMatch(/^No seed is free to sow here, but 12/)
  expect(forKeeper[1]).toBe('Ask for seed before it is too late: Ilka Brandt and the Moor Library.')
})

test('the last seed of all is sown, and where there is none nobody is told to sow', () => {
  const one = [{ lotId: 1, lotNumber: 'A', seeds: 1, viability: 0.9, deviation: 0 }]
  expect(advise({ lots: one }).forKeeper[0]).toMatch(/^Sow 1 seed of A,.* keep 0 back/)
  expect(advise({ lots: [], mayHaveIt: [] })).toEqual({
    forKeeper: ['No seed is left to sow here.', expect.stringMatching(/^We know of nobody/)],
    forGrower: [],
  })
  const dead = [{ lotId: 1, lotNumber: 'A', seeds: 90, viability: 0, deviation: 0 }]
  expect(advise({ lots: dead }).forKeeper[0]).toBe('90 seeds are here, and none is thought to be alive.')
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
