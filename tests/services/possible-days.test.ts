import { expect, test } from 'vitest'
import { contract, type OperationName, type WriteName } from '../../db/contract/contract.ts'
import { Refusal } from '../../db/contract/refusal.ts'
import type { ServiceName } from '../../db/services/run-operation.ts'
import { takeInOn } from '../builders/earlier-gift.ts'
import { aCollection, aGift, takeIn } from '../builders/temporary-collection.ts'
import { noFacts } from '../electron/support/story/step.ts'
import { story } from '../electron/support/story/story.ts'

/** What may have happened before the seed came here. */
const BEFORE_IT_CAME = [
  'germination.start',
  'germination.record',
  'lot.record-weight',
  'moisture.record',
  'lot.change-container',
]
/** Days that may be to come, or that only ask: of a promise, of an agreement, of waiting, of a season, of a span. */
const MAY_COME = /^(promisedBy|agreementEnds|nextLook|due|lettersSince|from|until|sowing)$/
/** Steps that are about no day: other collections, backups, whole files, paper. */
const ELSEWHERE =
  /^(collection\.(open|create)|backup|package|import|reading\.(preview|import)|report|ruler)\b|\.(print|export|workbook|erase)$/
const LOTS = /lotIds?"|LotIds?"/

function daysOf(input: object): string[] {
  return Object.entries(input).flatMap(([name, value]) =>
    typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value) && !MAY_COME.test(name) ? [name] : [],
  )
}

test('every dated operation refuses a day to come, and a day before its lots were in the book', async () => {
  const here = await aCollection()
  here.collection.sqlite.pragma('synchronous = OFF')
  const facts = noFacts()
  let tried = 0
  const refusalOf = async (name: OperationName, input: object) => {
    tried += 1
    try {
      await here.call(name as ServiceName, { ...input, key: `odd-day-${tried}` } as never)
    } catch (cause) {
      if (cause instanceof Refusal) return cause.problem
      throw cause
    }
    throw new Error(`${name} took ${JSON.stringify(input)}`)
  }
  for (const { name, input, note } of story()) {
    if (ELSEWHERE.test(name)) continue
    const whole = input(facts) as object
    const dated = contract[name].access === 'writes' ? daysOf(whole) : []
    for (const field of dated) {
      expect.soft(await refusalOf(name, { ...whole, [field]: '9999-01-01' }), name).toMatchObject({ field })
      if (!LOTS.test(JSON.stringify(whole)) || BEFORE_IT_CAME.includes(name)) continue
      expect.soft(await refusalOf(name, { ...whole, [field]: '1990-01-01' }), name).toMatchObject({ field })
    }
    try {
      note(facts, await here.call(name as ServiceName, whole as never))
    } catch {}
  }
  expect(tried).toBeGreaterThan(30)
  here.remove()
})

test('a sheet of the day before takes nothing from a lot that came after it', async () => {
  const here = await aCollection()
  const { lotId, lotNumber } = await takeIn(here, { amount: '400 seeds' })
  const sheet = { on: '2026-03-12', lines: [{ person: null, lotId, amount: '10 seeds' }] }
  expect(await here.refused('paper-sheet.record', sheet)).toMatchObject({
    field: 'on',
    sentence: `${lotNumber} has been in the book only since 14 Mar 2026.`,
  })
  here.remove()
})

test('a day that is odd but possible is asked about once, and done when it is sent again', async () => {
  const here = await aCollection()
  const asked: string[] = []
  const askedThenDone = async (name: WriteName & ServiceName, input: object) => {
    const { asks, sentence } = await here.refused(name, input as never)
    asked.push(sentence)
    expect(asks).toBeDefined()
    await here.call(name, { ...input, itIsSo: [asks] } as never)
  }
  const gifts = [aGift({ harvest: '2024', amount: '900 seeds' })]
  await askedThenDone('intake.record', { donor: null, receivedOn: '2022-05-01', gifts })
  const { lotId, lotNumber } = await takeInOn(here, '2024-11-01', { harvest: '2024', amount: '900 seeds' })
  const line = { lotId, amount: '10 seeds' }
  await askedThenDone('withdrawal.record', { person: null, on: '2025-03-14', lines: [line] })
  await askedThenDone('germination.record', {
    ...{ lotId, on: '2023-05-01', tested: 20, sprouted: 19 },
    fromStock: false,
  })
  await askedThenDone('lot.record-weight', {
    lotId,
    on: '2023-05-01',
    replicates: [{ seeds: 100, grams: 30 }],
  })
  expect(asked).toEqual([
    '1 May 2022 is before the harvest of Miller’s Pole, in 2024.',
    '14 Mar 2025 is 12 months ago. Check the year.',
    `1 May 2023 is before the harvest of ${lotNumber}, in 2024.`,
    `1 May 2023 is before the harvest of ${lotNumber}, in 2024.`,
  ])
  await here.call('germination.record', { lotId, on: '2024-12-01', tested: 20, sprouted: 19 })
  here.remove()
})

test('a clock that jumped is asked about before a number is given, and not again', async () => {
  const here = await aCollection()
  const gift = { donor: null, receivedOn: '2026-03-14', gifts: [aGift()] }
  for (const [day, sentence] of [
    ['2071-03-14', /today is 14 Mar 2071, long after the latest entry, of 14 Mar 2026/],
    ['2026-03-01', /today is 1 Mar 2026, but the latest entry is of 14 Mar 2026/],
  ] as const) {
    here.goTo(day)
    const refused = await here.refused('intake.record', { ...gift, receivedOn: '2026-02-14' })
    expect(refused.sentence).toMatch(sentence)
  }
  const { taken } = await here.call('intake.record', {
    ...{ ...gift, receivedOn: '2026-02-14' },
    itIsSo: ['today 2026-03-01'],
  })
  expect(taken[0]?.accessionNumber).toBe('HL26-0001')
  await here.call('intake.record', { ...gift, receivedOn: '2026-02-14' })
  here.goTo('2027-03-01')
  await here.call('intake.record', gift)
  here.remove()
})

test('a test that takes its seeds from a lot is not of a day before the lot came; one that the donor made may be', async () => {
  const here = await aCollection()
  const { lotId } = await takeIn(here, { amount: '400 seeds' })
  const before = { lotId, on: '2026-03-01', tested: 20, sprouted: 19 }
  expect(await here.refused('germination.record', { ...before, fromStock: true })).toMatchObject({
    field: 'on',
  })
  const dishes = { lotId, on: '2026-03-01', replicates: [20], finalDay: 10, fromStock: true }
  expect(await here.refused('germination.start', dishes)).toMatchObject({ field: 'on' })
  await here.call('germination.record', { ...before, fromStock: false })
  here.remove()
})
