import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
let growerId: number
beforeEach(async () => {
  test = await aCollection()
  growerId = (await test.call('person.create', { name: 'Tamsin Lugg', roles: ['grower'] })).personId
})
afterEach(() => test.remove())

const garden = async (name: string, eastM = 0) =>
  (
    await test.call('site.change', {
      name,
      growerId,
      areaM2: 60,
      mostVarieties: 3,
      place: { eastM, northM: 0 },
    })
  ).siteId

const accession = (cropId: string, name: string, amount = '40 seeds') =>
  takeIn(test, { variety: { newVariety: { cropId, name } }, amount })

const grownNow = async () => (await test.call('grow-out.list', {})).growOuts

async function planned(cropId: string, name: string) {
  const lot = await accession(cropId, name)
  const siteId = await garden('Orrin strip')
  const plan = await test.call('season-plan.create', { choices: [{ accessionId: lot.accessionId, siteId }] })
  const growOutId = (await grownNow())[0]?.growOutId ?? 0
  return { ...lot, siteId, growOutId, planEntry: plan.entryId }
}

const needOf = async (accessionId: number) => test.call('regeneration.get', { accessionId })

describe('the notes of a grow-out', () => {
  it('are dated, in order, and can be taken back', async () => {
    const { growOutId } = await planned('bean', 'Pole')
    expect((await grownNow())[0]).toMatchObject({
      state: 'planned',
      next: ['sown', 'emerged', 'flowered', 'saved-from', 'failed'],
    })
    test.goTo('2026-08-01')
    const note = (kind: string, on: string, more: object = {}) =>
      test.call('grow-out.record', { growOutId, kind: kind as 'sown', on, ...more })
    const sown = await note('sown', '2026-05-02')
    expect(sown.said).toBe('Pole at Orrin strip: sown 2 May 2026')
    await note('flowered', '2026-06-20')
    await note('emerged', '2026-05-12', { plants: 24 })
    const [line] = await grownNow()
    expect(line).toMatchObject({ state: 'growing', next: ['saved-from', 'failed'] })
    expect(line?.notes.map(({ words }) => words)).toEqual([
      'sown 2 May 2026',
      'came up 12 May 2026, 24 plants',
      'in flower 20 Jun 2026',
    ])
    await test.call('entry.undo', { entryId: sown.entryId })
    expect((await grownNow())[0]?.next).toEqual(['sown', 'saved-from', 'failed'])
  })

  it('are refused where they do not fit, with what to do', async () => {
    const { growOutId } = await planned('bean', 'Pole')
    test.goTo('2026-08-01')
    const refused = (kind: 'sown' | 'emerged' | 'saved-from' | 'failed' | 'roots-stored', on: string) =>
      test.refused('grow-out.record', { growOutId, kind, on })
    await test.call('grow-out.record', { growOutId, kind: 'sown', on: '2026-05-02' })
    expect(await refused('sown', '2026-05-03')).toMatchObject({
      sentence: 'It is noted already: sown 2 May 2026.',
    })
    expect(await refused('emerged', '2026-05-01')).toMatchObject({
      field: 'on',
      sentence: expect.stringContaining('That day does not fit: sown 2 May 2026'),
    })
    expect(await refused('emerged', '2026-08-02')).toMatchObject({ field: 'on' })
    expect(await refused('saved-from', '2026-07-30')).toMatchObject({ field: 'plants' })
    expect(await refused('failed', '2026-07-30')).toMatchObject({ field: 'note' })
    expect(await refused('roots-stored', '2026-07-30')).toMatchObject({
      sentence: expect.stringContaining('no roots are stored'),
    })
    expect(await test.refused('grow-out.record', { growOutId: 99, kind: 'sown', on: TODAY })).toMatchObject({
      code: 'not-found',
      field: 'growOutId',
    })
  })

  it('hold the plan: what grows can be neither left out of a later one nor lose its own', async () => {
    const { growOutId, accessionId, planEntry } = await planned('bean', 'Pole')
    const other = await accession('pea', 'Tall')
    const far = await garden('Mill field', 900)
    await test.call('grow-out.record', { growOutId, kind: 'sown', on: TODAY })
    const moved = [
      { accessionId, siteId: far },
      { accessionId: other.accessionId, siteId: far },
    ]
    expect(await test.refused('season-plan.create', { choices: moved })).toMatchObject({
      field: 'choices',
      sentence: 'Pole is growing at Orrin strip: sown 14 Mar 2026, and this plan leaves it out.',
    })
    expect(await test.refused('entry.undo', { entryId: planEntry })).toMatchObject({
      sentence: expect.stringContaining('Pole at Orrin strip: sown'),
    })
    await test.call('grow-out.record', { growOutId, kind: 'failed', on: TODAY, note: 'slugs' })
    await test.call('season-plan.create', { choices: moved })
    expect((await grownNow()).map(({ variety, site, state }) => [variety, site, state])).toEqual([
      ['Pole', 'Mill field', 'planned'],
      ['Tall', 'Mill field', 'planned'],
      ['Pole', 'Orrin strip', 'failed'],
    ])
  })
})

describe('a need that is being grown', () => {
  it('waits behind what nobody grows, and comes back when its growing fails', async () => {
    const { growOutId, accessionId, lotId } = await planned('bean', 'Pole')
    await accession('bean', 'Other', '46 seeds')
    const order = async () => (await test.call('regeneration.list', {})).needs.map(({ variety }) => variety)
    expect(await order()).toEqual(['Pole', 'Other'])
    await test.call('withdrawal.record', {
      person: { personId: growerId },
      on: TODAY,
      purpose: 'grow-out',
      lines: [{ lotId, amount: '5 seeds' }],
      growOutId,
    })
    expect((await needOf(accessionId)).growOut).toEqual({ failed: false, words: 'at Orrin strip' })
    expect(await order()).toEqual(['Other', 'Pole'])
    const { entryId } = await test.call('grow-out.record', {
      growOutId,
      kind: 'failed',
      on: TODAY,
      note: 'slugs',
    })
    expect(await order()).toEqual(['Pole', 'Other'])
    expect((await needOf(accessionId)).growOut).toEqual({
      failed: true,
      words: 'at Orrin strip: failed 14 Mar 2026 (slugs)',
    })
    await test.call('entry.undo', { entryId })
    expect(await order()).toEqual(['Other', 'Pole'])
  })
})

describe('seed brought back of a grow-out', () => {
  it('has every lot that was sown as parent, one generation on, and ends the grow-out', async () => {
    const { growOutId, accessionId, lotId } = await planned('bean', 'Pole')
    const split = await test.call('lot.split', { lotId, on: TODAY, amount: '10 seeds', role: 'reserve' })
    const out = await test.call('withdrawal.record', {
      person: { personId: growerId },
      on: TODAY,
      purpose: 'grow-out',
      lines: [
        { lotId, amount: '9 seeds' },
        { lotId: split.newLotId, amount: '9 seeds' },
      ],
      despite: ['reserve'],
      reason: 'both are old',
    })
    await test.call('grow-out.record', { growOutId, kind: 'saved-from', on: TODAY, plants: 12 })
    const { visits } = await test.call('withdrawal.list-open', { personId: growerId })
    expect(visits[0]?.lots.map(({ growOut }) => growOut)).toEqual([
      { growOutId, site: 'Orrin strip', plants: 12 },
      { growOutId, site: 'Orrin strip', plants: 12 },
    ])
    const { taken, entryId } = await test.call('return.record', {
      person: { personId: growerId },
      parentLotId: lotId,
      withdrawalId: out.withdrawalId,
      receivedOn: TODAY,
      amount: '400 seeds',
      plantsGrown: 12,
      grownAt: 'Orrin strip',
    })
    const lot = await test.call('lot.get', { lotId: taken.lotId })
    expect(lot.parents.map((parent) => parent.lotId)).toEqual([lotId, split.newLotId])
    expect((await needOf(accessionId)).generations).toEqual([
      { lotNumber: taken.lotNumber, generation: 1, plants: 12 },
    ])
    expect((await grownNow())[0]).toMatchObject({ state: 'brought-back', back: [{ lotId: taken.lotId }] })
    await test.call('entry.undo', { entryId })
    expect((await grownNow())[0]).toMatchObject({ state: 'growing', back: [] })
  })

  it('is of the accession that was grown', async () => {
    const { growOutId } = await planned('bean', 'Pole')
    const other = await accession('pea', 'Tall')
    const facts = { person: { personId: growerId }, growOutId }
    expect(
      await test.refused('return.record', {
        ...facts,
        parentLotId: other.lotId,
        receivedOn: TODAY,
        amount: '40 seeds',
      }),
    ).toMatchObject({ field: 'growOutId' })
    expect(
      await test.refused('withdrawal.record', {
        ...facts,
        on: TODAY,
        purpose: 'grow-out',
        lines: [{ lotId: other.lotId, amount: '4 seeds' }],
      }),
    ).toMatchObject({ field: 'growOutId' })
  })
})

describe('a grow-out of two seasons', () => {
  it('notes its roots, and stands in the plan of the next season with its bed and its flowers', async () => {
    const { growOutId, accessionId, lotId, siteId } = await planned('cabbage', 'Old Drum')
    const out = { person: { personId: growerId }, purpose: 'grow-out' as const, growOutId }
    await test.call('withdrawal.record', { ...out, on: TODAY, lines: [{ lotId, amount: '20 seeds' }] })
    test.goTo('2027-02-20')
    const note = (kind: 'sown' | 'roots-stored', on: string, plants: number | null) =>
      test.call('grow-out.record', { growOutId, kind, on, plants })
    await note('sown', '2026-04-20', null)
    await note('roots-stored', '2026-10-28', 24)
    const [line] = await grownNow()
    expect(line).toMatchObject({ state: 'growing', harvestSeason: 2027, biennial: true })
    expect(line?.notes.at(-1)?.words).toBe('roots stored 28 Oct 2026, 24 roots')
    expect((await needOf(accessionId)).growOut).toMatchObject({ failed: false })

    const broccoli = await accession('broccoli', 'Quick')
    const kale = await accession('kale', 'Slow')
    const check = async (id: number) =>
      (await test.call('season-plan.check', { choices: [{ accessionId: id, siteId }] })).clashes
    expect(await check(broccoli.accessionId)).toMatchObject([
      { kind: 'neighbour', sentence: expect.stringContaining('Old Drum of last season flowers') },
    ])
    expect(await check(kale.accessionId)).toEqual([])
    const { lines, left } = await test.call('season-plan.preview', {
      accessionIds: [kale.accessionId],
      seconds: 0,
    })
    expect([lines.length, left.length]).toEqual([1, 0])
    await test.call('grow-out.record', { growOutId, kind: 'failed', on: '2027-02-19', note: 'they rotted' })
    expect(await check(broccoli.accessionId)).toEqual([])
  })
})
