import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { breedingOf } from '../../../db/domain/needs/population-goal.ts'
import { maximalCliques } from '../../../db/domain/season-plan/cliques.ts'
import { crossingGroup, toldGroup } from '../../../db/domain/season-plan/crossing.ts'
import { greedyPlan } from '../../../db/domain/season-plan/greedy.ts'
import {
  isolationDistance,
  unknownToPlan,
  whyIsolation,
} from '../../../db/domain/season-plan/isolation-distance.ts'
import type { IsolationMethod } from '../../../db/domain/season-plan/isolation-method.ts'
import { clashesOf, worthOf } from '../../../db/domain/season-plan/plan.ts'
import { metresBetween, positionOf } from '../../../db/domain/season-plan/position.ts'
import crops from '../../../db/reference/crops.json' with { type: 'json' }
import { seeded } from '../../bench/random.ts'
import { inEnglish } from '../../builders/in-english.ts'
import { aCandidate, aSite, at, drawnProblem } from '../../builders/season-plans.ts'

describe('what crosses', () => {
  test('beet and chard, the cabbages, and each squash by itself', () => {
    const groupOf = (species: string) => crossingGroup({ species, crop: species })
    expect(groupOf('Beta vulgaris (cicla)')).toBe(groupOf('Beta vulgaris'))
    expect(groupOf('Brassica oleracea (acephala)')).toBe(groupOf('Brassica oleracea (capitata)'))
    const squashes = ['Cucurbita pepo', 'Cucurbita maxima', 'Cucurbita moschata']
    expect(new Set(squashes.map(groupOf)).size).toBe(3)
  })

  test('two crops of no botanical name are not taken for one that crosses with itself', () => {
    const vine = { species: '', crop: 'Lantern vine' }
    expect(crossingGroup(vine)).toBe('Lantern vine')
    expect(crossingGroup(vine)).not.toBe(crossingGroup({ species: '', crop: 'Quay daisy' }))
    const unknown = { home: null, strict: null }
    expect(inEnglish<Told>(unknownToPlan({ ...unknown, ...vine }, 'mixed', 'quality'))).toMatch(
      /No distance is known.*Only Lantern vine/,
    )
    const pea = { home: 6, strict: null, species: 'Pisum sativum', crop: 'Pea' }
    expect(inEnglish<Told>(unknownToPlan(pea, 'selfer', 'quality'))).toBe('')
    expect(inEnglish<Told>(unknownToPlan(pea, 'selfer', 'conservation'))).toMatch(
      /No distance.*that mostly pollinates itself/,
    )
  })

  test('the table’s distance by grade in round figures, or a cautious one', () => {
    expect(isolationDistance({ home: 91, strict: 805 }, 'outcrosser', 'maintenance')).toBe(90)
    expect(isolationDistance({ home: 91, strict: 805 }, 'outcrosser', 'conservation')).toBe(800)
    expect(isolationDistance({ home: null, strict: null }, 'outcrosser', 'quality')).toBe(250)
    const rounded = [1.5, 6, 12, 46, 244, 305, 1_609, 3_219].map((home) =>
      isolationDistance({ home, strict: null }, 'mixed', 'quality'),
    )
    expect(rounded).toEqual([1.5, 6, 12, 45, 250, 300, 1_600, 3_200])
  })

  test('every distance of the crop table has its source, and one without a figure says so', () => {
    for (const crop of crops) {
      const home = crop.sources.isolation_home_m?.source ?? null
      const facts = {
        home: crop.isolation_home_m,
        strict: null,
        species: crop.species,
        crop: crop.common_name,
      }
      expect(home === null).toBe(facts.home === null)
      const breeding = breedingOf(crop.mating_system)
      expect(inEnglish<Told>(whyIsolation(home))).toMatch(
        home === null ? /^No source.*short end/ : /^Source: .*short end/,
      )
      expect(unknownToPlan(facts, breeding, 'quality') !== '').toBe(home === null)
    }
  })

  test('the cabbages are named as people call them', () => {
    const names = crops
      .filter((crop) => crossingGroup({ ...crop, crop: crop.common_name }) === 'Brassica oleracea')
      .map((crop) => crop.common_name)
    expect(inEnglish<Told>(toldGroup('Brassica oleracea', names))).toBe(
      'Broccoli, Brussels sprouts, Cabbage, Kale / collard or Kohlrabi (species Brassica oleracea)',
    )
    expect(inEnglish<Told>(toldGroup('Daucus carota', ['Carrot']))).toBe('Carrot (species Daucus carota)')
    expect(inEnglish<Told>(toldGroup('Lantern vine', ['Lantern vine']))).toBe('Lantern vine')
  })

  /** A degree of latitude is 111.2 km, and one of longitude half of that at 60 degrees (definition of the sphere). */
  test('metres from latitude and longitude', () => {
    const here = { latitude: 60, longitude: 10 }
    const origin = positionOf(60, 10, here)
    expect(metresBetween(origin, positionOf(60.01, 10, here))).toBeCloseTo(1_112, 0)
    expect(metresBetween(origin, positionOf(60, 10.01, here))).toBeCloseTo(556, 0)
    expect(() => positionOf(91, 0, here)).toThrow(RangeError)
    for (const [latitude, longitude] of [
      [-90.1, 0],
      [0, 180.1],
      [0, -180.1],
    ] as const)
      expect(() => positionOf(latitude, longitude, here)).toThrow(/^Not a place on the earth/)
    for (const end of [-90, 90]) expect(positionOf(end, 2 * end, here).north).toBeLessThan(1.7e7)
    expect(origin).toEqual({ east: 0, north: 0 })
    const [one, other] = [positionOf(60.01, 10.01, here), positionOf(60.02, 10.03, here)]
    expect(metresBetween(one, other)).toBeCloseTo(Math.hypot(1_112, 2 * 556), -1)
  })
})

describe('what is wrong with a plan', () => {
  const two = [aCandidate(1, { group: 'Zea mays' }), aCandidate(2, { group: 'Zea mays', isolation: 300 })]
  const sentences = (sites: ReturnType<typeof aSite>[], choices: ReturnType<typeof at>[], candidates = two) =>
    clashesOf({ candidates, sites }, choices).map(({ sentence }) => inEnglish<Told>(sentence))

  test('two that cross stand too near, unless one is covered', () => {
    const sites = [aSite(1, 0), aSite(2, 250)]
    expect(sentences(sites, [at(1, 1), at(2, 2)])).toEqual([
      'Variety 1 and Variety 2 cross: at Garden 1 and Garden 2, 250 m apart, and they need about 300 m. Cover one of them, or move it.',
    ])
    expect(sentences(sites, [at(1, 1, 'covered'), at(2, 2)])).toEqual([])
    expect(sentences([aSite(1, 0), aSite(2, 300)], [at(1, 1), at(2, 2)])).toEqual([])
  })

  test('one garden is as long as its beds', () => {
    const near = two.map((candidate) => ({ ...candidate, isolation: 4 }))
    expect(sentences([aSite(1, 0)], [at(1, 1), at(2, 1)], near)).toEqual([])
    expect(sentences([aSite(1, 0, { area: 9 })], [at(1, 1), at(2, 1)], near)[0]).toMatch(
      /both at Garden 1, whose beds are 3 m across, and they need about 4 m/,
    )
  })

  test.each([
    [aSite(1, 0, { takes: ['pea'] }), /does not grow the crop of Variety 1/],
    [aSite(1, 0, { area: 1 }), /takes 2 m² of bed, and Garden 1 has 1/],
    [
      aSite(1, 0, { neighbours: [{ crop: 'Maize', group: 'Zea mays', metres: 60 }] }),
      /Maize flowers 60 m from Garden 1/,
    ],
  ])('a site that does not suit it: %#', (site, sentence) => {
    expect(sentences([site], [at(1, 1)])[0]).toMatch(sentence)
  })

  test('too many, too much, and twice', () => {
    const candidates = [aCandidate(1), aCandidate(2), aCandidate(3)]
    const choices = [at(1, 1), at(2, 1), at(3, 1)]
    expect(sentences([aSite(1, 0, { mostVarieties: 2 })], choices, candidates)).toEqual([
      'Garden 1 takes at most 2 varieties, and this is 3.',
    ])
    expect(sentences([aSite(1, 0, { area: 5 })], choices, candidates)).toEqual([
      'Garden 1 has 5 m² of bed, and this takes 6.',
    ])
    expect(sentences([aSite(1, 0), aSite(2, 900)], [at(1, 1), at(1, 2)], candidates)).toEqual([
      'Variety 1 is planned twice.',
    ])
  })
})

describe('what flowers nearby', () => {
  const maize = aCandidate(1, { variety: 'Flint', group: 'Zea mays', isolation: 100 })
  const kinds = (
    site: Partial<ReturnType<typeof aSite>>,
    more: Partial<typeof maize> = {},
    way: IsolationMethod = 'open',
  ) =>
    clashesOf({ candidates: [{ ...maize, ...more }], sites: [aSite(1, 0, site)] }, [at(1, 1, way)]).map(
      (clash) => ({ ...clash, sentence: inEnglish<Told>(clash.sentence) }),
    )
  const neighbour = (group: string, metres: number) => ({ neighbours: [{ crop: 'Maize', group, metres }] })
  const roots = (group: string, metres: number, isolation = 50) => ({
    flowering: [{ variety: 'Old Drum', group, metres, isolation }],
  })

  test('counts where it crosses, nearer than what the variety wants, and only in the open', () => {
    expect(kinds(neighbour('Zea mays', 99))).toEqual([
      {
        kind: 'neighbour',
        choices: [at(1, 1)],
        sentence:
          'Maize flowers 99 m from Garden 1, and Flint needs about 100 m. Cover it, or grow it elsewhere.',
      },
    ])
    expect(kinds(neighbour('Zea mays', 100))).toEqual([])
    expect(kinds(neighbour('Beta vulgaris', 9.96))).toEqual([])
    expect(kinds(neighbour('Zea mays', 99), {}, 'covered')).toEqual([])
  })

  test('and roots of last season likewise, by what either wants, but not in its own second season', () => {
    expect(kinds(roots('Zea mays', 99)).map(({ kind }) => kind)).toEqual(['neighbour'])
    expect(kinds(roots('Zea mays', 100))).toEqual([])
    expect(kinds(roots('Zea mays', 149, 150))).toHaveLength(1)
    expect(kinds(roots('Beta vulgaris', 9))).toEqual([])
    expect(kinds(roots('Zea mays', 9), {}, 'covered')).toEqual([])
    expect(kinds(roots('Zea mays', 9), { flowersNextSeason: true })).toEqual([])
  })
})

test('every clash has its kind and names the choices that it is of', () => {
  const candidates = [1, 2].map((id) => aCandidate(id, { group: 'G', area: 15 }))
  const told = (sites: ReturnType<typeof aSite>[], ...choices: ReturnType<typeof at>[]) =>
    clashesOf({ candidates, sites }, choices).map(({ kind, choices: of }) => [kind, of])
  const both = [at(1, 1), at(2, 1)]
  expect(told([aSite(1, 0, { mostVarieties: 1 })], ...both)).toEqual([
    ['isolation', both],
    ['area', both],
    ['varieties', both],
  ])
  expect(told([aSite(1, 0), aSite(2, 900)], at(1, 1), at(1, 2))).toEqual([['twice', [at(1, 1), at(1, 2)]]])
  expect(told([aSite(1, 0, { takes: ['pea'], area: 14 })], at(1, 1, 'later'))).toEqual([
    ['crop', [at(1, 1, 'later')]],
    ['way', [at(1, 1, 'later')]],
    ['area', [at(1, 1, 'later')]],
  ])
  expect(told([aSite(1, 0, { area: 15 })], at(1, 1))).toEqual([])
  for (const gone of [at(3, 1), at(1, 3)])
    expect(() => told([aSite(1, 0)], gone)).toThrow(/^Not in this plan: accession/)
})

describe('the greedy plan', () => {
  test('has no clashes, keeps what is locked, and is worth something', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const problem = drawnProblem(seeded(seed), 12, 5)
        const plan = greedyPlan(problem, [])
        expect(clashesOf(problem, plan)).toEqual([])
        const locked = plan.slice(-1)
        const again = greedyPlan(problem, locked)
        expect(again).toEqual(expect.arrayContaining([...locked]))
        expect(clashesOf(problem, again)).toEqual([])
        expect(worthOf(problem, plan)).toBeGreaterThanOrEqual(0)
      }),
      { numRuns: 60 },
    )
  })
})

test('largest sets of joined nodes are those found among all subsets', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 7 }), fc.infiniteStream(fc.boolean()), (nodes, coins) => {
      const edges = new Set<string>()
      for (let a = 0; a < nodes; a += 1)
        for (let b = a + 1; b < nodes; b += 1) if (coins.next().value) edges.add(`${a} ${b}`)
      const joined = (a: number, b: number) => edges.has(`${Math.min(a, b)} ${Math.max(a, b)}`)
      const subsets = Array.from({ length: 2 ** nodes - 1 }, (_, bits) =>
        Array.from({ length: nodes }, (_, node) => node).filter((node) => ((bits + 1) >> node) & 1),
      ).filter((set) => set.every((a) => set.every((b) => a === b || joined(a, b))))
      const largest = subsets.filter(
        (set) =>
          !subsets.some((other) => other.length > set.length && set.every((node) => other.includes(node))),
      )
      const sorted = (sets: readonly (readonly number[])[]) => sets.map((set) => set.join(' ')).toSorted()
      expect(sorted(maximalCliques(nodes, joined))).toEqual(sorted(largest))
    }),
  )
})
