import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { readAmount } from '../../../db/domain/amounts/read-amount.ts'
import { judgeNeed, NEED_STATES } from '../../../db/domain/needs/need.ts'
import { needFacts } from '../../builders/domain-values.ts'
import { inEnglish } from '../../builders/in-english.ts'

const living = (about: number, low = about, high = about, total = high) => ({ about, low, high, total })
/** Three regrowings of 60 plants at 0.8 emergence: 75 for one, 225 to keep. */
const judged = (facts: Parameters<typeof needFacts>[0]) => {
  const { sentence, reasons, arithmetic, ...figures } = judgeNeed(needFacts(facts))
  const told = { sentence, reasons, arithmetic }
  type Spoken = { sentence: Told; reasons: readonly Told[]; arithmetic: readonly Told[] }
  return { ...figures, ...inEnglish<Spoken>(told) }
}

describe('how an accession stands', () => {
  test.each([
    ['nothing left', living(0), null, 'none-left'],
    ['nothing left that lives', living(0, 0, 0, 30), null, 'rescue'],
    ['one seed short of one regrowing', living(74, 60, 90), null, 'rescue'],
    ['one regrowing and no more', living(75, 75, 75), null, 'regrow'],
    ['one seed short of what is kept', living(224, 200, 250), null, 'regrow'],
    ['enough by the middle figure only', living(225, 224, 240), null, 'watch'],
    ['enough even at the low end', living(225, 225, 240), null, 'well-stocked'],
    ['plenty but weak', living(4_000, 3_500, 4_500), 0.849, 'regrow'],
    ['plenty and just at the threshold', living(4_000, 3_500, 4_500), 0.85, 'well-stocked'],
    ['too few and weak', living(10), 0.2, 'rescue'],
    ['enough by the middle figure, and weak', living(230, 100, 300), 0.5, 'regrow'],
  ] as const)('%s: %j, tested %s is %s', (_, stock, testedViability, state) => {
    expect(judged({ living: stock, testedViability }).state).toBe(state)
  })

  test.each([
    ['a fresh harvest that is enough by itself', living(2_000, 1_500, 2_500), 225, 'watch'],
    ['one that is not', living(2_000, 1_500, 2_500), 224, 'regrow'],
    ['too few in all, whatever they are', living(224, 200, 250), 224, 'regrow'],
  ] as const)('weak seed beside %s', (_, stock, untested, state) => {
    expect(judged({ living: stock, testedViability: 0.5, untested }).state).toBe(state)
  })

  test('what is gone here stands at rescue as long as there is other seed of it', () => {
    expect(judged({ living: living(0), notCounted: 1 }).state).toBe('rescue')
  })

  test('states are listed worst first, each once', () => {
    expect(NEED_STATES).toEqual(['rescue', 'regrow', 'watch', 'well-stocked', 'none-left', 'not-kept'])
  })

  test('more living seed never makes it worse', () => {
    const rank = (about: number, low: number) =>
      NEED_STATES.indexOf(judged({ living: living(about, low), notCounted: 1 }).state)
    fc.assert(
      fc.property(fc.nat(400), fc.nat(400), fc.nat(100), (about, more, doubt) => {
        expect(rank(about + more, about + more - doubt)).toBeGreaterThanOrEqual(rank(about, about - doubt))
      }),
    )
  })
})

describe('in words', () => {
  test('the sentence says how much there is and how much to keep: 225 for three regrowings of 60 plants', () => {
    expect(judged({ living: living(183, 160, 201, 250) })).toEqual({
      state: 'regrow',
      keep: 225,
      oneRegrowing: 75,
      sentence: 'about 180 living seeds; keep at least 225',
      reasons: ['Fewer than the 225 to keep for 3 regrowings: about 180 living seeds.'],
      arithmetic: [
        'one regrowing: 60 plants / 0.8 emergence = 75 living seeds',
        'to keep: 3 x 60 plants / 0.8 emergence = 225 living seeds',
        'in the drawer: about 183 living of 250 seeds, between 160 and 201',
      ],
    })
  })

  test.each([
    [living(0), 'no living seeds; keep at least 225'],
    [living(1), 'about 1 living seed; keep at least 225'],
    [living(12_345), 'about 12,000 living seeds; keep at least 225'],
  ])('%j: %s', (stock, sentence) => {
    expect(judged({ living: stock }).sentence).toBe(sentence)
  })

  test('one regrowing, one plant, and the unit of the crop', () => {
    const unit = 'cluster'
    const one = judged({ policy: { regrowings: 1, plants: 1, emergence: 1 }, living: living(1), unit })
    expect(one.sentence).toBe('about 1 living cluster; keep at least 1')
    expect(one.arithmetic[1]).toBe('to keep: 1 x 1 plant / 1 emergence = 1 living cluster')
    expect(judged({ policy: { regrowings: 12, plants: 60, emergence: 0.8 } }).sentence).toMatch(
      /keep at least 900$/,
    )
  })

  test.each([
    [
      { living: living(50) },
      ['Too few for one regrowing of 60 plants: about 50 living seeds, and it needs 75.'],
    ],
    [
      { living: living(300, 160, 400) },
      [
        'Not sure there is enough: about 300 living seeds, perhaps only about 160 living seeds. Keep at least 225. Weigh or test to be sure.',
      ],
    ],
    [{ living: living(75) }, ['Fewer than the 225 to keep for 3 regrowings: about 75 living seeds.']],
    [{ living: living(225) }, ['Enough for the 225 to keep: about 230 living seeds.']],
    [
      { living: living(232), policy: { regrowings: 1, plants: 230, emergence: 1 } },
      ['Enough for the 230 to keep: about 230 living seeds.'],
    ],
    [
      { living: living(400), testedViability: 0.85, threshold: 0.855_56 },
      ['Weak: 85 % of its tested seed is thought to be alive, below the threshold of 85.56 %.'],
    ],
    [{ living: living(400) }, ['Enough for the 225 to keep: about 400 living seeds.']],
    [
      { living: living(400), testedViability: 0.8496 },
      ['Weak: 84.9 % of its tested seed is thought to be alive, below the threshold of 85 %.'],
    ],
    [
      { living: living(50), testedViability: 0.4 },
      [
        'Too few for one regrowing of 60 plants: about 50 living seeds, and it needs 75.',
        'Weak: 40 % of its tested seed is thought to be alive, below the threshold of 85 %.',
      ],
    ],
    [
      { living: living(2_000), testedViability: 0.4, untested: 1_204 },
      [
        'Weak: 40 % of its tested seed is thought to be alive, below the threshold of 85 %.',
        'Another about 1,200 living seeds were never tested, enough for the 225 to keep: test them before you regrow it.',
      ],
    ],
    [{ living: living(400), testedViability: 0.9 }, ['Enough for the 225 to keep: about 400 living seeds.']],
  ])('%j says why', (facts, reasons) => {
    expect(judged(facts).reasons).toEqual(reasons)
  })

  test('a rounded figure never stands on the other side of the figure that it is judged by', () => {
    const policy = fc.record({
      regrowings: fc.integer({ min: 1, max: 5 }),
      plants: fc.integer({ min: 1, max: 300 }),
      emergence: fc.constantFrom(0.6, 0.7, 0.8, 0.9, 1),
    })
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3_000 }), policy, (about, kept) => {
        const need = judged({ living: living(about), policy: kept })
        const said = readAmount(need.sentence.split(' living')[0] ?? '', { packetSeeds: null })
        const figure = said.kind === 'amount' && said.amount.kind === 'count' ? said.amount.count : Number.NaN
        expect(figure < need.keep).toBe(about < need.keep)
        expect(figure < need.oneRegrowing).toBe(about < need.oneRegrowing)
        expect(Math.abs(figure - about)).toBeLessThanOrEqual(0.05 * about)
      }),
      { numRuns: 2_000 },
    )
  })
})
