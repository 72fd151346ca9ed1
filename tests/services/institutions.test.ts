import { afterEach, beforeEach, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

const INSTITUTION = 'Upper Ferry plant school'
const REQUEST = {
  askedOn: '2026-02-20',
  intendedUse: 'a trial of old beans with a class',
  agreement: '',
  plantHealth: 'none needed, same district',
  sentOn: null,
}

async function handOut(
  institution: Partial<Omit<typeof REQUEST, 'sentOn'>> & { sentOn?: string | null } = REQUEST,
) {
  const { lotId } = await takeIn(test)
  const person = { newPerson: { name: INSTITUTION } }
  return test.call('withdrawal.record', {
    person,
    on: TODAY,
    purpose: 'other',
    lines: [{ lotId, amount: '40 seeds' }],
    despite: ['too-few-left'],
    reason: 'asked for by the school',
    institution,
  })
}

const listed = async (more: object = {}) => (await test.call('institution.list', more)).visits
const openOf = async () => (await listed()).map(({ open }) => open.map(({ step }) => step))

it('lists who asked for what, when, and what is still open', async () => {
  const { withdrawalId, personId, entryId } = await handOut()
  expect(await listed()).toMatchObject([
    {
      withdrawalId,
      personId,
      institution: INSTITUTION,
      on: TODAY,
      ...REQUEST,
      lots: [{ words: '40 seeds' }],
    },
  ])
  expect(await openOf()).toEqual([['agreement', 'sending']])
  const entries = (await test.call('entry.list', {})).entries
  expect(entries.map(({ said }) => said).join()).not.toContain(INSTITUTION)
  await test.call('entry.undo', { entryId })
  expect(await listed()).toEqual([])
})

it('closes step by step: signed, sent, and reported back after a year', async () => {
  const { withdrawalId } = await handOut()
  const signed = { ...REQUEST, agreement: 'the school’s own paper, signed', sentOn: TODAY }
  const change = await test.call('institution.change', { withdrawalId, ...signed })
  expect(await openOf()).toEqual([[]])
  test.goTo('2027-03-13')
  expect(await openOf()).toEqual([[]])
  test.goTo('2027-03-14')
  expect(await openOf()).toEqual([['report']])
  const report = { withdrawalId, on: '2027-03-14', note: 'All came up; seed saved from thirty plants.' }
  const { entryId } = await test.call('institution.record-report', report)
  expect(await listed()).toMatchObject([{ open: [], reports: [{ on: report.on, note: report.note }] }])
  expect(await listed({ openOnly: true })).toEqual([])
  await test.call('entry.undo', { entryId })
  await test.call('entry.undo', { entryId: change.entryId })
  expect(await openOf()).toEqual([['agreement', 'sending']])
})

it('puts what is open first, and shows one institution alone, by any of its records', async () => {
  const first = await handOut()
  test.goTo('2026-03-16')
  const done = await handOut({ ...REQUEST, agreement: 'signed', sentOn: '2026-03-15' })
  expect((await listed()).map(({ withdrawalId }) => withdrawalId)).toEqual([
    first.withdrawalId,
    done.withdrawalId,
  ])
  const [keepId, joinId] = [done.personId ?? 0, first.personId ?? 0]
  expect(await listed({ personId: joinId })).toHaveLength(1)
  await test.call('person.merge', { keepId, joinId })
  expect(await listed({ personId: joinId })).toHaveLength(2)
})

it('names what cannot be: nobody, sent before asked for, a report without a request or before the seed', async () => {
  const { lotId } = await takeIn(test)
  const lines = [{ lotId, amount: '10 seeds' }]
  const to = {
    on: TODAY,
    purpose: 'other' as const,
    lines,
    despite: ['too-few-left' as const],
    reason: 'asked for',
  }
  const nobody = { ...to, person: null, institution: REQUEST }
  expect(await test.refused('withdrawal.record', nobody)).toMatchObject({
    code: 'words-missing',
    field: 'person',
  })
  const early = { ...REQUEST, sentOn: '2026-02-19' }
  const person = { newPerson: { name: INSTITUTION } }
  expect(await test.refused('withdrawal.record', { ...to, person, institution: early })).toMatchObject({
    code: 'days-out-of-order',
    field: 'institution.sentOn',
  })
  const { withdrawalId } = await test.call('withdrawal.record', { ...to, person: null })
  const report = { withdrawalId, on: TODAY, note: 'It grew.' }
  expect((await test.refused('institution.record-report', report)).code).toBe('not-found')
  await test.call('institution.change', { withdrawalId, ...REQUEST })
  expect(await test.refused('institution.record-report', { ...report, on: '2026-03-13' })).toMatchObject({
    code: 'days-out-of-order',
    field: 'on',
  })
  expect((await test.refused('institution.change', { withdrawalId: 99, ...REQUEST })).code).toBe('not-found')
  const tomorrow = { withdrawalId, ...REQUEST, sentOn: '2026-03-15' }
  expect((await test.refused('institution.change', tomorrow)).code).toBe('day-not-come')
})
