import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'
import { textOf } from '../builders/tray.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const REASON = 'weevils in the jar'
const ADVICE = 'Freeze the packet for two weeks.\nThen bring it back.'
const MEMBER = {
  name: 'Isolde Quern',
  address: '4 Mill Row\nQuillhaven',
  email: 'isolde@example.org',
  mayWrite: true,
}

const split = async (lotId: number) =>
  (await test.call('lot.split', { lotId, on: TODAY, amount: '20 g', role: 'working' })).newLotId
const grow = async (parentLotId: number) =>
  (
    await test.call('return.record', {
      person: { newPerson: { name: 'Bram Oakley' } },
      parentLotId,
      receivedOn: TODAY,
      harvest: '2025',
      amount: '50 g',
    })
  ).taken.lotId
const handOut = (lotId: number, person: object | null) =>
  test.call('withdrawal.record', {
    person: person === null ? null : { newPerson: { name: 'Bram Oakley', ...person } },
    on: TODAY,
    lines: [{ lotId, amount: '25 seeds' }],
    despite: ['too-few-left'],
    reason: 'told',
  })
const kinOf = async (lotId: number) =>
  Object.fromEntries((await test.call('lot.trace', { lotId })).lots.map((lot) => [lot.lotId, lot.kin]))
const recall = (lotId: number, lotIds: readonly number[] = []) =>
  test.call('recall.record', { lotId, lotIds: [...lotIds], on: TODAY, reason: REASON, advice: ADVICE })
const reasonOf = async (lotId: number) => (await test.call('lot.get', { lotId })).quarantineReason

describe('the trace of a lot', () => {
  it('has its parts and its offspring, and the parts have it', async () => {
    const { lotId } = await takeIn(test)
    const part = await split(lotId)
    const child = await grow(part)
    expect(await kinOf(lotId)).toEqual({ [lotId]: 'itself', [part]: 'same-seed', [child]: 'offspring' })
    expect(await kinOf(part)).toEqual({ [part]: 'itself', [lotId]: 'same-seed', [child]: 'offspring' })
    expect(await kinOf(child)).toEqual({ [child]: 'itself', [part]: 'came-from', [lotId]: 'came-from' })
  })

  it('forgets what was poured together and taken back, and knows it again when done anew', async () => {
    const { lotId } = await takeIn(test)
    const child = await grow(lotId)
    await test.call('lot.release', { lotId: child, checked: 'fine' }).catch(() => null)
    const poured = { intoLotId: lotId, fromLotIds: [child], on: TODAY }
    const merged = await test.call('lot.merge', poured)
    expect((await kinOf(lotId))[child]).toBe('same-seed')
    await test.call('entry.undo', { entryId: merged.entryId })
    expect((await kinOf(lotId))[child]).toBe('offspring')
    await test.call('lot.merge', poured)
    expect((await kinOf(lotId))[child]).toBe('same-seed')
  })

  it('names who has some, by what went out after the seed was shared and was not taken back', async () => {
    const { lotId } = await takeIn(test)
    const child = await grow(lotId)
    await handOut(lotId, { name: 'Too Early' })
    await test.call('lot.merge', { intoLotId: lotId, fromLotIds: [child], on: TODAY })
    await handOut(lotId, MEMBER)
    await handOut(lotId, null)
    const undone = await handOut(lotId, { name: 'Never Came' })
    await test.call('entry.undo', { entryId: undone.entryId })
    const ofChild = await test.call('lot.trace', { lotId: child })
    expect(ofChild.people.map(({ name }) => name)).toEqual(['Isolde Quern'])
    expect(ofChild.nameless.map(({ words }) => words)).toEqual(['25 seeds'])
    const ofLot = await test.call('lot.trace', { lotId })
    expect(ofLot.people.map(({ name }) => name)).toEqual(['Isolde Quern', 'Too Early'])
  })
})

describe('a recall', () => {
  it('puts all of it into quarantine in one entry, beside what was there, and gives it back', async () => {
    const { lotId } = await takeIn(test)
    const [part, other] = [await split(lotId), await split(lotId)]
    await test.call('lot.quarantine', { lotId: part, reason: 'Damp packet' })
    const { entryId, recallId, said } = await recall(lotId, [part])
    expect(said).toBe(
      `Recalled ${(await test.call('lot.get', { lotId })).lotNumber} and one more lot: ${REASON}`,
    )
    expect(await reasonOf(lotId)).toBe(`Recalled: ${REASON}`)
    expect(await reasonOf(part)).toBe(`Damp packet Also: Recalled: ${REASON}`)
    expect(await reasonOf(other)).toBe('')
    const { lots } = await test.call('recall.get', { recallId })
    expect(lots.map(({ lotId, affected }) => [lotId, affected])).toEqual([
      [lotId, 'source'],
      [part, 'same-seed'],
    ])
    await test.call('entry.undo', { entryId })
    expect([await reasonOf(lotId), await reasonOf(part)]).toEqual(['', 'Damp packet'])
    expect((await test.call('recall.list', {})).recalls).toEqual([])
    expect((await test.refused('recall.get', { recallId })).code).toBe('not-found')
  })

  it('previews what it would do, writing nothing', async () => {
    const { lotId } = await takeIn(test)
    const child = await grow(lotId)
    await handOut(lotId, MEMBER)
    await handOut(lotId, null)
    const chosen = { lotId, lotIds: [child] }
    const preview = await test.call('recall.preview', chosen)
    expect(preview.lots.map(({ affected }) => affected)).toEqual(['source', 'perhaps'])
    expect([preview.toWrite, preview.inPerson, preview.nameless.length]).toEqual([1, 0, 1])
    expect(await reasonOf(lotId)).toBe('')
  })

  it('refuses a lot that has none of the seed', async () => {
    const { lotId } = await takeIn(test)
    const { lotId: stranger } = await takeIn(test)
    const problem = await test.refused('recall.record', {
      ...{ lotId, lotIds: [stranger], on: TODAY, reason: REASON, advice: ADVICE },
    })
    expect(problem).toMatchObject({ code: 'not-in-its-trace', field: 'lotIds.0' })
    expect(await reasonOf(lotId)).toBe('')
  })

  it('keeps what came of it for a lot, a person and as a whole, and is not undone under that', async () => {
    const { lotId } = await takeIn(test)
    const { personId } = await handOut(lotId, MEMBER)
    const { recallId, entryId } = await recall(lotId)
    const note = (
      of: { lotId: number } | { personId: number } | 'the-whole',
      outcome: 'told' | 'checked-fine',
    ) => test.call('recall.record-outcome', { recallId, of, outcome, on: TODAY, note: 'rang' })
    await note({ personId: personId ?? 0 }, 'told')
    await note({ lotId }, 'checked-fine')
    const last = await note('the-whole', 'checked-fine')
    const read = () => test.call('recall.get', { recallId })
    expect((await read()).people[0]?.outcomes).toMatchObject([{ outcome: 'told', note: 'rang', on: TODAY }])
    expect((await read()).lots[0]?.outcomes).toMatchObject([{ outcome: 'checked-fine' }])
    expect((await read()).outcomes).toHaveLength(1)
    expect((await test.refused('entry.undo', { entryId })).code).toBe('cannot-undo')
    await test.call('entry.undo', { entryId: last.entryId })
    expect((await read()).outcomes).toEqual([])
    await test.call('lot.release', { lotId, checked: 'nothing found' })
    expect((await read()).lots[0]?.quarantined).toBe(false)
  })

  it('refuses what came of a lot or a person that it is not about', async () => {
    const { lotId } = await takeIn(test)
    const { lotId: stranger } = await takeIn(test)
    const { personId } = await handOut(stranger, MEMBER)
    const { recallId } = await recall(lotId)
    for (const of of [{ lotId: stranger }, { personId: personId ?? 0 }]) {
      const outcome = { recallId, of, outcome: 'told', on: TODAY } as const
      expect((await test.refused('recall.record-outcome', outcome)).code).toBe('not-in-recall')
    }
  })
})

describe('whom to tell', () => {
  it('are those who agreed; the others are counted, and nobody’s cell is a formula', async () => {
    const { lotId } = await takeIn(test)
    await handOut(lotId, { ...MEMBER, name: '=HYPERLINK("x")' })
    await handOut(lotId, { name: 'Bram Oakley', email: 'bram@example.org' })
    const { recallId } = await recall(lotId)
    const { csv, toWrite, inPerson } = await test.call('recall.export', { recallId })
    expect([toWrite, inPerson]).toEqual([1, 1])
    expect(csv).toContain(`"'=HYPERLINK(`)
    expect(csv).not.toContain('Bram')
    expect(csv).not.toContain('bram@example.org')
  })

  it('get a letter each with the reason, what to do and what they had', async () => {
    const { lotId } = await takeIn(test)
    await handOut(lotId, MEMBER)
    await handOut(lotId, { ...MEMBER, name: 'Xoana Prado', language: 'es' })
    await handOut(lotId, { name: 'Bram Oakley' })
    const { recallId } = await recall(lotId)
    const made = await test.call('recall.render-letters', { recallId })
    expect([made.pages, made.toWrite, made.inPerson]).toEqual([2, 2, 1])
    const text = await textOf(made)
    for (const said of [
      'Dear Isolde Quern',
      'Hola, Xoana Prado',
      'Quillhaven',
      '4 Mill Row',
      ADVICE.split('\n')[1],
    ])
      expect(text).toContain(said)
    expect(text.match(new RegExp(REASON, 'g'))).toHaveLength(2)
    expect(text).not.toContain('Bram')
  })

  it('get a letter as well where they hold a duplicate of it for the library', async () => {
    const { lotId } = await takeIn(test)
    const elsewhere = { role: 'duplicate-elsewhere', heldBy: 'the Grange' } as const
    const { newLotId } = await test.call('lot.split', {
      ...{ lotId, on: TODAY, amount: '20 g', ...elsewhere },
      terms: { contact: 'The Grange\nUpper Quill' },
    })
    const { recallId } = await recall(lotId, [newLotId])
    const text = await textOf(await test.call('recall.render-letters', { recallId }))
    for (const said of ['Dear the Grange', 'Upper Quill', 'which you hold for us', REASON])
      expect(text).toContain(said)
  })

  it('are nobody where none agreed', async () => {
    const { lotId } = await takeIn(test)
    await handOut(lotId, { name: 'Bram Oakley' })
    const { recallId } = await recall(lotId)
    expect((await test.refused('recall.render-letters', { recallId })).code).toBe('nothing-to-print')
  })

  it('still count somebody who was erased, without how to reach them', async () => {
    const { lotId } = await takeIn(test)
    const { personId } = await handOut(lotId, MEMBER)
    const { recallId } = await recall(lotId)
    await test.call('person.erase', { personId: personId ?? 0, mask: [] })
    const { people, toWrite, inPerson } = await test.call('recall.get', { recallId })
    expect([people.length, toWrite, inPerson]).toEqual([1, 0, 1])
    expect(JSON.stringify(people)).not.toContain('Isolde')
  })
})
