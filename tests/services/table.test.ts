import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  aCollection,
  aGift,
  type TemporaryCollection,
  TODAY,
  takeIn,
} from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

describe('taking gifts in', () => {
  it('numbers accessions without gaps and letters their lots', async () => {
    const { taken } = await test.call('intake.record', {
      donor: { newPerson: { name: 'Orsolya Venn', town: 'Quillhaven' } },
      receivedOn: TODAY,
      gifts: [aGift(), aGift({ amount: '30 seeds' }), aGift({ amount: 'about 200' })],
    })
    expect(taken.map((gift) => gift.lotNumber)).toEqual(['HL26-0001-A', 'HL26-0002-A', 'HL26-0003-A'])
    expect(taken[1]?.words).toBe('30 seeds')
  })

  it('derives the count from the crop’s usual weight until a sample is weighed', async () => {
    // 100 g of bean at the table's 25 g per hundred is 400 seeds.
    const usual = await takeIn(test)
    expect((await test.call('lot.get', { lotId: usual.lotId })).quantity.count).toBe(400)
    const sampled = await takeIn(test, { sample: '20 weigh 10 g' })
    const record = await test.call('lot.get', { lotId: sampled.lotId })
    expect(record.quantity.count).toBe(200)
    expect(record.weight).toMatchObject({ basis: 'measured', gramsPerHundred: 50 })
  })

  it('keeps a gift with cautions in quarantine and says the caution in words', async () => {
    const gift = await takeIn(test, { cautions: ['treated'], cautionNote: 'thiram' })
    expect(gift.quarantined).toBe(true)
    const record = await test.call('lot.get', { lotId: gift.lotId })
    expect(record.quarantineReason).toBe('TREATED with thiram. Do not use for food, feed or oil.')
    const problem = await test.refused('withdrawal.record', {
      person: null,
      on: TODAY,
      lines: [{ lotId: gift.lotId, amount: '5 seeds' }],
    })
    expect(problem.code).toBe('in-quarantine')
  })

  it('asks rather than guesses, names the field, and writes nothing', async () => {
    const problem = await test.refused('intake.record', {
      donor: { newPerson: { name: 'Half Written' } },
      receivedOn: TODAY,
      gifts: [aGift(), aGift({ amount: '30' })],
    })
    expect(problem).toMatchObject({
      code: 'amount-unclear',
      field: 'gifts.1.amount',
      choices: ['30 g', '30 seeds'],
    })
    const about = await test.call('collection.get', {})
    expect([about.accessions, about.people, about.movements]).toEqual([0, 0, 0])
    expect((await takeIn(test)).lotNumber).toBe('HL26-0001-A')
  })

  it('uses one variety for one name of a crop, and another for another crop', async () => {
    const first = await takeIn(test)
    const again = await takeIn(test)
    const other = await takeIn(test, { variety: { newVariety: { cropId: 'pea', name: 'Miller’s Pole' } } })
    const varietyOf = async (lotId: number) => (await test.call('lot.get', { lotId })).varietyId
    expect(await varietyOf(again.lotId)).toBe(await varietyOf(first.lotId))
    expect(await varietyOf(other.lotId)).not.toBe(await varietyOf(first.lotId))
  })

  it('refuses a day that has not come', async () => {
    const problem = await test.refused('intake.record', {
      donor: null,
      receivedOn: '2026-03-15',
      gifts: [aGift()],
    })
    expect(problem).toMatchObject({ code: 'day-not-come', field: 'receivedOn' })
  })
})

describe('handing out', () => {
  it('takes seed out of the book and says what is left', async () => {
    const { lotId } = await takeIn(test, { amount: '400 seeds' })
    const { lines, said } = await test.call('withdrawal.record', {
      person: { newPerson: { name: 'Teodor Ash' } },
      on: TODAY,
      lines: [{ lotId, amount: '2 packets of 25' }],
    })
    expect(lines[0]?.left.count).toBe(350)
    expect(said).toBe('Handed out from HL26-0001-A; 350 seeds left')
  })

  it('refuses more than there is, with the balance and a choice that works', async () => {
    const { lotId } = await takeIn(test, { amount: '400 seeds' })
    const line = { person: null, on: TODAY, despite: ['too-few-left' as const], reason: 'last of it' }
    const problem = await test.refused('withdrawal.record', {
      ...line,
      lines: [{ lotId, amount: '401 seeds' }],
    })
    expect(problem).toMatchObject({
      code: 'not-enough-seed',
      field: 'lines.0.amount',
      choices: ['400 seeds'],
    })
    const { lines } = await test.call('withdrawal.record', {
      ...line,
      lines: [{ lotId, amount: problem.choices[0] ?? '' }],
    })
    expect(lines[0]?.left).toMatchObject({ count: 0, massMg: 0 })
  })

  it('empties both numbers when all the mass goes', async () => {
    const { lotId } = await takeIn(test, { amount: '10.1 g', sample: '7 weigh 2.3 g' })
    const { lines } = await test.call('withdrawal.record', {
      person: null,
      on: TODAY,
      lines: [{ lotId, amount: '10.1 g' }],
      despite: ['too-few-left'],
      reason: 'all of it',
    })
    expect(lines[0]?.left).toMatchObject({ count: 0, massMg: 0 })
  })

  it('wants a reason before too few are left for one regrowing', async () => {
    const { lotId } = await takeIn(test, { amount: '60 seeds' })
    const ask = { person: null, on: TODAY, lines: [{ lotId, amount: '50 seeds' }] }
    // Bean: 10 plants / 0.8 = 13 living seeds for one regrowing; 10 left of which 70 % alive is 7.
    const problem = await test.refused('withdrawal.record', ask)
    expect(problem).toMatchObject({ code: 'caution', choices: ['too-few-left'] })
    expect((await test.refused('withdrawal.record', { ...ask, despite: ['too-few-left'] })).field).toBe(
      'reason',
    )
    await test.call('withdrawal.record', {
      ...ask,
      despite: ['too-few-left'],
      reason: 'A member regrows it for us',
    })
  })

  it('warns before the reference sample is touched', async () => {
    const { lotId } = await takeIn(test, { amount: '400 seeds', role: 'reference' })
    const ask = {
      person: null,
      on: TODAY,
      purpose: 'grow-out' as const,
      lines: [{ lotId, amount: '5 seeds' }],
    }
    expect((await test.refused('withdrawal.record', ask)).choices).toEqual(['reference-sample'])
    await test.call('withdrawal.record', {
      ...ask,
      despite: ['reference-sample'],
      reason: 'the working lot is dead',
    })
  })

  it('acts once for one key, and refuses the key for anything else', async () => {
    const { lotId } = await takeIn(test, { amount: '400 seeds' })
    const ask = { key: 'one-visit-only', person: null, on: TODAY, lines: [{ lotId, amount: '50 seeds' }] }
    const first = await test.call('withdrawal.record', ask)
    expect(await test.call('withdrawal.record', ask)).toEqual(first)
    expect((await test.call('lot.get', { lotId })).quantity.count).toBe(350)
    const problem = await test.refused('withdrawal.record', {
      ...ask,
      lines: [{ lotId, amount: '51 seeds' }],
    })
    expect(problem.code).toBe('key-used-otherwise')
  })

  it('offers the oldest good lot first and says why', async () => {
    const old = await takeIn(test, { harvest: '2019' })
    const young = await takeIn(test, { harvest: '2023' })
    const weak = await takeIn(test, { harvest: '2015' })
    await test.call('germination.record', { lotId: weak.lotId, on: TODAY, tested: 20, sprouted: 4 })
    const { lots } = await test.call('withdrawal.list-lots', { text: 'miller' })
    expect(lots.map((lot) => lot.lotId)).toEqual([old.lotId, young.lotId, weak.lotId])
    expect(lots[2]?.why).toBe('harvest 2015; only 20\u00a0% sprouted in 2026')
  })
})

describe('taking back what was grown', () => {
  it('makes a new lot of the accession, one generation on, with its parent', async () => {
    const parent = await takeIn(test)
    const { taken } = await test.call('return.record', {
      person: { newPerson: { name: 'Teodor Ash' } },
      parentLotId: parent.lotId,
      receivedOn: TODAY,
      harvest: '2025',
      amount: '80 g',
      plantsGrown: 24,
    })
    expect(taken.lotNumber).toBe('HL26-0001-B')
    const record = await test.call('lot.get', { lotId: taken.lotId })
    expect(record).toMatchObject({
      generation: 1,
      parents: [{ lotId: parent.lotId, relation: 'grown' }],
      grower: 'Teodor Ash',
    })
  })
})
