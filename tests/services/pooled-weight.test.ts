import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'
import { sized } from '../support/sized.ts'

const numRuns = sized(8, 300)

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

/** A lot to pour: what of it is known, and its samples in grams per 50 seeds; none: by the crop's usual weight. */
interface Part {
  readonly amount: string
  readonly samples: readonly number[]
}

const part: fc.Arbitrary<Part> = fc.record({
  amount: fc.oneof(
    fc.integer({ min: 1, max: 400 }).map((count) => `${count} seeds`),
    fc.integer({ min: 500, max: 60_000 }).map((mg) => `${mg} mg`),
    fc.integer({ min: 1, max: 400 }).map((count) => `about ${count}`),
  ),
  samples: fc.array(
    fc.integer({ min: 800, max: 2_000 }).map((cg) => cg / 100),
    { maxLength: 3 },
  ),
})

/** Lots of one accession that grew in different years, each weighed by its own samples. */
async function standing(parts: readonly Part[]) {
  const lotIds: number[] = []
  for (const { amount, samples } of parts) {
    const [parent] = lotIds
    const lotId =
      parent === undefined
        ? (await takeIn(test, { amount })).lotId
        : (
            await test.call('return.record', {
              person: { newPerson: { name: `Grower ${lotIds.length}` } },
              parentLotId: parent,
              receivedOn: TODAY,
              amount,
            })
          ).taken.lotId
    const replicates = samples.map((grams) => ({ seeds: 50, grams }))
    if (replicates.length > 0) await test.call('lot.record-weight', { lotId, on: TODAY, replicates })
    lotIds.push(lotId)
  }
  return lotIds
}

const lot = (lotId: number) => test.call('lot.get', { lotId })
const join = (into: number, from: readonly number[]) =>
  test.call('lot.merge', { intoLotId: into, fromLotIds: [...from], on: TODAY })
const weighed = (lotId: number, mg: number) =>
  test.call('lot.record-count', { lotId, on: TODAY, found: `${mg} mg`, reason: 'weighed again' })

describe('lots of different seed weight poured together', () => {
  it('are weighed again without a loss: 30 g at 25 g a hundred and 30 g at 20 g', async () => {
    const [into = 0, from = 0] = await standing([
      { amount: '30 g', samples: [12.5] },
      { amount: '30 g', samples: [10] },
    ])
    const { balance } = await join(into, [from])
    expect(balance).toMatchObject({ count: 270, massMg: 60_000 })
    const { weight } = await lot(into)
    expect(weight.gramsPerHundred).toBeCloseTo(22.222_222, 6)
    expect(weight.words).toBe('22.22 g per hundred (of HL26-0001-A, HL26-0001-B together)')
    await weighed(into, 60_000)
    expect((await lot(into)).quantity.count).toBe(270)
  })

  it('keep what there is, what is doubtful of it, and find it again on the scales, in any order', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(part, { minLength: 2, maxLength: 4 }), fc.nat(3), async (parts, pick) => {
        const lotIds = await standing(parts)
        const before = await Promise.all(lotIds.map(lot))
        const sum = (of: (one: (typeof before)[number]) => number) =>
          before.reduce((all, one) => all + of(one), 0)
        const into = lotIds[pick % lotIds.length] ?? 0
        for (const from of lotIds.filter((id) => id !== into)) await join(into, [from])
        const merged = (await lot(into)).quantity
        expect(merged.count).toBe(sum(({ quantity }) => quantity.count))
        expect(merged.massMg).toBe(sum(({ quantity }) => quantity.massMg))
        const guessed = parts.some(({ amount }) => amount.startsWith('about'))
        if (merged.weighed && !guessed) {
          const doubted = sum(({ quantity }) => quantity.count * quantity.countDoubt)
          // Counted seed beside seed that was never weighed by the hundred goes by the crop's weight from then on, with its doubt.
          expect(merged.count * merged.countDoubt).toBeGreaterThanOrEqual(doubted - 1e-6)
          if (before.every(({ quantity }) => quantity.weighed))
            expect(merged.count * merged.countDoubt).toBeCloseTo(doubted, 6)
        }
        await weighed(into, merged.massMg)
        const { quantity } = await lot(into)
        expect(quantity.count).toBe(merged.count)
        expect(quantity.massMg).toBe(merged.massMg)
      }),
      { numRuns, seed: 20261130 },
    )
  }, 600_000)

  it('are counted no more where one of them was only weighed', async () => {
    const [into = 0, from = 0] = await standing([
      { amount: '100 seeds', samples: [12.5] },
      { amount: '30 g', samples: [10] },
    ])
    const { balance, entryId } = await join(into, [from])
    expect(balance).toMatchObject({ weighed: true, count: 250 })
    expect(balance.countDoubt).toBeGreaterThan(0)
    await test.call('entry.undo', { entryId })
    expect(await lot(into)).toMatchObject({
      weight: { gramsPerHundred: 25 },
      quantity: { weighed: false, count: 100, countDoubt: 0 },
    })
  })

  it('are not parted again once the weight of both was used', async () => {
    const [into = 0, from = 0] = await standing([
      { amount: '30 g', samples: [12.5] },
      { amount: '30 g', samples: [10] },
    ])
    const { entryId } = await join(into, [from])
    await test.call('lot.discard', { lotId: into, on: TODAY, amount: '6 g', reason: 'mouldy' })
    expect((await test.refused('entry.undo', { entryId })).sentence).toContain('used that weight')
  })

  it('keep their weighing where they are parts of one lot', async () => {
    const [whole = 0] = await standing([{ amount: '60 g', samples: [12.5, 12.7] }])
    const { newLotId } = await test.call('lot.split', {
      lotId: whole,
      on: TODAY,
      amount: '20 g',
      role: 'reserve',
    })
    const { weight, quantity } = await lot(whole)
    await join(whole, [newLotId])
    const after = await lot(whole)
    expect(after.weight).toEqual(weight)
    expect(after.quantity.countDoubt).toBe(quantity.countDoubt)
  })
})
