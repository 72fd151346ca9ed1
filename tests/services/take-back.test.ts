import { afterEach, beforeEach, expect, it } from 'vitest'
import type { CallInput } from '../../db/contract/contract.ts'
import { takeInOn } from '../builders/earlier-gift.ts'
import { aCollection, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
  await test.call('settings.change', { settings: { dueDates: true } })
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const person = async (name: string, more: object = {}) =>
  (await test.call('person.create', { name, ...more })).personId

type Out = Partial<Omit<CallInput<'withdrawal.record'>, 'key' | 'person' | 'lines'>>

const handOut = (personId: number, lotId: number, more: Out = {}) =>
  test.call('withdrawal.record', {
    person: { personId },
    on: '2026-01-10',
    lines: [{ lotId, amount: '20 seeds' }],
    ...more,
  })

const bringBack = (personId: number, lotId: number, withdrawalId: number | null) =>
  test.call('return.record', {
    person: { personId },
    parentLotId: lotId,
    withdrawalId,
    receivedOn: TODAY,
    amount: '90 seeds',
  })

const states = async (personId: number) =>
  (await test.call('withdrawal.list-open', { personId })).visits.map(
    ({ promise }) => promise?.state ?? 'none',
  )

it('shows what somebody has out: overdue first, then open by day, then what was not hoped for, latest first', async () => {
  const { lotId } = await takeInOn(test, '2026-01-01', { amount: '900 seeds' })
  const personId = await person('Maren Holt')
  await handOut(personId, lotId, { on: '2026-01-01' })
  await handOut(personId, lotId, { promised: 'a handful', promisedBy: '2026-10-01' })
  await handOut(personId, lotId, { purpose: 'to-return' })
  await handOut(personId, lotId, { promised: 'a jar', promisedBy: '2026-03-01' })
  const { visits, total } = await test.call('withdrawal.list-open', { personId })
  expect(visits.map(({ promise }) => [promise?.words, promise?.state])).toEqual([
    ['a jar', 'overdue'],
    ['a handful', 'open'],
    ['some seed', 'open'],
    [undefined, undefined],
  ])
  expect(total).toBe(4)
  expect(visits[0]?.lots).toMatchObject([
    { lotId, lotNumber: 'HL26-0001-A', variety: 'Miller’s Pole', words: '20 seeds' },
  ])
})

it('takes no notice of a visit that was taken back', async () => {
  const { lotId } = await takeInOn(test, '2026-01-01', { amount: '900 seeds' })
  const personId = await person('Maren Holt')
  const { entryId, withdrawalId } = await handOut(personId, lotId, { promised: 'a jar' })
  await test.call('entry.undo', { entryId })
  expect(await test.call('withdrawal.list-open', { personId })).toEqual({ visits: [], total: 0 })
  expect((await test.call('promise.list', {})).promises).toEqual([])
  expect((await test.refused('promise.waive', { withdrawalId, reason: 'gone' })).code).toBe('not-found')
  const late = {
    person: { personId },
    parentLotId: lotId,
    withdrawalId,
    receivedOn: TODAY,
    amount: '9 seeds',
  }
  expect((await test.refused('return.record', late)).field).toBe('withdrawalId')
})

it('meets a promise by a return that names its visit, and opens it again when the return is taken back', async () => {
  const { lotId } = await takeInOn(test, '2026-01-01', { amount: '900 seeds' })
  const personId = await person('Maren Holt')
  const { withdrawalId } = await handOut(personId, lotId, { promised: 'a jar', promisedBy: '2026-03-01' })
  const { entryId, taken } = await bringBack(personId, lotId, withdrawalId)
  const { visits } = await test.call('withdrawal.list-open', { personId })
  expect(visits[0]).toMatchObject({ promise: { state: 'met' }, back: [{ lotNumber: taken.lotNumber }] })
  expect((await test.call('promise.list', {})).total).toBe(0)
  await test.call('entry.undo', { entryId })
  expect(await states(personId)).toEqual(['overdue'])
  expect(await test.call('promise.list', {})).toMatchObject({ total: 1, overdue: 1 })
})

it('leaves a promise open when what came back names no visit', async () => {
  const { lotId } = await takeInOn(test, '2026-01-01', { amount: '900 seeds' })
  const personId = await person('Maren Holt')
  await handOut(personId, lotId, { promised: 'a jar' })
  await bringBack(personId, lotId, null)
  expect(await states(personId)).toEqual(['open'])
})

it('lets a promise go with its reason, once, and waits again when that is taken back', async () => {
  const { lotId } = await takeInOn(test, '2026-01-01', { amount: '900 seeds' })
  const personId = await person('Maren Holt')
  const { withdrawalId } = await handOut(personId, lotId, { promised: 'a jar' })
  const { entryId, said } = await test.call('promise.waive', { withdrawalId, reason: 'hail in July' })
  expect(said).toContain('a jar')
  const { visits } = await test.call('withdrawal.list-open', { personId })
  expect(visits[0]?.promise).toMatchObject({ state: 'waived', waiverReason: 'hail in July' })
  expect((await test.refused('promise.waive', { withdrawalId, reason: 'again' })).sentence).toContain(
    'no longer expected',
  )
  await test.call('entry.undo', { entryId })
  expect(await states(personId)).toEqual(['open'])
})

it('does not let go what was never promised, or what is met', async () => {
  const { lotId } = await takeInOn(test, '2026-01-01', { amount: '900 seeds' })
  const personId = await person('Maren Holt')
  const plain = await handOut(personId, lotId)
  expect(
    (await test.refused('promise.waive', { withdrawalId: plain.withdrawalId, reason: 'no' })).sentence,
  ).toContain('Nothing was to come back')
  const { withdrawalId } = await handOut(personId, lotId, { promised: 'a jar' })
  await bringBack(personId, lotId, withdrawalId)
  expect((await test.refused('promise.waive', { withdrawalId, reason: 'no' })).sentence).toContain(
    'Seed came back',
  )
})

it('reminds of who promised what by when, overdue first, and says how to reach only who agreed to it', async () => {
  const { lotId } = await takeInOn(test, '2026-01-01', { amount: '900 seeds' })
  const agreed = await person('Maren Holt', {
    email: 'maren@example.org',
    phone: '01632 960001',
    mayWrite: true,
  })
  const silent = await person('Teodor Ash', { email: 'teodor@example.org', phone: '01632 960002' })
  await handOut(agreed, lotId, { promised: 'a jar', promisedBy: '2026-09-01' })
  await handOut(silent, lotId, { promised: 'a tin', promisedBy: '2026-02-01' })
  await test.call('withdrawal.record', {
    person: null,
    on: TODAY,
    promised: 'a bag',
    lines: [{ lotId, amount: '5 seeds' }],
  })
  const { promises, total, overdue } = await test.call('promise.list', {})
  expect(promises.map(({ person, promise, email, phone }) => [person, promise.words, email, phone])).toEqual([
    ['Teodor Ash', 'a tin', '', ''],
    ['Maren Holt', 'a jar', 'maren@example.org', '01632 960001'],
    ['a member', 'a bag', '', ''],
  ])
  expect([total, overdue]).toEqual([3, 1])
  const late = await test.call('promise.list', { overdueOnly: true })
  expect(late.promises.map(({ person }) => person)).toEqual(['Teodor Ash'])
  const second = await test.call('promise.list', { offset: 1, limit: 1 })
  expect(second.promises.map(({ person }) => person)).toEqual(['Maren Holt'])
})

it('names no day and nothing overdue where the library wants no due dates, and keeps what was written', async () => {
  const { lotId } = await takeInOn(test, '2026-01-01', { amount: '900 seeds' })
  const personId = await person('Maren Holt')
  const late = { promised: 'a jar', promisedBy: '2026-03-01' }
  await handOut(personId, lotId, late)
  expect(await states(personId)).toEqual(['overdue'])
  await test.call('settings.change', { settings: { dueDates: false } })
  expect(await states(personId)).toEqual(['open'])
  const { promises, total, overdue } = await test.call('promise.list', {})
  expect(promises.map(({ promise }) => promise.by)).toEqual([null])
  expect([total, overdue]).toEqual([1, 0])
  expect((await test.call('promise.list', { overdueOnly: true })).promises).toEqual([])
  const refused = await test.refused('withdrawal.record', {
    person: { personId },
    on: TODAY,
    lines: [{ lotId, amount: '5 seeds' }],
    ...late,
  })
  expect(refused).toMatchObject({ code: 'due-dates-off', field: 'promisedBy' })
  await test.call('settings.change', { settings: { dueDates: true } })
  expect(await states(personId)).toEqual(['overdue'])
})
