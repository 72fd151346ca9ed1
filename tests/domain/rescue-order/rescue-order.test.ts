import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  carriedWith,
  lossOf,
  type PlaceInTree,
  type RescueFacts,
  rescueOrder,
} from '../../../db/domain/rescue-order/rescue-order.ts'
import { PLACE_KINDS } from '../../../db/domain/shared/closed-sets.ts'

const PLAIN: RescueFacts = {
  accessionId: 1,
  lastOfVariety: false,
  elsewhere: false,
  holders: 0,
  hardToReplace: false,
  places: [1],
}

const facts = fc.record({
  accessionId: fc.integer({ min: 1, max: 40 }),
  lastOfVariety: fc.boolean(),
  elsewhere: fc.boolean(),
  holders: fc.nat(6),
  hardToReplace: fc.boolean(),
  places: fc.uniqueArray(fc.integer({ min: 1, max: 8 }), { maxLength: 3 }),
})
const collections = fc.uniqueArray(facts, { selector: ({ accessionId }) => accessionId, maxLength: 40 })

describe('what would be lost', () => {
  it('is more for the last of a variety and for what no seed replaces, less with a duplicate or people who hold it', () => {
    fc.assert(
      fc.property(facts, (some) => {
        const with_ = (change: Partial<RescueFacts>) => lossOf({ ...some, ...change })
        expect(with_({ lastOfVariety: true })).toBeGreaterThan(with_({ lastOfVariety: false }))
        expect(with_({ hardToReplace: true })).toBeGreaterThan(with_({ hardToReplace: false }))
        expect(with_({ elsewhere: true })).toBeLessThan(with_({ elsewhere: false }))
        expect(with_({ holders: some.holders + 1 })).toBeLessThan(lossOf(some))
      }),
    )
  })

  it('puts the last of its variety with no duplicate before a landrace that lies elsewhere too', () => {
    const last = lossOf({ ...PLAIN, lastOfVariety: true })
    expect(last).toBeGreaterThan(
      lossOf({ ...PLAIN, lastOfVariety: true, hardToReplace: true, elsewhere: true }),
    )
    expect(last).toBeGreaterThan(lossOf({ ...PLAIN, hardToReplace: true }))
    expect(lossOf(PLAIN)).toBe(1)
  })
})

describe('the order of places', () => {
  it('saves less with each place, every accession that has a place once, and all there is together', () => {
    fc.assert(
      fc.property(collections, (accessions) => {
        const stops = rescueOrder(accessions)
        const saves = stops.map((stop) => stop.saves)
        expect(saves).toEqual(saves.toSorted((a, b) => b - a))
        const saved = stops.flatMap((stop) => stop.accessions.map(({ accessionId }) => accessionId))
        const placed = accessions.filter(({ places }) => places.length > 0)
        expect(saved.toSorted()).toEqual(placed.map(({ accessionId }) => accessionId).toSorted())
        const all = placed.reduce((sum, accession) => sum + lossOf(accession), 0)
        expect(saves.reduce((sum, each) => sum + each, 0)).toBeCloseTo(all, 6)
        for (const { place, accessions: there } of stops)
          for (const { places } of there) expect(places).toContain(place)
      }),
    )
  })

  it('begins with the place whose loss is greatest, whatever order the book has', () => {
    fc.assert(
      fc.property(collections, (accessions) => {
        const [first] = rescueOrder(accessions)
        const loss = (place: number) =>
          accessions
            .filter(({ places }) => places.includes(place))
            .reduce((sum, each) => sum + lossOf(each), 0)
        const most = Math.max(0, ...accessions.flatMap(({ places }) => places).map(loss))
        expect(first?.saves ?? 0).toBeCloseTo(most, 6)
        expect(rescueOrder(accessions.toReversed()).map(({ place }) => place)).toEqual(
          rescueOrder(accessions).map(({ place }) => place),
        )
      }),
    )
  })
})

describe('what is carried', () => {
  const tree = new Map(
    PLACE_KINDS.map((kind, index): [number, PlaceInTree] => [
      index + 1,
      { placeId: index + 1, parentId: index === 0 ? null : index, kind },
    ]),
  )

  it('is the shelf around a box and a jar, but no fridge and no room', () => {
    const [room, cupboard, fridge, freezer, shelf, box, jar] = PLACE_KINDS.map((_, index) => index + 1)
    expect([jar, box, shelf].map((place) => carriedWith(place ?? 0, tree))).toEqual([shelf, shelf, shelf])
    for (const place of [room, cupboard, fridge, freezer]) expect(carriedWith(place ?? 0, tree)).toBe(place)
  })

  it('is a jar by itself where it stands in the open', () => {
    expect(carriedWith(7, new Map([[7, { placeId: 7, parentId: null, kind: 'jar' }]]))).toBe(7)
  })
})
