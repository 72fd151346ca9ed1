import { afterEach, beforeEach, expect, it } from 'vitest'
import { takeInOn } from '../builders/earlier-gift.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const held = async (lotId: number) => (await test.call('lot.get', { lotId })).quantity.count

it('takes stock of a shelf as one entry, shows the differences first, and takes it back as one', async () => {
  const one = await takeIn(test, { amount: '400 seeds' })
  const two = await takeIn(test, { amount: '100 g' })
  const lines = [
    { lotId: one.lotId, found: '396 seeds' },
    { lotId: two.lotId, found: '100 g' },
  ]
  const previewed = await test.call('stocktake.preview', {
    lines: [...lines, { lotId: one.lotId, found: '12' }],
  })
  expect(previewed.lines.map((line) => line.change)).toEqual([
    { count: -4, massMg: -1_000 },
    { count: 0, massMg: 0 },
    null,
  ])
  expect(previewed.lines[2]?.problem?.choices).toEqual(['12 g', '12 seeds'])
  expect(await held(one.lotId)).toBe(400)
  const { entryId, said } = await test.call('stocktake.record', { on: TODAY, reason: 'spring', lines })
  expect(said).toBe('Took stock of 2 lots; 1 differed')
  expect(await held(one.lotId)).toBe(396)
  await test.call('entry.undo', { entryId })
  expect(await held(one.lotId)).toBe(400)
})

it('refuses a stocktake that names a lot twice or cannot be read, and writes none of it', async () => {
  const { lotId } = await takeIn(test, { amount: '400 seeds' })
  const twice = [
    { lotId, found: '390 seeds' },
    { lotId, found: '380 seeds' },
  ]
  expect((await test.refused('stocktake.record', { on: TODAY, reason: 'x', lines: twice })).field).toBe(
    'lines.1.lotId',
  )
  expect(await held(lotId)).toBe(400)
})

it('types a paper sheet in: one visit for each person, one entry to take back', async () => {
  const one = await takeInOn(test, '2026-03-01', { amount: '400 seeds' })
  const two = await takeInOn(test, '2026-03-01', { amount: '300 seeds' })
  const teodor = { newPerson: { name: 'Teodor Ash' } }
  const { visits, lines, entryId } = await test.call('paper-sheet.record', {
    on: '2026-03-07',
    lines: [
      { person: teodor, lotId: one.lotId, amount: '20 seeds' },
      { person: null, lotId: one.lotId, amount: '20 seeds' },
      { person: teodor, lotId: two.lotId, amount: '20 seeds' },
    ],
  })
  expect(visits).toHaveLength(2)
  expect(lines.map((line) => line.left.count)).toEqual([360, 280])
  expect((await test.call('collection.get', {})).people).toBe(1)
  await test.call('entry.undo', { entryId })
  expect([await held(one.lotId), await held(two.lotId)]).toEqual([400, 300])
})

it('lets a paper sheet pass cautions, since it has happened, but not take seed that is not there', async () => {
  const { lotId } = await takeIn(test, { amount: '30 seeds' })
  const line = { person: null, lotId, amount: '20 seeds' }
  const problem = await test.refused('paper-sheet.record', { on: TODAY, lines: [line, line] })
  expect(problem).toMatchObject({ code: 'not-enough-seed', field: 'lines.1.amount' })
  await test.call('paper-sheet.record', { on: TODAY, lines: [line] })
  expect(await held(lotId)).toBe(10)
})

it('wants a reason above the limit for one visit, for what is taken home', async () => {
  await test.call('settings.change', { settings: { visitLimit: 2 } })
  const { lotId } = await takeIn(test, { amount: '900 seeds' })
  const lines = Array.from({ length: 3 }, () => ({ lotId, amount: '20 seeds' }))
  const ask = { person: null, on: TODAY, lines }
  expect((await test.refused('withdrawal.record', ask)).choices).toEqual(['over-limit'])
  expect((await test.call('withdrawal.preview', { lines })).cautions[0]?.despite).toBe('over-limit')
  const inOneLine = { lines: [{ lotId, amount: '3 packets of 20' }] }
  expect((await test.call('withdrawal.preview', inOneLine)).cautions[0]?.sentence).toBe(
    '3 packets are more than the 2 that one visit usually takes.',
  )
  expect(
    (await test.call('withdrawal.preview', { lines: [{ lotId, amount: '60 seeds' }] })).cautions,
  ).toEqual([])
  await test.call('withdrawal.record', { ...ask, purpose: 'grow-out' })
  await test.call('withdrawal.record', { ...ask, despite: ['over-limit'], reason: 'for the whole school' })
  expect(await held(lotId)).toBe(780)
})

it('tells another window that something was written', async () => {
  const { revision } = await test.call('collection.get-revision', {})
  await takeIn(test)
  expect((await test.call('collection.get-revision', {})).revision).toBe(revision + 1)
})

it('keeps an unfinished screen until it is dropped, and knows one of an earlier run', async () => {
  await test.call('draft.save', { draftId: 'window-one', kind: 'take-in', text: '{"donor":"Ors' })
  await test.call('draft.save', { draftId: 'window-one', kind: 'take-in', text: '{"donor":"Orsolya"}' })
  const { drafts } = await test.call('draft.list', { kind: 'take-in' })
  expect(drafts).toMatchObject([{ draftId: 'window-one', text: '{"donor":"Orsolya"}', earlierRun: false }])
  expect((await test.call('draft.list', { kind: 'hand-out' })).drafts).toEqual([])
  await test.call('draft.save', { draftId: 'window-one', kind: 'take-in', text: '' })
  expect((await test.call('draft.list', { kind: 'take-in' })).drafts).toEqual([])
})
