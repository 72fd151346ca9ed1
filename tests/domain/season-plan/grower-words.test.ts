import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { type GrowingFacts, growingAdvice } from '../../../db/domain/season-plan/growing-words.ts'
import { ISOLATION_METHODS } from '../../../db/domain/season-plan/isolation-method.ts'
import { whyLeftOut } from '../../../db/domain/season-plan/left-out.ts'
import { type LotNotSown, whyNoSeed } from '../../../db/domain/season-plan/no-seed.ts'
import { SEED_EXTRACTIONS, usualExtraction } from '../../../db/domain/season-plan/seed-extraction.ts'
import { bedFor } from '../../../db/domain/season-plan/spacing.ts'
import { reliabilityOf, worthOfGrowing } from '../../../db/domain/season-plan/worth.ts'
import { cropOfTable } from '../../builders/crop-table.ts'
import { inEnglish } from '../../builders/in-english.ts'
import { aCandidate, aSite, at } from '../../builders/season-plans.ts'

describe('what a grower is told', () => {
  const FACTS: GrowingFacts = {
    plants: 24,
    seeds: 40,
    chance: 0.907,
    noSeed: [],
    ofTheLast: null,
    care: [],
    unit: 'seed',
    areaM2: 6,
    isolationM: 100,
    unknown: '',
    shortSeason: '',
    group: 'Pisum sativum',
    way: 'open',
    apartInTime: '',
    pollination: 'insect',
    breeding: 'mixed',
    biennial: false,
    extraction: 'dried-on-plant',
  }
  const told = (changes: Partial<GrowingFacts> = {}) =>
    Object.fromEntries(
      growingAdvice({ ...FACTS, ...changes }).map(({ heading, sentences }) => [
        inEnglish<Told>(heading),
        inEnglish<readonly Told[]>(sentences).join(' '),
      ]),
    )

  test('comes under its headings, with a second season only where there is one', () => {
    expect(Object.keys(told())).toEqual(['Sow', 'Keep apart', 'Select', 'Harvest and dry'])
    expect(Object.keys(told({ biennial: true })).at(-1)).toBe('Two seasons')
    expect(told({ biennial: true })['Two seasons']).toMatch(/^It flowers in its second year\..*in spring\.$/)
  })

  test('how much to sow, on how much bed', () => {
    expect(told()['Sow']).toBe(
      'You get 40 seeds. Raise 24 plants, on about 6 square metres of bed (a square of 50 cm for each). That many come up about 91 times in 100. If fewer come up, grow all of them and tell us.',
    )
    expect(told({ areaM2: 12.4 })['Sow']).toContain('about 12 square metres')
    expect(told({ areaM2: 9.96 })['Sow']).toContain('about 10 square metres')
    expect(told({ areaM2: 1.44, plants: 4 })['Sow']).toContain(
      'about 1.4 square metres of bed (a square of 60 cm',
    )
    expect(told({ seeds: null, noSeed: ['they are asleep'], shortSeason: 'Hurry.' })['Sow']).toMatch(
      /^No seed is ready yet: they are asleep\. Raise .* tell us\. Hurry\.$/,
    )
  })

  test('what to keep it apart from', () => {
    const fences =
      'within about 100 m, farther if you can, and look over the fences. If a neighbour’s flowers at the same time, tell us before you save seed.'
    expect(told()['Keep apart']).toBe(`Grow no other Pisum sativum ${fences}`)
    expect(
      told({ breeding: 'selfer', unknown: 'Nobody knows.', apartInTime: 'Sow late.' })['Keep apart'],
    ).toBe(
      `Grow no other Pisum sativum but what is planned ${fences} Sow late. It mostly pollinates itself; bees cross a few flowers anyway. Nobody knows.`,
    )
    expect(told({ isolationM: 1.25, breeding: 'outcrosser' })['Keep apart']).toContain('within about 1.3 m,')
  })

  test.each([
    [
      'self',
      /^Keep it covered while it flowers: a cage or fleece.*itself\. It is about 1\.5 hours of work in all\.$/,
    ],
    ['insect', /: a cage, or bags on the flowers.*those only\. It is about 4\.5 hours of work in all\.$/],
    ['wind', /: insect netting .*that only\. It is about 7 hours of work in all\.$/],
  ] as const)('how to cover what is pollinated by %s', (pollination, words) => {
    expect(told({ way: 'covered', pollination })['Keep apart']).toMatch(words)
  })

  test('which plants to save from', () => {
    const rogue = 'Pull out what is plainly another variety or diseased, before it flowers.'
    expect(told({ breeding: 'selfer' })['Select']).toBe(
      `${rogue} Save seed of all the remaining plants, about the same of each.`,
    )
    expect(told({ plants: 1_200 })['Select']).toBe(
      `${rogue} Save seed of as many plants as you can, all 1,200 if possible, about the same of each: few parents weaken it.`,
    )
  })

  test('the last seeds are not spoken of as a full regrowing', () => {
    const sheet = told({
      seeds: 3,
      plants: 10,
      areaM2: 0.6,
      ofTheLast: 2,
      care: ['Sow indoors.', 'Save of all.'],
    })
    expect(sheet['Sow']).toBe(
      'You get 3 seeds, the last that there are. Expect about 2 of the 10 plants that we would like, and raise every one (a square of 24 cm for each). Tell us soon how many came up.',
    )
    expect(sheet['The last seeds']).toBe('Sow indoors. Save of all.')
    expect(sheet['Select']).toContain('Save seed of all the remaining plants')
    expect(told()).not.toHaveProperty('The last seeds')
    expect(told({ biennial: true, ofTheLast: 2 })['Two seasons']).toContain('keep every one over winter')
  })

  test('nothing on any sheet can be read as half of the plants', () => {
    for (const extraction of SEED_EXTRACTIONS)
      for (const breeding of ['selfer', 'mixed', 'outcrosser'] as const)
        for (const way of ISOLATION_METHODS)
          for (const ofTheLast of [null, 2])
            expect(
              Object.values(told({ extraction, breeding, way, ofTheLast, biennial: true })).join(' '),
            ).not.toMatch(/every (other|second)|other (plant|half)|alternate/)
  })

  test('how seed in wet flesh is got out, and how dry seed ripens', () => {
    const harvest = (crop: string) => {
      const { seedExtraction: extraction } = cropOfTable(crop)
      return told({ ...(extraction === null ? {} : { extraction }) })['Harvest and dry']
    }
    for (const crop of ['melon', 'eggplant', 'tomatillo', 'watermelon'])
      expect(harvest(crop)).toMatch(/^Let the fruit ripen fully.* never above 35 °C/)
    for (const crop of ['tomato', 'cucumber'])
      expect(harvest(crop)).toMatch(/stand for two days, then wash.* never above 35 °C/)
    for (const crop of ['squash-pepo', 'squash-maxima', 'squash-moschata'])
      expect(harvest(crop)).toMatch(/lie for three weeks.* never above 35 °C/)
    expect(harvest('pepper')).toMatch(/wear gloves\. Dry it/)
    for (const crop of ['pea', 'maize', 'carrot'])
      expect(harvest(crop)).toMatch(/^Let pods and heads dry on the plant.* never above 35 °C/)
  })

  test('seed of a crop of which nobody said it is got out as in its family', () => {
    expect(usualExtraction('Solanaceae')).toBe('washed')
    expect(usualExtraction('Cucurbitaceae')).toBe('washed')
    expect(usualExtraction('')).toBe('dried-on-plant')
  })
})

describe('why no seed can go out', () => {
  const lot = (changes: Partial<LotNotSown> = {}): LotNotSown => ({
    lotNumber: 'HL24-0001-A',
    seeds: 300,
    role: 'working',
    quarantine: null,
    ...changes,
  })

  test.each([
    [[], 'no seed of it is left here'],
    [[lot({ seeds: 0 })], 'no seed of it is left here'],
    [[lot()], '300 seeds of HL24-0001-A are thought to be dead'],
    [[lot({ role: 'reserve' })], '300 seeds of HL24-0001-A are thought to be dead'],
    [[lot({ role: 'duplicate-elsewhere' })], '300 seeds of HL24-0001-A are kept elsewhere'],
    [
      [lot({ quarantine: 'mould. ' }), lot({ seeds: 0 }), lot({ role: 'reference', lotNumber: 'B' })],
      '300 seeds of HL24-0001-A are in quarantine (mould); 300 seeds of B are the reference sample, which is not sown without a reason',
    ],
  ])('%#: lot by lot', (lots, words) => {
    expect(inEnglish<readonly Told[]>(whyNoSeed(lots, 'seed')).join('; ')).toBe(words)
  })
})

describe('why a variety is left out', () => {
  const candidate = aCandidate(1, { area: 12, cropId: 'bean' })

  test('is told of the garden where least is wrong', () => {
    const sites = [aSite(1, 0, { takes: ['pea'], area: 5 }), aSite(2, 900, { takes: ['pea'] })]
    expect(inEnglish<Told>(whyLeftOut({ candidates: [candidate], sites }, [], candidate))).toBe(
      'Garden 2 does not grow the crop of Variety 1.',
    )
  })

  test('counts what is planned there already', () => {
    const other = aCandidate(2, { area: 10 })
    expect(
      inEnglish<Told>(
        whyLeftOut({ candidates: [candidate, other], sites: [aSite(1, 0)] }, [at(2, 1)], candidate),
      ),
    ).toBe('Garden 1 has 20 m² of bed, and this takes 22.')
  })

  test('is that nothing is gained where nothing is wrong, or that there is no garden', () => {
    const problem = { candidates: [candidate], sites: [aSite(1, 0)] }
    expect(inEnglish<Told>(whyLeftOut(problem, [], candidate))).toBe(
      'Growing it this season would be more work than it is worth.',
    )
    expect(inEnglish<Told>(whyLeftOut({ ...problem, sites: [] }, [], candidate))).toBe(
      'There is no garden to grow it in.',
    )
  })
})

test('growing is worth what it averts, twice for the only source, and a little by state', () => {
  const worth = (state: 'rescue' | 'well-stocked', cost: number, onlySource: boolean) =>
    worthOfGrowing({ state, cost, onlySource })
  expect(worth('rescue', 0.4, false) - worth('well-stocked', 0.4, false)).toBeCloseTo(0.28, 12)
  expect(worth('rescue', 0.4, true) - worth('rescue', 0.4, false)).toBeCloseTo(0.4, 12)
  expect(worth('rescue', 0.4, false) - worth('rescue', 0, false)).toBeCloseTo(0.4, 12)
})

test('a grower is relied on by Laplace’s rule', () => {
  expect([reliabilityOf(0, 0), reliabilityOf(8, 8), reliabilityOf(8, 0)]).toEqual([0.5, 0.9, 0.1])
})

test('bed grows with the plants, and herbs have a usual figure', () => {
  expect(bedFor(cropOfTable('bean').bedArea, 50)).toBeCloseTo(3, 12)
  expect(cropOfTable('thyme').bedArea).toBeNull()
  expect(bedFor(null, 50)).toBeCloseTo(4.5, 12)
})
