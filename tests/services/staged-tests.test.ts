import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { takeInOn } from '../builders/earlier-gift.ts'
import { aCollection, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const BEGUN = '2026-03-06'

const lay = (lotId: number, followsTestId: number | null = null) =>
  test.call('germination.start', { lotId, on: BEGUN, replicates: [40], finalDay: 8, followsTestId })
const count = (testId: number, normal: number) =>
  test.call('germination.record-count', { testId, on: TODAY, replicates: [{ normal }] })
const end = (testId: number) => test.call('germination.finish', { testId, on: TODAY })
const get = (testId: number) => test.call('germination.get', { testId })

async function stage(lotId: number, normal: number, follows: number | null = null) {
  const begun = await lay(lotId, follows)
  await count(begun.testId, normal)
  return { ...begun, ended: await end(begun.testId) }
}

const follows = async (lotId: number) =>
  (await test.call('germination.plan', { lotId, threshold: 0.85 })).follows

const aLot = async () => (await takeInOn(test, '2026-02-01', { amount: '2000 seeds' })).lotId

describe('a test in stages', () => {
  it('is added up stage by stage, and the plan decides in words', async () => {
    const lotId = await aLot()
    const first = await stage(lotId, 35)
    expect(first.ended.test).toMatchObject({ staged: null, followedBy: null })
    expect(await follows(lotId)).toMatchObject({
      testId: first.testId,
      tested: 40,
      groupSize: 40,
      decision: 'go-on',
    })
    const second = await lay(lotId, first.testId)
    expect((await get(second.testId)).staged).toMatchObject({ stages: 1, tested: 40, germinated: 35 })
    expect((await get(first.testId)).followedBy).toBe(second.testId)
    await count(second.testId, 35)
    const { test: over } = await end(second.testId)
    expect(over.staged).toMatchObject({ stages: 2, tested: 80, germinated: 70, decision: 'go-on' })
    expect(over.staged?.words).toContain('Of 120 in all: regrow at 100 or fewer, keep at 111 or more.')
    const third = await stage(lotId, 29, second.testId)
    expect(third.ended.test.staged).toMatchObject({ stages: 3, germinated: 99, decision: 'regrow' })
    expect(await follows(lotId)).toBeNull()
  })

  it('offers no next stage once the plan has decided', async () => {
    const lotId = await aLot()
    await stage(lotId, 12)
    expect(await follows(lotId)).toBeNull()
  })

  it('rests on the stage before it, which is not taken back under it', async () => {
    const lotId = await aLot()
    const first = await stage(lotId, 35)
    const second = await lay(lotId, first.testId)
    const { entryId } = first.ended
    expect((await test.refused('entry.undo', { entryId })).sentence).toContain('A later entry needs it')
    await test.call('entry.undo', { entryId: second.entryId })
    await test.call('entry.undo', { entryId })
    expect((await get(first.testId)).state).toBe('under-way')
  })

  it('follows a finished test of its own lot, and that once, unless the next stage was given up', async () => {
    const lotId = await aLot()
    const first = await lay(lotId)
    const begin = { lotId, on: BEGUN, replicates: [40], finalDay: 8, followsTestId: first.testId }
    const refused = async (more: object = {}) =>
      (await test.refused('germination.start', { ...begin, ...more })).sentence
    expect(await refused()).toBe('The stage before it is not finished yet.')
    await count(first.testId, 35)
    await end(first.testId)
    const other = await takeInOn(test, '2026-02-01', { amount: '2000 seeds' })
    expect(await refused({ lotId: other.lotId })).toBe('The stage before it is no test of this lot.')
    const second = await lay(lotId, first.testId)
    expect(await refused()).toBe('That test has a next stage already.')
    await test.call('germination.cancel', {
      testId: second.testId,
      on: TODAY,
      reason: 'spilt',
      seedsBack: true,
    })
    expect((await lay(lotId, first.testId)).testId).toBeGreaterThan(second.testId)
  })
})
