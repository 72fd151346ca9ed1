import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const record = (lotId: number) => test.call('lot.get', { lotId })
const handOut = (lotId: number, amount: string, despite: 'too-few-left' | 'pests-seen' = 'too-few-left') =>
  test.call('withdrawal.record', {
    person: null,
    on: TODAY,
    lines: [{ lotId, amount }],
    despite: [despite],
    reason: 'a test of the book',
  })

describe('hundred-seed weights', () => {
  it('recounts a weighed lot by a movement of its own, so that balances stay sums', async () => {
    const { lotId } = await takeIn(test, { amount: '100 g' })
    const replicates = [24.9, 25.4, 25.1, 24.8, 25.3, 25, 25.2, 25.1].map((grams) => ({
      seeds: 100,
      grams: grams * 2,
    }))
    const { weight, balance } = await test.call('lot.record-weight', { lotId, on: TODAY, replicates })
    expect(weight).toMatchObject({ replicates: 8, judgement: 'agree' })
    expect(balance.count).toBe(199)
    expect((await record(lotId)).ledger.map(({ kind, count }) => [kind, count])).toEqual([
      ['intake', 400],
      ['recount', -201],
    ])
  })

  it('asks to weigh again above the limit, with more room for chaffy seed', async () => {
    const { lotId } = await takeIn(test)
    const replicates = [24, 25.5, 26.5, 24.2].map((grams) => ({ seeds: 100, grams }))
    const strict = await test.call('lot.record-weight', { lotId, on: TODAY, replicates })
    expect(strict.warnings[0]).toContain('Weigh eight more')
    const chaffy = await test.call('lot.record-weight', { lotId, on: TODAY, replicates, chaffy: true })
    expect(chaffy.warnings).toEqual([])
  })

  it('asks about a misweighed sample but believes the scale', async () => {
    const gift = await takeIn(test, { sample: '100 weigh 2.5 g' })
    expect(gift.warnings[0]).toContain('unusual for Common bean')
  })

  it('goes back to the former weight when a weighing is taken back', async () => {
    const { lotId } = await takeIn(test, { sample: '20 weigh 8 g' })
    const { entryId } = await test.call('lot.record-weight', {
      lotId,
      on: TODAY,
      replicates: [{ seeds: 20, grams: 10 }],
    })
    await test.call('entry.undo', { entryId })
    expect(await record(lotId)).toMatchObject({ weight: { gramsPerHundred: 40 }, quantity: { count: 250 } })
  })
})

describe('stocktake', () => {
  it('writes the difference with its reason and sets the balance', async () => {
    const { lotId } = await takeIn(test, { amount: '100 g' })
    const { change } = await test.call('lot.record-count', {
      lotId,
      on: TODAY,
      found: '96 g',
      reason: 'spring stocktake',
    })
    expect(change).toEqual({ count: -16, massMg: -4_000 })
    expect((await record(lotId)).ledger.at(-1)).toMatchObject({ kind: 'stocktake', note: 'spring stocktake' })
  })

  it('finds nothing left', async () => {
    const { lotId } = await takeIn(test)
    await test.call('lot.record-count', { lotId, on: TODAY, found: 'nothing', reason: 'mice' })
    expect((await record(lotId)).quantity).toMatchObject({ count: 0, massMg: 0 })
  })

  it('puts a lot back on the basis it had when taken back', async () => {
    const { lotId } = await takeIn(test, { amount: '100 g' })
    const { entryId } = await test.call('lot.record-count', {
      lotId,
      on: TODAY,
      found: '390 seeds',
      reason: 'counted',
    })
    expect((await record(lotId)).basis).toBe('counted')
    await test.call('entry.undo', { entryId })
    expect(await record(lotId)).toMatchObject({ basis: 'weighed', quantity: { count: 400, massMg: 100_000 } })
  })
})

describe('splitting and joining', () => {
  it('conserves both numbers and gives the part its own letter, role and measurements', async () => {
    const { lotId } = await takeIn(test, { amount: '101.3 g', sample: '30 weigh 7.7 g' })
    await test.call('germination.record', { lotId, on: TODAY, tested: 20, sprouted: 18, fromStock: false })
    const before = await record(lotId)
    const { newLotId, newLotNumber } = await test.call('lot.split', {
      lotId,
      on: TODAY,
      amount: '150 seeds',
      role: 'reserve',
    })
    const [rest, part] = [await record(lotId), await record(newLotId)]
    expect(newLotNumber).toBe('HL26-0001-B')
    expect(part).toMatchObject({
      role: 'reserve',
      parents: [{ lotId, relation: 'split' }],
      quantity: { count: 150 },
    })
    expect(part.weight.gramsPerHundred).toBe(before.weight.gramsPerHundred)
    expect(part.germination[0]?.sprouted).toBe(18)
    expect(rest.quantity.count + part.quantity.count).toBe(before.quantity.count)
    expect(rest.quantity.massMg + part.quantity.massMg).toBe(before.quantity.massMg)
  })

  it('keeps who holds a duplicate elsewhere, and never hands it out', async () => {
    const { lotId } = await takeIn(test)
    const ask = { lotId, on: TODAY, amount: '100 seeds', role: 'duplicate-elsewhere' as const }
    expect((await test.refused('lot.split', ask)).field).toBe('heldBy')
    const { newLotId } = await test.call('lot.split', { ...ask, heldBy: 'Marrow Bridge seed circle' })
    expect(await record(newLotId)).toMatchObject({ heldBy: 'Marrow Bridge seed circle', heldSince: TODAY })
    const problem = await test.refused('withdrawal.record', {
      person: null,
      on: TODAY,
      lines: [{ lotId: newLotId, amount: '1 seeds' }],
    })
    expect(problem.code).toBe('wrong-role')
  })

  it('pours lots of one accession together, and can be taken back', async () => {
    const parent = await takeIn(test, { harvest: '2022', amount: '33.3 g' })
    const { taken } = await test.call('return.record', {
      person: { newPerson: { name: 'Ilse Corran' } },
      parentLotId: parent.lotId,
      receivedOn: TODAY,
      harvest: '2025',
      amount: '12.7 g',
    })
    const { entryId, balance } = await test.call('lot.merge', {
      intoLotId: parent.lotId,
      fromLotIds: [taken.lotId],
      on: TODAY,
    })
    expect(balance.massMg).toBe(46_000)
    expect((await record(parent.lotId)).harvest).toBe('2022–2025')
    await test.call('entry.undo', { entryId })
    expect(await record(parent.lotId)).toMatchObject({ harvest: '2022', quantity: { massMg: 33_300 } })
    expect((await record(taken.lotId)).quantity.massMg).toBe(12_700)
  })

  it('parts them again where a harvest year is unknown', async () => {
    const parent = await takeIn(test, { harvest: '2022', amount: '33.3 g' })
    const { taken } = await test.call('return.record', {
      person: { newPerson: { name: 'Ilse Corran' } },
      parentLotId: parent.lotId,
      receivedOn: TODAY,
      amount: '12.7 g',
    })
    const join = { intoLotId: parent.lotId, fromLotIds: [taken.lotId], on: TODAY }
    const { entryId } = await test.call('lot.merge', join)
    expect((await record(parent.lotId)).harvest).toBe('year unknown')
    await test.call('entry.undo', { entryId })
    expect((await record(parent.lotId)).harvest).toBe('2022')
  })

  it('refuses lots of two accessions', async () => {
    const [one, other] = [await takeIn(test), await takeIn(test)]
    const problem = await test.refused('lot.merge', {
      intoLotId: one.lotId,
      fromLotIds: [other.lotId],
      on: TODAY,
    })
    expect(problem).toMatchObject({ code: 'not-mergeable', field: 'fromLotIds.0' })
  })
})

describe('places, quarantine and discard', () => {
  it('keeps where a lot has lain, and moves it back when taken back', async () => {
    const { placeId: room } = await test.call('place.create', { name: 'Seed room', kind: 'room' })
    const { placeId: box } = await test.call('place.create', { parentId: room, name: 'Box 3', kind: 'box' })
    const { lotId } = await takeIn(test, { placeId: room })
    const { entryId, place } = await test.call('lot.move', { lotIds: [lotId], placeId: box, on: TODAY })
    expect(place).toBe('Seed room / Box 3')
    expect((await record(lotId)).placeHistory.map((line) => line.place)).toEqual([
      'Seed room / Box 3',
      'Seed room',
    ])
    await test.call('entry.undo', { entryId })
    expect(await record(lotId)).toMatchObject({ place: 'Seed room', placeHistory: [{ place: 'Seed room' }] })
  })

  it('will not take a move back past a later one', async () => {
    const { placeId: one } = await test.call('place.create', { name: 'One', kind: 'box' })
    const { placeId: two } = await test.call('place.create', { name: 'Two', kind: 'box' })
    const { lotId } = await takeIn(test)
    const first = await test.call('lot.move', { lotIds: [lotId], placeId: one, on: TODAY })
    await test.call('lot.move', { lotIds: [lotId], placeId: two, on: TODAY })
    expect((await test.refused('entry.undo', { entryId: first.entryId })).sentence).toContain(
      'Moved HL26-0001-A to Two',
    )
  })

  it('releases a lot once it was checked', async () => {
    const { lotId } = await takeIn(test, { cautions: ['pests-seen'] })
    await test.call('lot.release', { lotId, checked: 'frozen two weeks, no beetles' })
    await handOut(lotId, '5 seeds', 'pests-seen')
    expect((await record(lotId)).cautions[0]?.caution).toBe('pests-seen')
  })

  it('throws everything away down to nothing', async () => {
    const { lotId } = await takeIn(test, { amount: '7.3 g', sample: '9 weigh 2.1 g' })
    await test.call('lot.discard', { lotId, on: TODAY, amount: 'everything', reason: 'mould' })
    expect((await record(lotId)).quantity).toMatchObject({ count: 0, massMg: 0 })
  })
})

it('shows on the ledger line and in the history why a caution was passed by', async () => {
  const { lotId } = await takeIn(test)
  await handOut(lotId, '350 seeds')
  const told = 'though too few were left; reason: a test of the book'
  expect((await record(lotId)).ledger.at(-1)).toMatchObject({ overridden: told })
  const { entries } = await test.call('entry.list', {})
  expect(entries[0]).toMatchObject({ overridden: told })
  expect(entries[1]).toMatchObject({ overridden: '' })
})
