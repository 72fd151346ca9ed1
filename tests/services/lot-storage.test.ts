import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { takeInOn } from '../builders/earlier-gift.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
let lotId: number
beforeEach(async () => {
  test = await aCollection()
  lotId = (await takeIn(test)).lotId
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const storage = () => test.call('lot.get-storage', { lotId })
const oven = { method: 'oven', freshGrams: 15, dryGrams: 14.2, dishGrams: 5 } as const

describe('moisture', () => {
  it('comes from oven-dry masses without the dish, on the fresh weight', async () => {
    const { moisture } = await test.call('moisture.record', { lotId, on: TODAY, measured: oven })
    expect(moisture.percent).toBeCloseTo(8, 6)
    expect(moisture.words).toBe('8 % moisture')
    expect((await storage()).moistures).toMatchObject([
      { on: TODAY, method: 'oven', words: '8 % moisture (oven)' },
    ])
  })

  it('comes from the air of a sealed jar by the published relation, with its doubt', async () => {
    // Starchy seed of bean (oil about 1.5 %) at 20 °C and 30 % RH: 9.3 % of dry weight, 8.5 % of fresh weight, by hand.
    const measured = { method: 'sealed-jar', humidity: 30, temperature: 20 } as const
    const celsius = await test.call('moisture.preview', { lotId, measured })
    expect(celsius.percent).toBeGreaterThan(8)
    expect(celsius.percent).toBeLessThan(9.2)
    expect([celsius.percent - celsius.low, celsius.high - celsius.percent].every((off) => off >= 1)).toBe(
      true,
    )
    const fahrenheit = { ...measured, temperature: 68, unit: 'F' } as const
    expect(await test.call('moisture.preview', { lotId, measured: fahrenheit })).toEqual(celsius)
  })

  it('is refused where the relation is not known, saying what to do', async () => {
    const measured = { method: 'sealed-jar', humidity: 85, temperature: 20 } as const
    const problem = await test.refused('moisture.record', { lotId, on: TODAY, measured })
    expect(problem).toMatchObject({ field: 'measured.humidity' })
    expect(problem.sentence).toContain('dry it first')
    expect((await storage()).moistures).toEqual([])
  })

  it('refuses masses that cannot be, at the field they stand in', async () => {
    const swapped = { ...oven, freshGrams: 14.2, dryGrams: 15 }
    expect(await test.refused('moisture.preview', { lotId, measured: swapped })).toMatchObject({
      field: 'measured.dryGrams',
    })
  })

  it('is a span where it was felt in the hand, and is taken back', async () => {
    const measured = { method: 'break-check', gives: 'bends' } as const
    const { entryId, moisture } = await test.call('moisture.record', { lotId, on: TODAY, measured })
    expect(moisture).toMatchObject({ low: 8, high: 13 })
    expect(moisture.advice.join(' ')).toContain('Do not close it in airtight')
    await test.call('entry.undo', { entryId })
    expect((await storage()).moistures).toEqual([])
  })
})

describe('a freezer', () => {
  const freezer = async () => {
    const { placeId } = await test.call('place.create', { name: 'Freezer', kind: 'freezer' })
    return (await test.call('place.create', { name: 'Box', kind: 'box', parentId: placeId })).placeId
  }
  const previewed = async (placeId: number) =>
    (await test.call('lot.preview-move', { lotIds: [lotId], placeId })).cautions

  it('is warned of for seed that is too moist or was never measured, before and when it is moved', async () => {
    const box = await freezer()
    expect((await previewed(box))[0]?.sentence).toContain('Measure its moisture first')
    const measured = { method: 'meter', percent: 12 } as const
    await test.call('moisture.record', { lotId, on: TODAY, measured })
    const cautions = await previewed(box)
    expect(cautions[0]?.sentence).toContain('Too moist to freeze: it may hold up to 13 % water')
    expect(await test.call('lot.move', { lotIds: [lotId], placeId: box, on: TODAY })).toMatchObject({
      cautions,
    })
    expect((await storage()).cautions).toEqual(cautions.map(({ sentence }) => sentence))
    const { lots } = await test.call('storage.get', { placeId: box })
    expect(lots).toMatchObject([{ lotId, caution: cautions[0]?.sentence }])
  })

  it('says nothing against dry seed, and a shelf nothing against moist seed', async () => {
    const { placeId: shelf } = await test.call('place.create', { name: 'Shelf', kind: 'shelf' })
    expect(await previewed(shelf)).toEqual([])
    await test.call('moisture.record', { lotId, on: TODAY, measured: { ...oven, dryGrams: 14.5 } })
    expect(await previewed(await freezer())).toEqual([])
  })
})

describe('a container', () => {
  const keep = (kind: 'envelope' | 'jar', since: string) =>
    test.call('lot.change-container', {
      lotIds: [lotId],
      kind,
      airtight: kind === 'jar',
      pestProof: kind === 'jar',
      since,
    })

  it('is the latest by day that stands; beans in paper are cautioned about', async () => {
    await keep('envelope', '2026-03-01')
    expect((await storage()).cautions.join(' ')).toContain('Weevils and moths')
    const { entryId } = await keep('jar', '2026-03-10')
    await keep('envelope', '2026-02-01')
    expect((await storage()).container).toMatchObject({ kind: 'jar', airtight: true, since: '2026-03-10' })
    expect((await storage()).cautions).toEqual([])
    await test.call('entry.undo', { entryId })
    expect((await storage()).container).toMatchObject({ kind: 'envelope', since: '2026-03-01' })
  })
})

describe('drying', () => {
  it('says at which mass to stop, with the gel, its assumption and the caution on coloured gel', async () => {
    const { plan, words, assumptions, cautions } = await test.call('moisture.plan-drying', {
      grams: 450,
      from: 13,
      to: 5,
    })
    // 450 g x 87 / 95 = 412.1 g: dry matter stays.
    expect(plan?.stopAt).toBeCloseTo(412.1, 1)
    expect(words).toBe(
      'Stop when the seed weighs 412 g: 37.9 g of water must go. For that, 379 g of fresh drying gel is enough.',
    )
    expect(assumptions.join(' ')).toContain('10\u00a0% of its own weight')
    expect(cautions.join(' ')).toContain('cobalt')
    expect((await test.call('moisture.plan-drying', { grams: 450, from: 6, to: 7 })).plan).toBeNull()
  })
})

it('tells what the places were like where a lot lay', async () => {
  ;({ lotId } = await takeInOn(test, '2026-02-01'))
  const { placeId } = await test.call('place.create', { name: 'Loft', kind: 'room' })
  await test.call('lot.move', { lotIds: [lotId], placeId, on: '2026-03-01' })
  for (const [on, temperature] of [
    ['2026-02-20', 40],
    ['2026-03-02', 20],
    ['2026-03-03', 30],
  ] as const)
    await test.call('reading.record', { placeId, on, time: '12:00', temperature, humidity: 50 })
  expect((await storage()).stays).toMatchObject([
    { place: 'Loft', until: null, words: '25.0 °C, 50 % humidity on average, 30.0 °C at most' },
  ])
})
