import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readPdf } from '../builders/read-pdf.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

/** Garlic of last summer, kept until the second of April: ten plants, and so ten cloves, make one planting. */
const garlic = (amount: string) =>
  takeIn(test, {
    variety: { newVariety: { cropId: 'garlic', name: 'Quay Rose' } },
    harvest: '2025',
    amount,
  })
const needOf = async () => {
  const [need] = (await test.call('regeneration.list', {})).needs
  if (need === undefined) throw new Error('No need')
  return need
}

describe('garlic', () => {
  it('is counted in cloves, due every year, and gone when its season is over, which a stocktake says', async () => {
    const { lotId, words } = await garlic('60 cloves')
    expect(words).toMatch(/^60 cloves/)
    expect(await needOf()).toMatchObject({
      state: 'regrow',
      stock: { living: 60, keep: 10 },
      sow: { seeds: 10 },
    })
    expect((await test.call('lot.list', {})).rows[0]?.living).toBe(60)
    test.goTo('2026-04-03')
    await test.call('forecast.refresh', { limit: 10 })
    const after = await test.call('lot.get', { lotId })
    expect(after.stock).toMatchObject({ living: 0, state: 'rescue' })
    expect(after.stock.viabilityNotes.join(' ')).toContain('over the season')
    expect(await test.call('forecast.refresh', { limit: 10 })).toMatchObject({ computed: 0, left: 0 })
  })

  it('has no forecast by an equation, but says until when it keeps', async () => {
    const { lotId } = await garlic('60 cloves')
    const forecast = await test.call('forecast.get', { lotId })
    expect(forecast).toMatchObject({ kind: 'refused', because: expect.stringContaining('2 Apr 2026') })
  })

  it('is neither tested nor dried, and is told what to do instead', async () => {
    const { lotId } = await garlic('60 cloves')
    const on = TODAY
    const refused = [
      await test.refused('germination.plan', { lotId }),
      await test.refused('germination.record', { lotId, on, tested: 10, sprouted: 9, fromStock: false }),
      await test.refused('germination.start', { lotId, on, replicates: [10], finalDay: 10, fromStock: true }),
      await test.refused('moisture.record', {
        lotId,
        on,
        measured: { method: 'break-check', gives: 'bends' },
      }),
    ]
    for (const { code, todo } of refused) {
      expect(code).toBe('no-seed')
      expect(todo).toContain('Look them over')
    }
    expect((await test.call('germination.list-due', { withinDays: 20_000 })).total).toBe(0)
  })

  it('is planted to the last one, and is not kept apart from anything in a plan', async () => {
    const { accessionId } = await garlic('6 cloves')
    const need = await test.call('regeneration.get', { accessionId })
    expect(need.rescue[0]).toBe('Plant all 6 cloves this season: kept back they only spoil.')
    expect(need.sow?.seeds).toBe(6)
    expect(need.outlook).toEqual([])
    await test.call('site.change', { name: 'Wall bed', growerId: null, areaM2: 50, mostVarieties: 9 })
    const { lines } = await test.call('season-plan.preview', { accessionIds: [accessionId], seconds: 0 })
    expect(lines[0]).toMatchObject({ isolationM: 0, plants: 10 })
  })

  it('is warned of the freezer, not of its moisture', async () => {
    const { lotId } = await garlic('60 cloves')
    const { placeId } = await test.call('place.create', { name: 'Freezer', kind: 'freezer' })
    const { cautions } = await test.call('lot.move', { lotIds: [lotId], placeId, on: TODAY })
    expect(cautions.map(({ sentence }) => sentence)).toEqual([
      expect.stringMatching(/^Cloves die in the frost/),
    ])
    expect((await test.call('lot.get-storage', { lotId })).cautions).toEqual([cautions[0]?.sentence])
  })

  it('goes home with words on keeping it airy, and none on drying it', async () => {
    const { lotId } = await garlic('60 cloves')
    const packet = await test.call('label.print', { labels: [{ lotId }], sheet: 'packet-a4' })
    const card = await test.call('keep-card.print', { lotIds: [lotId] })
    for (const { pdf } of [packet, card]) {
      const read = await readPdf(new Uint8Array(Buffer.from(pdf, 'base64')))
      const words = read.pages
        .flatMap(({ characters }) => characters.map(({ character }) => character))
        .join('')
      read.close()
      expect(words).toContain('airy')
      expect(words).not.toMatch(/drying gel|silica|Never freeze/)
    }
  })

  it('of the keeper’s own crop keeps as they say', async () => {
    const { cropId } = await test.call('crop.create', {
      name: 'Lantern root',
      countedUnit: 'tuber',
      keepsMonths: 4,
    })
    const { lotId } = await takeIn(test, {
      variety: { newVariety: { cropId, name: 'Any' } },
      harvest: '2025',
      amount: '5 tubers',
    })
    expect((await test.call('lot.get', { lotId })).lotLiving).toBe(0)
    await test.call('crop.change', { cropId, correction: { keepsMonths: 9 } })
    await test.call('forecast.refresh', { limit: 10 })
    expect((await test.call('lot.get', { lotId })).lotLiving).toBe(5)
  })
})
