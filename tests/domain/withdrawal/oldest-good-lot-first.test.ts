import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cautionName } from '../../../db/domain/cautions/caution-text.ts'
import {
  type OfferedLot,
  offeredAs,
  oldestGoodLotFirst,
  whyOffered,
} from '../../../db/domain/withdrawal/oldest-good-lot-first.ts'
import { inEnglish } from '../../builders/in-english.ts'

const aLot: OfferedLot = {
  test: { tested: 100, sprouted: 94, year: '2023' },
  viability: 0.9,
  threshold: 0.85,
  harvest: '2019',
  harvestYear: 2019,
  careful: [],
}

const anyLot: fc.Arbitrary<OfferedLot> = fc.record({
  test: fc.option(
    fc
      .tuple(fc.integer({ min: 1, max: 400 }), fc.double({ min: 0, max: 1, noNaN: true }))
      .map(([tested, part]) => ({ tested, sprouted: Math.round(tested * part), year: '2023' })),
  ),
  viability: fc.double({ min: 0, max: 1, noNaN: true }),
  threshold: fc.double({ min: 0.05, max: 1, noNaN: true }),
  harvest: fc.constantFrom('', '2019'),
  harvestYear: fc.integer({ min: 0, max: 2026 }),
  careful: fc.constantFrom<OfferedLot['careful']>([], [cautionName('treated')]),
})

function why(lot: OfferedLot): string {
  return inEnglish<string>(whyOffered(lot) as never).replaceAll('\u00a0', ' ')
}

describe('which lot is handed out first, and why', () => {
  test.each<[string, OfferedLot]>([
    ['harvest 2019, 94 % sprouted in 2023', aLot],
    ['harvest 2019; 94 % sprouted in 2023, but by now about 78 % are alive', { ...aLot, viability: 0.78 }],
    [
      'harvest 2019; only 60 % sprouted in 2023',
      { ...aLot, viability: 0.55, test: { tested: 100, sprouted: 60, year: '2023' } },
    ],
    ['harvest year unknown, not tested yet', { ...aLot, test: null, harvest: '' }],
    [
      'Careful: treated seed; harvest 2019, 94 % sprouted in 2023',
      { ...aLot, careful: [cautionName('treated')] },
    ],
  ])('%s', (words, lot) => {
    expect(why(lot)).toBe(words)
  })

  test('a test is called weak only where it was itself below what is asked', () => {
    fc.assert(
      fc.property(anyLot, (lot) => {
        const share = lot.test === null ? 1 : lot.test.sprouted / lot.test.tested
        if (why(lot).includes('only')) expect(share).toBeLessThan(lot.threshold)
        if (why(lot).includes('by now')) expect(lot.viability).toBeLessThan(lot.threshold)
      }),
    )
  })

  test('no lot with a caution stands before one without, no untested one before a tested good one, no weak one before an untested', () => {
    const place = { 'tested-good': 0, untested: 1, aged: 2, 'tested-weak': 2 } as const
    fc.assert(
      fc.property(fc.array(anyLot, { maxLength: 12 }), (lots) => {
        const order = (lot: OfferedLot) => place[offeredAs(lot)] + (lot.careful.length === 0 ? 0 : 3)
        const places = lots.toSorted(oldestGoodLotFirst).map(order)
        expect(places).toEqual(places.toSorted((a, b) => a - b))
      }),
    )
  })
})
