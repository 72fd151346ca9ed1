import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { takeInOn } from '../builders/earlier-gift.ts'
import {
  aCollection,
  aGift,
  type TemporaryCollection,
  TODAY,
  takeIn,
} from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const BEGUN = '2026-03-01'

async function begin(replicates = [100, 100, 100, 100], more: object = {}) {
  const { lotId } = await takeInOn(test, '2026-02-01', { amount: '2000 seeds' })
  const begun = { lotId, on: BEGUN, replicates, firstDay: 5, finalDay: 8, ...more }
  return { lotId, ...(await test.call('germination.start', begun)) }
}

describe('how to test a lot', () => {
  it('says where the last day comes from, where it is not of the source of the rest', async () => {
    const noted = ['bean', 'chickpea', 'thyme', 'borage'].map(async (cropId) => {
      const { lotId } = await takeIn(test, { variety: { newVariety: { cropId, name: `A ${cropId}` } } })
      const { conditions } = await test.call('germination.plan', { lotId })
      return [conditions.finalDay, conditions.finalDayNote.slice(0, 11)]
    })
    expect(await Promise.all(noted)).toEqual([
      [8, ''],
      [8, 'from memory'],
      [21, 'from memory'],
      [14, 'usual; none'],
    ])
  })

  it('suggests the conditions of the crop table with their source', async () => {
    const { lotId } = await takeIn(test, { amount: '2000 seeds' })
    const { conditions, layout } = await test.call('germination.plan', { lotId })
    expect(conditions).toMatchObject({
      firstDay: null,
      finalDay: 8,
      hardSeedPossible: true,
      confidence: 'seen',
    })
    expect(conditions.media[0]).toBe('rolled paper towel')
    expect(conditions.source).toContain('201.58')
    expect(layout.reduce((sum, each) => sum + each, 0)).toBeLessThanOrEqual(400)
  })

  it('says what a lot of sixty can bear', async () => {
    const { lotId } = await takeIn(test, { amount: '60 seeds' })
    const plan = await test.call('germination.plan', { lotId, threshold: 0.85, expected: 0.6 })
    expect(plan.layout).toEqual([10])
    expect(plan.smallest?.seeds).toBeLessThanOrEqual(60)
    expect(plan.sizes.every((size) => size.seeds <= 60)).toBe(true)
    expect(plan.staged.stages.map(({ tested }) => tested)).toEqual([20, 40, 60])
    for (const { regrow, keep, undecided } of plan.staged.outcomes)
      expect(regrow + keep + undecided).toBeCloseTo(1, 9)
    expect(plan.words).toMatch(
      /^Test 10 of the 60 seeds\. .* \d+ times in 100 whether .* are\. 19 seeds \(\d+\u00a0%\) would tell it 8\d times in 100, but that is more than 20\u00a0% of the lot\. A test in stages may need fewer than 19\.$/,
    )
    const few = await takeIn(test, { amount: '8 seeds' })
    const dear = await test.call('germination.plan', { lotId: few.lotId, threshold: 0.85, expected: 0.4 })
    expect(dear.words).toMatch(/20\u00a0% of the lot\.$/)
    const near = await test.call('germination.plan', { lotId, threshold: 0.85, expected: 0.85 })
    expect(near.smallest).toBeNull()
    expect(near.words).toContain('is too near')
  })

  it('plans for a threshold that nothing can pass as for the highest it can plan for', async () => {
    const { lotId, accessionId } = await takeIn(test, { amount: '200 seeds' })
    await test.call('accession.change-policy', { accessionId, viabilityThreshold: 1 })
    expect(await test.call('germination.plan', { lotId })).toMatchObject({ threshold: 0.99 })
  })

  it('gives the published stages where they hold', async () => {
    const { lotId } = await takeIn(test, { amount: '2000 seeds' })
    const { staged } = await test.call('germination.plan', { lotId, threshold: 0.85, expected: 0.9 })
    expect(staged).toMatchObject({ published: true, groupSize: 40 })
    expect(staged.stages[0]).toEqual({ tested: 40, regrowAtMost: 29, keepAtLeast: null, confidence: 'seen' })
  })

  it('says that treated seed is poisonous, and how it is handled', async () => {
    const { lotId } = await takeIn(test, { cautions: ['treated'] })
    expect((await test.call('germination.plan', { lotId })).cautions).toHaveLength(2)
  })
})

describe('which lots to test next', () => {
  /** Says when a lot is forecast to cross its threshold; null: never. */
  const forecast = (lotId: number, crossesOn: string | null) =>
    test.collection.sqlite
      .prepare('UPDATE lot_forecast SET crosses_on = ? WHERE lot_id = ?')
      .run(crossesOn, lotId)

  it('lists untested seed a year after it came, and frozen seed later than seed on the shelf', async () => {
    const { placeId: freezer } = await test.call('place.create', { name: 'Freezer', kind: 'freezer' })
    const { placeId: tin } = await test.call('place.create', { parentId: freezer, name: 'Tin', kind: 'box' })
    const untested = await takeIn(test)
    const shelf = await takeIn(test)
    const frozen = await takeIn(test, { placeId: tin })
    const good = { on: TODAY, tested: 100, sprouted: 92, fromStock: false }
    await test.call('germination.record', { lotId: shelf.lotId, ...good })
    await test.call('germination.record', { lotId: frozen.lotId, ...good })
    for (const { lotId } of [untested, shelf, frozen]) forecast(lotId, null)
    const { lots, total } = await test.call('germination.list-due', { withinDays: 20_000 })
    expect(lots.map(({ lotId, on }) => [lotId, on])).toEqual([
      [untested.lotId, '2027-03-14'],
      [shelf.lotId, '2031-03-14'],
      [frozen.lotId, '2036-03-14'],
    ])
    expect(lots[0]).toMatchObject({
      source: 'FAO Genebank Standards 2014, 4.3.1',
      confidence: 'seen',
      late: false,
    })
    expect(total).toBe(3)
    expect((await test.call('germination.list-due', {})).lots).toEqual([])
  })

  it('asks for a test at once of untested seed that is forecast to be below its threshold', async () => {
    const { lotId } = await takeIn(test)
    forecast(lotId, '2025-01-10')
    expect((await test.call('germination.list-due', {})).lots).toMatchObject([
      { on: TODAY, late: true, because: 'not tested yet, and forecast to be below its threshold already' },
    ])
  })

  it('goes by the lot it was split from for seed without a result of its own, and spares reference samples', async () => {
    const { lotId } = await takeIn(test, { amount: '400 seeds' })
    const part = { lotId, on: TODAY, amount: '60 seeds' }
    const { newLotId } = await test.call('lot.split', { ...part, role: 'reserve' })
    await test.call('lot.split', { ...part, role: 'reference' })
    await test.call('germination.record', { lotId, on: TODAY, tested: 50, sprouted: 45 })
    for (const id of [lotId, newLotId]) forecast(id, null)
    const { lots } = await test.call('germination.list-due', { withinDays: 20_000 })
    expect(lots.map((lot) => [lot.lotId, lot.on])).toEqual([
      [lotId, '2031-03-14'],
      [newLotId, '2031-03-14'],
    ])
    expect(lots[1]?.because).toContain('as the lot it was split from')
  })

  it('dates untested parts of a return from the return, however often they were divided', async () => {
    const old = await test.call('intake.record', {
      donor: null,
      receivedOn: '2020-05-01',
      gifts: [aGift({ amount: '400 seeds', harvest: '2019' })],
    })
    const back = await test.call('return.record', {
      person: { newPerson: { name: 'Ilse Corran' } },
      receivedOn: TODAY,
      parentLotId: old.taken[0]?.lotId ?? 0,
      amount: '100 seeds',
      harvest: '2025',
    })
    const half = { lotId: back.taken.lotId, on: TODAY, amount: '50 seeds', role: 'reserve' } as const
    const { newLotId: part } = await test.call('lot.split', half)
    const { newLotId: partOfPart } = await test.call('lot.split', {
      ...half,
      lotId: part,
      amount: '20 seeds',
    })
    for (const id of [back.taken.lotId, part, partOfPart]) forecast(id, null)
    const { lots } = await test.call('germination.list-due', { withinDays: 20_000 })
    const dueOn = new Map(lots.map((lot) => [lot.lotId, lot.on]))
    expect([back.taken.lotId, part, partOfPart].map((id) => dueOn.get(id))).toEqual(
      Array.from({ length: 3 }, () => '2027-03-14'),
    )
  })

  it('tests a third of the way to the forecast crossing where that is sooner, unless a test has seen it', async () => {
    const { lotId } = await takeIn(test)
    await test.call('germination.record', { lotId, on: TODAY, tested: 50, sprouted: 45, fromStock: false })
    expect(forecast(lotId, '2030-03-14').changes).toBe(1)
    const soonest = async () => (await test.call('germination.list-due', { withinDays: 20_000 })).lots[0]
    expect(await soonest()).toMatchObject({ on: '2027-07-14', confidence: 'from memory' })
    forecast(lotId, '2026-06-14')
    expect(await soonest()).toMatchObject({
      on: '2027-03-14',
      because: expect.stringContaining('a year after'),
    })
    forecast(lotId, '2026-03-01')
    expect(await soonest()).toMatchObject({ on: '2031-03-14' })
  })

  it('says which are being tested, and leaves out what holds nothing', async () => {
    const { lotId } = await begin([20])
    const empty = await takeIn(test)
    await test.call('lot.discard', { lotId: empty.lotId, on: TODAY, amount: 'everything', reason: 'mould' })
    const { lots } = await test.call('germination.list-due', { withinDays: 400 })
    expect(lots.map((lot) => [lot.lotId, lot.underTest])).toEqual([[lotId, true]])
  })
})
