import { afterEach, beforeEach, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const cautionsOf = async (lotId: number) => (await test.call('lot.get', { lotId })).cautions

it('tells since when, by whom and of which lot, as the person is called now', async () => {
  const { lotId, lotNumber } = await takeIn(test)
  const { personId } = await test.call('person.create', { name: 'Ilka Brandt' })
  await test.call('lot.set-caution', {
    lotIds: [lotId],
    caution: 'pests-seen',
    on: TODAY,
    note: 'two weevils',
    by: { personId },
  })
  const part = await test.call('lot.split', { lotId, on: TODAY, amount: '20 g', role: 'reserve' })
  await test.call('person.change', { personId, name: 'Ilka Reed' })
  const told = { caution: 'pests-seen', note: 'two weevils', since: TODAY, by: 'Ilka Reed' }
  expect(await cautionsOf(lotId)).toMatchObject([{ ...told, from: null }])
  expect(await cautionsOf(part.newLotId)).toMatchObject([{ ...told, from: { lotId, lotNumber } }])
  expect((await cautionsOf(lotId))[0]?.whenDiscarded).toContain('freeze it first')
})

it('sets and ends a caution of several lots at once, each by one entry that can be undone', async () => {
  const lotIds = [(await takeIn(test)).lotId, (await takeIn(test)).lotId]
  const set = { lotIds, caution: 'regulated', on: TODAY } as const
  const begun = await test.call('lot.set-caution', set)
  const kinds = async () => (await Promise.all(lotIds.map(cautionsOf))).flat().map(({ caution }) => caution)
  expect(await kinds()).toEqual(['regulated', 'regulated'])
  const ended = await test.call('lot.end-caution', { ...set, reason: 'the list was changed' })
  expect(await kinds()).toEqual([])
  await test.call('entry.undo', { entryId: ended.entryId })
  expect(await kinds()).toEqual(['regulated', 'regulated'])
  await test.call('entry.undo', { entryId: begun.entryId })
  expect(await kinds()).toEqual([])
})

it('refuses to say the same again, and to end what does not hold', async () => {
  const { lotId } = await takeIn(test, { cautions: ['treated'], cautionNote: 'thiram' })
  const of = { lotIds: [lotId], on: TODAY }
  expect((await test.refused('lot.set-caution', { ...of, caution: 'treated', note: 'thiram' })).code).toBe(
    'caution-set-already',
  )
  await test.call('lot.set-caution', { ...of, caution: 'treated', note: 'thiram and captan' })
  expect(await test.refused('lot.end-caution', { ...of, caution: 'toxic', reason: 'no' })).toMatchObject({
    code: 'caution-not-set',
    field: 'caution',
  })
})

it('says how treated seed is tested before it is, and on the bench sheet', async () => {
  const { lotId } = await takeIn(test, { cautions: ['treated'], cautionNote: 'thiram' })
  const plan = await test.call('germination.plan', { lotId })
  expect(plan.cautions.join(' ')).toMatch(/TREATED with thiram.*Wear gloves/)
})
