import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { OWN_SHEET } from '../builders/own-sheet.ts'
import { aCollection, aGift, type TemporaryCollection } from '../builders/temporary-collection.ts'
import { ids, trayOf } from '../builders/tray.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const { give, waiting } = trayOf(() => test)

describe('label sheets of the library’s own', () => {
  const kept = async () => (await test.call('label-sheet.list', {})).sheets.filter(({ own }) => own !== null)

  it('are measured once, printed on, changed and offered no more', async () => {
    const { taken } = await give(null, [aGift({ story: 'Carried over the pass in a tobacco tin.' })])
    const { sheet } = await test.call('label-sheet.create', { measures: OWN_SHEET })
    expect(await kept()).toMatchObject([{ sheet, name: 'Jars, bottom shelf', columns: 2, own: OWN_SHEET }])
    const labels = [{ lotId: taken[0]?.lotId ?? 0, copies: 11 }]
    expect((await test.call('label.print', { labels, sheet })).pages).toBe(2)
    const problem = await test.refused('label.print', { labels, sheet, startAt: 11 })
    expect(problem.sentence).toBe('That sheet has 10 labels. Start at one of them.')
    await test.call('label-sheet.create', { sheetId: 1, measures: { ...OWN_SHEET, rows: 4 } })
    expect(await kept()).toMatchObject([{ rows: 4 }])
    const itemIds = ids(await waiting('label'))
    await test.call('tray.mark-printed', { kind: 'label', itemIds, sheet })
    await test.call('label-sheet.retire', { sheetId: 1 })
    expect(await kept()).toEqual([])
    expect((await test.call('print.list', {})).batches).toMatchObject([{ sheet }])
    expect((await test.refused('label.print', { labels, sheet: 'own-7' })).field).toBe('sheet')
  })

  it('are refused where they pass the page, with the measure that is wrong', async () => {
    const field = async (wrong: Partial<typeof OWN_SHEET>) =>
      (await test.refused('label-sheet.create', { measures: { ...OWN_SHEET, ...wrong } })).field
    expect(await field({ columns: 3 })).toBe('measures.columns')
    expect(await field({ rows: 6 })).toBe('measures.rows')
    expect(await field({ pitchXMm: 80 })).toBe('measures.pitchXMm')
    expect(await field({ heightMm: 6 })).toBe('measures.heightMm')
  })
})
