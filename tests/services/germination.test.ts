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

const BEGUN = '2026-03-01'
const DAY_5 = '2026-03-06'
const DAY_8 = '2026-03-09'
const record = (lotId: number) => test.call('lot.get', { lotId })
const seeds = async (lotId: number) => (await record(lotId)).quantity.count

async function begin(replicates = [100, 100, 100, 100], more: object = {}) {
  const { lotId } = await takeInOn(test, '2026-02-01', { amount: '2000 seeds' })
  const begun = { lotId, on: BEGUN, replicates, firstDay: 5, finalDay: 8, ...more }
  return { lotId, ...(await test.call('germination.start', begun)) }
}

const normals = (...counts: number[]) => counts.map((normal) => ({ normal }))
const count = (testId: number, on: string, replicates: readonly object[]) =>
  test.call('germination.record-count', { testId, on, replicates: [...replicates] })

describe('a test under way', () => {
  it('takes its seeds from the stock as a movement, and is put on the bench', async () => {
    const { lotId, testId, due, left } = await begin()
    expect(left.count).toBe(1_600)
    expect((await record(lotId)).ledger.at(-1)).toMatchObject({ kind: 'test', count: -400, on: BEGUN })
    expect(due).toEqual({ on: DAY_5, which: 'first', when: 'late' })
    const { tests, toCount } = await test.call('germination.list', {})
    expect(tests).toMatchObject([{ testId, lotId, sown: 400, replicates: 4, normal: 0, state: 'under-way' }])
    expect(toCount).toBe(1)
  })

  it('leaves the stock alone where the seeds came from elsewhere', async () => {
    const { lotId } = await begin([20], { fromStock: false })
    expect(await seeds(lotId)).toBe(2_000)
  })

  it('never takes more than there is, and writes nothing then', async () => {
    const { lotId } = await takeInOn(test, '2026-02-01', { amount: '30 seeds' })
    const problem = await test.refused('germination.start', {
      lotId,
      on: BEGUN,
      replicates: [20, 20],
      finalDay: 8,
    })
    expect(problem).toMatchObject({ code: 'not-enough-seed', field: 'replicates' })
    expect((await test.call('germination.list', {})).tests).toEqual([])
    expect(await seeds(lotId)).toBe(30)
  })

  it('wants the last count on its day once the first was made, the one to count next first', async () => {
    const first = await begin()
    const second = await begin([20], { firstDay: null, finalDay: 100 })
    const third = await begin([20], { firstDay: null, finalDay: 13 })
    await count(first.testId, DAY_5, normals(60, 61, 62, 63))
    const { tests, toCount } = await test.call('germination.list', {})
    expect(tests.map(({ testId, due }) => [testId, due?.which, due?.when])).toEqual([
      [first.testId, 'final', 'late'],
      [third.testId, 'final', 'today'],
      [second.testId, 'final', 'later'],
    ])
    expect(toCount).toBe(2)
  })

  it('says nothing of the lot while seeds still lie there, unless what an end now would say is asked', async () => {
    const { testId } = await begin([20])
    const { test: shown } = await count(testId, DAY_5, normals(9))
    expect(shown.result?.words).toBe('9 of 20 sprouted so far, 11 still there')
    const choice = { hard: false, fresh: false }
    const asked = await test.call('germination.get', { testId, choice })
    expect(asked.result?.words).toContain('surely below 85\u00a0%')
  })

  it('keeps counts by day and adds them up', async () => {
    const { testId } = await begin()
    await count(testId, DAY_5, normals(60, 61, 62, 63))
    const { test: shown } = await count(testId, DAY_8, [
      { normal: 25, dead: 15 },
      { normal: 24, abnormal: 3, dead: 12 },
      { normal: 26, dead: 12 },
      { normal: 20, hard: 4, fresh: 2, dead: 11 },
    ])
    expect(shown.curve).toEqual([
      { day: 5, germinated: 246 },
      { day: 8, germinated: 341 },
    ])
    expect(shown.replicates[3]?.tally).toEqual({ normal: 83, abnormal: 0, hard: 4, fresh: 2, dead: 11 })
    expect(shown.result).toMatchObject({
      germinated: 341,
      tested: 400,
      unsorted: 0,
      tolerance: { kind: 'within' },
    })
    expect(shown.result?.speed?.meanDays).toBeCloseTo((246 * 5 + 95 * 8) / 341, 10)
  })

  it('takes a second count of one day in place of the first, and goes back to it when taken back', async () => {
    const { testId } = await begin([20], { firstDay: null })
    await count(testId, DAY_5, normals(19))
    const { entryId, test: corrected } = await count(testId, DAY_5, normals(9))
    expect(corrected.result).toMatchObject({ germinated: 9 })
    expect(corrected.counts).toHaveLength(1)
    await test.call('entry.undo', { entryId })
    expect((await test.call('germination.get', { testId })).result).toMatchObject({ germinated: 19 })
  })

  it('refuses more than was laid out, naming the replicate, and says what to do', async () => {
    const { testId } = await begin([20, 20])
    await count(testId, DAY_5, normals(15, 15))
    const ask = { testId, on: DAY_8, replicates: normals(2, 6) }
    expect(await test.refused('germination.record-count', ask)).toMatchObject({
      field: 'replicates.1',
      sentence: expect.stringContaining('21 seeds counted, and only 20'),
      todo: expect.stringContaining('only what was taken out on this day'),
    })
    const short = { testId, on: DAY_8, replicates: normals(2) }
    expect((await test.refused('germination.record-count', short)).sentence).toContain('2 replicates')
  })

  it('refuses a day before it began and one to come', async () => {
    const { testId } = await begin([20], { on: '2026-03-10' })
    const ask = { testId, replicates: normals(1) }
    expect((await test.refused('germination.record-count', { ...ask, on: BEGUN })).field).toBe('on')
    expect((await test.refused('germination.record-count', { ...ask, on: '2026-03-15' })).field).toBe('on')
  })
})

describe('the end of a test', () => {
  it('puts its result in force for the lot', async () => {
    const { lotId, testId } = await begin([20], { firstDay: null })
    await count(testId, DAY_8, [{ normal: 17, dead: 3 }])
    const { words, stock, test: shown } = await test.call('germination.finish', { testId, on: DAY_8 })
    expect(words).toBe(
      '17 of 20 sprouted: between 64\u00a0% and 95\u00a0%; it may be above or below 85\u00a0%',
    )
    expect(stock).toMatchObject({ total: 1_980, living: 1_663 })
    expect(shown.state).toBe('finished')
    expect((await record(lotId)).germination).toMatchObject([
      { testId, tested: 20, sprouted: 17, testedOn: DAY_8 },
    ])
    expect((await test.call('germination.list', { state: 'finished' })).tests).toMatchObject([
      { testId, words },
    ])
  })

  it('counts hard and dormant seed as the keeper chooses, and says so', async () => {
    const { lotId, testId } = await begin([50], { firstDay: null })
    await count(testId, DAY_8, [{ normal: 30, hard: 10, fresh: 5, dead: 5 }])
    const seen = await test.call('germination.get', { testId, choice: { hard: true, fresh: false } })
    expect(seen.result).toMatchObject({ germinated: 40, tested: 50 })
    const choice = { hard: true, fresh: true }
    const { words, test: shown } = await test.call('germination.finish', { testId, on: DAY_8, choice })
    expect(words).toContain('45 of 50 counted as alive (30 sprouted, 10 hard, 5 dormant)')
    expect(shown.result?.choiceWords).toContain('10 hard counted as alive')
    expect((await record(lotId)).germination[0]).toMatchObject({ sprouted: 45, words })
  })

  it('asks to repeat a test whose replicates lie too far apart', async () => {
    const { testId } = await begin()
    await count(testId, DAY_8, normals(90, 88, 87, 70))
    const { test: shown } = await test.call('germination.finish', { testId, on: DAY_8 })
    expect(shown.result?.tolerance).toMatchObject({
      kind: 'outside',
      words: 'The replicates are 20 points apart, and 14 are allowed at 84 %: repeat the test.',
    })
  })

  it('takes nothing more once it is over, until its result is taken back', async () => {
    const { testId, entryId: begun } = await begin([20])
    const counted = await count(testId, DAY_8, normals(12))
    const { entryId } = await test.call('germination.finish', { testId, on: DAY_8 })
    const again = { testId, on: DAY_8, replicates: normals(13) }
    expect((await test.refused('germination.record-count', again)).todo).toContain('undo its result')
    expect((await test.refused('entry.undo', { entryId: counted.entryId })).sentence).toContain(
      'A later entry needs it',
    )
    expect((await test.refused('entry.undo', { entryId: begun })).sentence).toContain(
      'A later entry needs it',
    )
    await test.call('entry.undo', { entryId })
    await test.call('germination.record-count', again)
    expect((await test.call('germination.list', {})).tests).toMatchObject([
      { normal: 13, state: 'under-way' },
    ])
  })

  it('cannot end before anything was counted, nor before its last count', async () => {
    const { testId } = await begin([20])
    expect((await test.refused('germination.finish', { testId, on: DAY_8 })).sentence).toContain('Nothing')
    await count(testId, DAY_8, normals(12))
    expect((await test.refused('germination.finish', { testId, on: DAY_5 })).field).toBe('on')
  })

  it('goes with a lot that is split off', async () => {
    const { lotId, testId } = await begin([20])
    await count(testId, DAY_8, normals(18))
    await test.call('germination.finish', { testId, on: DAY_8 })
    const split = { lotId, on: TODAY, amount: '200 seeds', role: 'reserve' as const }
    const { newLotId } = await test.call('lot.split', split)
    expect((await record(newLotId)).germination).toMatchObject([{ testId, sprouted: 18 }])
  })
})

describe('a test given up', () => {
  it('puts seeds that stayed dry back by a reversing entry', async () => {
    const { lotId, testId } = await begin()
    const cancel = { testId, on: TODAY, reason: 'The freezer failed' }
    expect((await test.call('germination.cancel', { ...cancel, seedsBack: true })).left.count).toBe(2_000)
    const { ledger } = await record(lotId)
    expect(ledger.map(({ kind, count: seeds }) => [kind, seeds])).toEqual([
      ['intake', 2_000],
      ['test', -400],
      ['reversal', 400],
    ])
    expect((await test.call('germination.list', {})).tests).toEqual([])
    expect((await test.call('germination.list', { state: 'cancelled' })).tests).toMatchObject([
      { testId, words: 'The freezer failed' },
    ])
  })

  it('never puts seed back that has been counted, or that was not of the stock', async () => {
    const wet = await begin([20])
    await count(wet.testId, DAY_5, normals(3))
    const ask = { on: TODAY, reason: 'mould', seedsBack: true }
    expect((await test.refused('germination.cancel', { ...ask, testId: wet.testId })).sentence).toContain(
      'wet',
    )
    const elsewhere = await begin([20], { fromStock: false })
    const problem = await test.refused('germination.cancel', { ...ask, testId: elsewhere.testId })
    expect(problem.field).toBe('seedsBack')
    await test.call('germination.cancel', { testId: wet.testId, on: TODAY, reason: 'mould' })
    expect(await seeds(wet.lotId)).toBe(1_980)
  })

  it('goes back to the bench when giving it up is taken back', async () => {
    const { testId } = await begin([20])
    const { entryId } = await test.call('germination.cancel', { testId, on: TODAY, reason: 'mould' })
    await test.call('entry.undo', { entryId })
    expect((await test.call('germination.list', {})).tests).toMatchObject([{ testId }])
  })

  it('disappears with its beginning, and the seeds are back', async () => {
    const { lotId, testId, entryId } = await begin([20])
    await test.call('entry.undo', { entryId })
    expect(await seeds(lotId)).toBe(2_000)
    expect((await test.refused('germination.get', { testId })).code).toBe('not-found')
  })
})

describe('a test entered in one go', () => {
  it('takes the tested seed from the stock and sets how alive the lot is', async () => {
    const { lotId } = await takeInOn(test, '2026-02-01', { amount: '400 seeds' })
    const ask = { lotId, on: TODAY, startedOn: BEGUN, tested: 20, sprouted: 19 }
    const { testId, words, stock } = await test.call('germination.record', ask)
    expect(words).toBe(
      '19 of 20 sprouted: between 76\u00a0% and 99\u00a0%; likely above 85\u00a0%, not yet sure',
    )
    expect(stock).toMatchObject({ total: 380, living: 351 })
    const shown = await test.call('germination.get', { testId })
    expect(shown).toMatchObject({ state: 'finished', due: null, curve: [{ day: 13, germinated: 19 }] })
  })

  it('says no speed where nobody wrote down when it began', async () => {
    const { lotId } = await takeInOn(test, '2026-02-01', { amount: '400 seeds' })
    const { testId } = await test.call('germination.record', { lotId, on: TODAY, tested: 20, sprouted: 19 })
    expect((await test.call('germination.get', { testId })).result?.speed).toBeNull()
    const backwards = { lotId, on: BEGUN, startedOn: TODAY, tested: 20, sprouted: 19 }
    expect((await test.refused('germination.record', backwards)).field).toBe('startedOn')
  })

  it('believes the latest test, whichever was typed last', async () => {
    const { lotId } = await takeInOn(test, '2026-02-01', { amount: '400 seeds' })
    const result = { lotId, fromStock: false, tested: 20 }
    await test.call('germination.record', { ...result, on: TODAY, sprouted: 12 })
    await test.call('germination.record', { ...result, on: '2024-01-10', sprouted: 20 })
    expect((await record(lotId)).stock.living).toBe(258)
  })

  it('goes back to the former result when a test is taken back', async () => {
    const { lotId } = await takeInOn(test, '2026-02-01', { amount: '400 seeds' })
    const { entryId } = await test.call('germination.record', { lotId, on: TODAY, tested: 20, sprouted: 2 })
    await test.call('entry.undo', { entryId })
    const after = await record(lotId)
    expect(after.germination).toEqual([])
    expect(after.stock).toMatchObject({ total: 400, living: 280 })
  })
})

describe('the bench sheet', () => {
  it('is made of every test under way', async () => {
    await begin()
    await begin([20])
    const { pdf, pages, warnings } = await test.call('germination.print', {})
    expect(Buffer.from(pdf, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
    expect([pages, warnings]).toEqual([1, []])
  })

  it('is not made of nothing, nor of a test that is over', async () => {
    expect((await test.refused('germination.print', {})).sentence).toContain('No test')
    const { testId } = await begin([20])
    await test.call('germination.cancel', { testId, on: TODAY, reason: 'mould' })
    expect((await test.refused('germination.print', { testIds: [testId] })).sentence).toContain('over')
  })
})
