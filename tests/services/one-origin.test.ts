import fc from 'fast-check'
import { expect, it } from 'vitest'
import { germination } from '../builders/forecasts.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'
import { sized } from '../support/sized.ts'

const numRuns = sized(5, 150)

/** One seed lot, as it came in. */
interface Origin {
  readonly amount: string
  readonly sample: string
  readonly tested: number
  readonly sprouted: number
}

/** A division: a part in a hundred of one lot goes into a new one, or one lot into another of the same origin. */
interface Division {
  readonly join: boolean
  readonly lot: number
  readonly other: number
  readonly hundredths: number
  readonly reserve: boolean
}

const origin: fc.Arbitrary<Origin> = fc
  .record({
    amount: fc.oneof(
      fc.integer({ min: 40, max: 900 }).map((count) => `${count} seeds`),
      fc.integer({ min: 20_000, max: 200_000 }).map((mg) => `${mg} mg`),
      fc.integer({ min: 40, max: 900 }).map((count) => `about ${count}`),
    ),
    sample: fc.constantFrom('', '30 weigh 7.7 g'),
    tested: fc.constantFrom(0, 2, 20, 100),
    part: fc.nat(100),
  })
  .map(({ part, ...of }) => ({ ...of, sprouted: Math.round((of.tested * part) / 100) }))

const division: fc.Arbitrary<Division> = fc.record({
  join: fc.boolean(),
  lot: fc.nat(20),
  other: fc.nat(20),
  hundredths: fc.integer({ min: 5, max: 90 }),
  reserve: fc.boolean(),
})

/** Lots of one accession by the lot that came in, and of other accessions to be ranked with. */
async function stand(book: TemporaryCollection, origins: readonly Origin[]) {
  const ofOrigin: number[][] = []
  let accessionId = 0
  for (const { amount, sample, tested, sprouted } of origins) {
    const parent = ofOrigin[0]?.[0]
    if (parent === undefined) {
      const first = await takeIn(book, { amount, sample })
      accessionId = first.accessionId
      ofOrigin.push([first.lotId])
    } else {
      const grower = { newPerson: { name: 'Ilse Corran' } }
      const back = { person: grower, parentLotId: parent, receivedOn: TODAY, harvest: '2025', amount }
      ofOrigin.push([(await book.call('return.record', back)).taken.lotId])
    }
    if (tested > 0) await germination(book, ofOrigin.at(-1)?.[0] ?? 0, tested, sprouted)
  }
  for (const seeds of [60, 200, 500]) {
    const { lotId } = await takeIn(book, { amount: `${seeds} seeds` })
    await germination(book, lotId, 20, 10)
  }
  return { accessionId, ofOrigin }
}

async function divide(
  book: TemporaryCollection,
  lots: number[],
  { join, lot, other, hundredths, reserve }: Division,
) {
  const lotId = lots[lot % lots.length] ?? 0
  const held = (await book.call('lot.get', { lotId })).quantity
  const from = lots[other % lots.length] ?? 0
  if (join && from !== lotId) {
    await book.call('lot.merge', { intoLotId: lotId, fromLotIds: [from], on: TODAY })
    lots.splice(lots.indexOf(from), 1)
    return
  }
  const part = held.weighed
    ? `${Math.floor((held.massMg * hundredths) / 100)} mg`
    : `${Math.floor((held.count * hundredths) / 100)} seeds`
  if (/^[0-9] /.test(part)) return
  const role = reserve ? 'reserve' : 'working'
  lots.push((await book.call('lot.split', { lotId, on: TODAY, amount: part, role })).newLotId)
}

/** What a keeper is told of an accession that no division may change. */
async function told(book: TemporaryCollection, accessionId: number) {
  const { rank, state, cost, stock, regrowingsLeft, outlook } = await book.call('regeneration.get', {
    accessionId,
  })
  const { living, low, high, total, keep } = stock
  const costs = [cost, ...outlook.map((season) => season.cost)]
  const { needs } = await book.call('regeneration.list', {})
  return {
    plain: {
      rank,
      state,
      living,
      low,
      high,
      total,
      keep,
      regrowingsLeft,
      order: needs.map((need) => need.accessionId),
    },
    costs,
    bands: outlook.flatMap((season) => [season.low, season.high]),
  }
}

it('893 beans of one test wait as dearly in six jars as in one', async () => {
  const book = await aCollection()
  try {
    const { accessionId, ofOrigin } = await stand(book, [
      { amount: '893 seeds', sample: '', tested: 20, sprouted: 10 },
    ])
    await book.call('accession.change-policy', { accessionId, plantsToKeep: 250 })
    const whole = await told(book, accessionId)
    expect(whole.costs[0]).toBeGreaterThan(0.05)
    for (const parts of [2, 3, 4, 5, 6]) {
      const of = { join: false, lot: 0, other: 0, hundredths: 100 / (8 - parts), reserve: parts % 2 === 0 }
      await divide(book, ofOrigin[0] ?? [], of)
      const now = await told(book, accessionId)
      expect(now.plain).toEqual(whole.plain)
      for (const [index, cost] of now.costs.entries()) expect(cost).toBeCloseTo(whole.costs[index] ?? -1, 9)
    }
  } finally {
    book.remove()
  }
})

it('any splits, and joins of parts of one origin, leave need, cost, band and rank as they were', async () => {
  const origins = fc.array(origin, { minLength: 1, maxLength: 2 })
  await fc.assert(
    fc.asyncProperty(origins, fc.array(division, { minLength: 2, maxLength: 6 }), async (of, divisions) => {
      const book = await aCollection()
      try {
        const { accessionId, ofOrigin } = await stand(book, of)
        const before = await told(book, accessionId)
        for (const one of divisions) await divide(book, ofOrigin[one.lot % ofOrigin.length] ?? [], one)
        const after = await told(book, accessionId)
        expect(after.plain).toEqual(before.plain)
        for (const [index, cost] of after.costs.entries())
          expect(cost).toBeCloseTo(before.costs[index] ?? -1, 9)
        for (const [index, end] of after.bands.entries())
          expect(Math.abs(end - (before.bands[index] ?? -1))).toBeLessThanOrEqual(1)
      } finally {
        book.remove()
      }
    }),
    { numRuns, seed: 20261130, endOnFailure: true },
  )
}, 600_000)

it('a join of two origins that was taken back leaves the cost of waiting as it was', async () => {
  const book = await aCollection()
  try {
    const { accessionId, ofOrigin } = await stand(book, [
      { amount: '400 seeds', sample: '', tested: 20, sprouted: 10 },
      { amount: '400 seeds', sample: '', tested: 20, sprouted: 11 },
    ])
    const before = await told(book, accessionId)
    const [into = 0, from = 0] = ofOrigin.flat()
    const { entryId } = await book.call('lot.merge', { intoLotId: into, fromLotIds: [from], on: TODAY })
    await book.call('entry.undo', { entryId })
    expect(await told(book, accessionId)).toEqual(before)
  } finally {
    book.remove()
  }
})
