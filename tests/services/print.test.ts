import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CallInput } from '../../db/contract/contract.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'
import { ids, textOf, trayOf, WRITTEN_TO } from '../builders/tray.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const { give, waiting } = trayOf(() => test)

describe('what comes into the tray by itself', () => {
  it('is a label for each gift and one letter for all of them', async () => {
    const { taken } = await give()
    expect((await waiting('label')).map(({ title }) => title)).toEqual(
      taken.map(({ lotNumber }) => lotNumber),
    )
    expect(await waiting('letter')).toMatchObject([{ title: 'Ilka Brandt', heldBack: null }])
    expect((await test.call('tray.list', {})).leftOut).toEqual([])
  })

  it('is no letter for a donor who did not agree, and it says so; none for a gift of nobody', async () => {
    await give({ ...WRITTEN_TO, mayWrite: false })
    await give(null)
    expect(await waiting('label')).toHaveLength(4)
    expect(await waiting('letter')).toEqual([])
    expect((await test.call('tray.list', {})).leftOut).toMatchObject([
      { name: 'Ilka Brandt', sentence: 'Ilka Brandt has not agreed to be written to.' },
    ])
  })

  it('goes out again with the entry, but what is printed stays in the history and is not printed again', async () => {
    const { entryId } = await give()
    const [first] = await waiting('label')
    const { batchId } = await test.call('tray.mark-printed', {
      kind: 'label',
      itemIds: [first?.itemId ?? 0],
      sheet: 'a4-21',
    })
    await test.call('entry.undo', { entryId })
    expect((await test.call('tray.list', {})).groups).toEqual([])
    const { batches } = await test.call('print.list', {})
    expect(batches[0]?.items[0]?.heldBack).toMatch(/undone/)
    expect((await test.refused('print.repeat', { batchId })).code).toBe('nothing-to-print')
  })

  it('is a label for what is brought back, and a slip only where it is asked for', async () => {
    const { taken } = await give(null, [aGift({ amount: '300 seeds' })])
    const lotId = taken[0]?.lotId ?? 0
    const person = { newPerson: { name: 'Teodor Ash' } }
    const lines = [{ lotId, amount: '20 seeds' }]
    await test.call('withdrawal.record', { person, on: TODAY, lines })
    expect(await waiting('slip')).toEqual([])
    await test.call('withdrawal.record', { person, on: TODAY, lines, slip: true })
    expect(await waiting('slip')).toMatchObject([{ title: 'Teodor Ash' }])
    const back = await test.call('return.record', {
      person,
      parentLotId: lotId,
      receivedOn: TODAY,
      amount: '90 seeds',
    })
    expect((await waiting('label')).at(-1)?.title).toBe(back.taken.lotNumber)
  })
})

describe('printing', () => {
  it('marks nothing by looking; marked, it is done; taken back, it waits again', async () => {
    await give()
    const itemIds = ids(await waiting('label'))
    const input = { kind: 'label', itemIds, sheet: 'a4-21', startAt: 20, offsetMm: [1, -0.5] } as const
    const made = await test.call('tray.render', { ...input, offsetMm: [1, -0.5] })
    expect(made.pages).toBe(1)
    expect(await waiting('label')).toHaveLength(2)
    const { entryId, said } = await test.call('tray.mark-printed', { ...input, offsetMm: [1, -0.5] })
    expect(said).toBe('Printed 2 labels')
    expect(await waiting('label')).toEqual([])
    expect((await test.refused('tray.mark-printed', { ...input, offsetMm: [1, -0.5] })).code).toBe(
      'not-found',
    )
    await test.call('entry.undo', { entryId })
    expect(ids(await waiting('label'))).toEqual(itemIds)
    expect((await test.call('print.list', {})).batches).toEqual([])
    expect((await test.call('tray.list', {})).sheets).toEqual([])
  })

  it('goes on at the next free label of the sheet, and each printer with its offset, and begins a new sheet after the last', async () => {
    await give()
    const [one, two] = ids(await waiting('label'))
    const print = (itemId: number | undefined, startAt: number) =>
      test.call('tray.mark-printed', {
        kind: 'label',
        itemIds: [itemId ?? 0],
        sheet: 'a4-21',
        startAt,
        offsetMm: [0.5, 1],
      })
    await print(one, 19)
    const sheets = async () => (await test.call('tray.list', {})).sheets
    expect(await sheets()).toEqual([{ sheet: 'a4-21', startAt: 20 }])
    const last = await print(two, 21)
    expect(await sheets()).toEqual([{ sheet: 'a4-21', startAt: 1 }])
    await test.call('entry.undo', { entryId: last.entryId })
    await test.call('tray.mark-printed', {
      kind: 'label',
      itemIds: [two ?? 0],
      sheet: 'packet-a4',
      offsetMm: [-1, 0],
      printer: 'Back room',
    })
    expect((await test.call('tray.list', {})).printers).toEqual([
      { name: 'Back room', offsetMm: [-1, 0] },
      { name: '', offsetMm: [0.5, 1] },
    ])
  })

  it('refuses a mixture, labels without a sheet, a label that is not on it, and what is not there', async () => {
    await give()
    const [label] = ids(await waiting('label'))
    const [letter] = ids(await waiting('letter'))
    const itemIds = [label ?? 0]
    const sheet = 'a4-21' as const
    const field = async (input: CallInput<'tray.render'>) => (await test.refused('tray.render', input)).field
    expect(await field({ kind: 'label', itemIds: [...itemIds, letter ?? 0], sheet })).toBe('itemIds')
    expect(await field({ kind: 'label', itemIds })).toBe('sheet')
    expect(await field({ kind: 'label', itemIds, sheet, startAt: 22 })).toBe('startAt')
    expect(await field({ kind: 'label', itemIds: [9_999], sheet })).toBe('itemIds')
  })

  it('prints again from the history, with copies and contents as they were', async () => {
    await give()
    const [first] = await waiting('label')
    const { itemId } = await test.call('tray.change', {
      itemId: first?.itemId ?? 0,
      copies: 5,
      contents: '25 seeds',
    })
    const { batchId } = await test.call('tray.mark-printed', {
      kind: 'label',
      itemIds: [itemId],
      sheet: 'letter-30',
    })
    await test.call('print.repeat', { batchId })
    expect((await waiting('label')).find(({ title }) => title === first?.title)).toMatchObject({
      copies: 5,
      contents: '25 seeds',
    })
    expect((await test.call('print.list', {})).batches).toMatchObject([
      { words: '5 labels', sheet: 'letter-30' },
    ])
  })
})

it('changes and takes out what waits, and both can be taken back', async () => {
  await give(null, [aGift()])
  const [first] = await waiting('label')
  const itemId = first?.itemId ?? 0
  const change = await test.call('tray.change', { itemId, copies: 8, contents: '' })
  expect(await waiting('label')).toMatchObject([{ itemId: change.itemId, copies: 8 }])
  const removal = await test.call('tray.remove', { itemIds: [change.itemId] })
  expect(await waiting('label')).toEqual([])
  expect((await test.refused('tray.remove', { itemIds: [change.itemId] })).code).toBe('not-found')
  await test.call('entry.undo', { entryId: removal.entryId })
  await test.call('entry.undo', { entryId: change.entryId })
  expect(await waiting('label')).toMatchObject([{ itemId, copies: 1 }])
})

it('adds labels for chosen lots, and no letter to whoever did not agree', async () => {
  const { taken } = await give(null, [aGift()])
  const lotId = taken[0]?.lotId ?? 0
  await test.call('tray.add', { items: [{ kind: 'label', lotId, copies: 12, contents: '20 seeds' }] })
  expect((await waiting('label')).at(-1)).toMatchObject({ copies: 12, contents: '20 seeds' })
  const letter = await test.refused('tray.add', {
    items: [{ kind: 'letter', accessionId: taken[0]?.accessionId ?? 0 }],
  })
  expect(letter.sentence).toMatch(/agreed to be written to/)
  expect((await test.refused('tray.add', { items: [{ kind: 'slip', withdrawalId: 77 }] })).code).toBe(
    'not-found',
  )
})

it('prints packets to fold with their story, and the number alone for a jar', async () => {
  const story = 'Carried over the pass in a tobacco tin.'
  const { taken } = await give(null, [aGift({ story, grownAt: 'Hollow Lane' })])
  const labels = [{ lotId: taken[0]?.lotId ?? 0 }]
  const packet = await textOf(await test.call('label.print', { labels, sheet: 'packet-a4' }))
  expect(packet).toContain(story)
  expect(packet).toContain('Never freeze seed')
  expect(packet).not.toContain('Hollow Lane')
  const jar = await textOf(await test.call('label.print', { labels, sheet: 'letter-6' }))
  for (const part of [story, 'Grown at Hollow Lane', 'Came on 14 March 2026']) expect(jar).toContain(part)
  const small = await textOf(
    await test.call('label.print', { labels, sheet: 'a4-21', says: 'number-only', cropMarks: true }),
  )
  expect(small.trim()).toBe(taken[0]?.lotNumber)
})
