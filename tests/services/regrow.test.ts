import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { takeInOn } from '../builders/earlier-gift.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

/** A variety of bean of which ten plants are grown: 15 living seeds make one regrowing nine times in ten, 45 are kept. */
const beans = (name: string, amount: string) =>
  takeIn(test, { variety: { newVariety: { cropId: 'bean', name } }, amount })

async function tested(lotId: number, sprouted: number, of = 50) {
  await test.call('germination.record', { lotId, on: TODAY, tested: of, sprouted, fromStock: false })
}

const ranking = async () =>
  (await test.call('regeneration.list', {})).needs.map(({ variety, state }) => `${variety}: ${state}`)

describe('what to regrow', () => {
  it('ranks by state, then by what waiting costs, and names the season', async () => {
    await tested((await beans('Plenty', '900 seeds')).lotId, 48)
    await tested((await beans('Middling', '30 seeds')).lotId, 45)
    await tested((await beans('Nearly gone', '18 seeds')).lotId, 45)
    await tested((await beans('Last handful', '6 seeds')).lotId, 45)
    const answer = await test.call('regeneration.list', {})
    expect(answer.season).toEqual({ year: 2026, sowing: '2026-04-15', nextSowing: '2027-04-15' })
    expect(answer.counts).toEqual({
      rescue: 1,
      regrow: 2,
      watch: 0,
      'well-stocked': 1,
      'none-left': 0,
      'not-kept': 0,
    })
    expect(answer.needs.map(({ rank, variety, state }) => [rank, variety, state])).toEqual([
      [1, 'Last handful', 'rescue'],
      [2, 'Nearly gone', 'regrow'],
      [3, 'Middling', 'regrow'],
      [4, 'Plenty', 'well-stocked'],
    ])
    const [last, nearly, middling, plenty] = answer.needs
    expect(last).toMatchObject({
      costInWords: 'almost surely lost if we wait',
      regrowingsLeft: 0,
      sow: { seeds: 4, enough: false },
    })
    expect(nearly?.cost).toBeGreaterThan(middling?.cost ?? 1)
    expect(middling).toMatchObject({ regrowingsLeft: 1, sow: { seeds: 18, enough: true } })
    expect(plenty?.costInWords).toBe('hardly any risk if we wait')
    expect(plenty?.why).toContain('By the sowing of 2027')
  })

  it('sows several lots where none alone is enough', async () => {
    const { lotId, lotNumber } = await beans('In two jars', '20 seeds')
    await tested(lotId, 45)
    const part = { lotId, on: TODAY, amount: '10 seeds', role: 'reserve' } as const
    const { newLotNumber } = await test.call('lot.split', part)
    const { needs } = await test.call('regeneration.list', {})
    const sow = needs[0]?.sow
    expect(sow).toMatchObject({ enough: true, seeds: 18 })
    expect(sow?.lots.map((lot) => lot.lotNumber).toSorted()).toEqual([lotNumber, newLotNumber])
    const need = await test.call('regeneration.get', { accessionId: needs[0]?.accessionId ?? 0 })
    expect(need.arithmetic.find(({ heading }) => heading === 'To sow')?.lines).toEqual([
      '10 plants: no lot alone is enough, several together are',
      expect.stringMatching(/^10 seeds of .* = about 7 plants$/),
      expect.stringMatching(/^8 seeds of .* = about 6 plants$/),
      expect.stringMatching(/^sown 18: 9\d times in 100 all 10 plants come up/),
    ])
  })

  it('ages a forecast of last month from the day on which it was computed', async () => {
    await tested((await beans('Middling', '40 seeds')).lotId, 45)
    const sqlite = test.collection.sqlite
    const outlook = async () => {
      const { needs } = await test.call('regeneration.list', {})
      return (
        (await test.call('regeneration.get', { accessionId: needs[0]?.accessionId ?? 0 })).outlook[4]
          ?.living ?? 0
      )
    }
    sqlite.exec('UPDATE lot_forecast SET deviates_a_year = 0.2')
    const now = await outlook()
    sqlite.exec(`UPDATE lot_forecast SET computed_on = '2024-03-14'`)
    expect(await outlook()).toBeLessThan(now)
  })

  it('calls an accession none left when no seed of it is, lists it last, and still says whom to ask', async () => {
    const gone = await beans('Gone', '20 seeds')
    await test.call('lot.discard', { lotId: gone.lotId, on: TODAY, amount: 'everything', reason: 'Mould' })
    await beans('Last handful', '6 seeds')
    await beans('Plenty', '2000 seeds')
    expect((await ranking()).at(-1)).toBe('Gone: none-left')
    const { needs } = await test.call('regeneration.list', { text: 'gone' })
    expect(needs[0]).toMatchObject({
      rank: 3,
      sow: null,
      costInWords: 'none left',
      why: 'No seed is left here.',
    })
    const { rescue } = await test.call('regeneration.get', { accessionId: needs[0]?.accessionId ?? 0 })
    expect(rescue).toEqual([
      'No seed is left to sow here.',
      expect.stringMatching(/^(Ask|We know of nobody)/),
    ])
  })

  it('finds by letters and by state, a page at a time', async () => {
    for (const name of ['Ash Pole', 'Birch Pole', 'Cedar Dwarf']) await beans(name, '6 seeds')
    const poles = await test.call('regeneration.list', { text: 'pole', limit: 1, offset: 1 })
    expect(poles).toMatchObject({ total: 2, needs: [{ variety: 'Birch Pole', rank: 2 }] })
    expect(await test.call('regeneration.list', { state: 'watch' })).toMatchObject({ total: 0, needs: [] })
  })

  it('counts what members took of late as demand, but no grow-out and nothing taken back', async () => {
    const { lotId } = await takeInOn(test, '2021-12-01', { amount: '900 seeds', harvest: '2021' })
    const out = (amount: string, more: object = {}) =>
      test.call('withdrawal.record', { person: null, on: TODAY, lines: [{ lotId, amount }], ...more })
    await out('60 seeds')
    await out('100 seeds', { purpose: 'grow-out' })
    await out('200 seeds', { on: '2022-01-05', itIsSo: ['2022-01-05'] })
    const { entryId } = await out('30 seeds')
    await test.call('entry.undo', { entryId })
    const { needs } = await test.call('regeneration.list', {})
    expect(needs[0]?.demand).toBe(20)
    expect(needs[0]?.why).toContain('members take about 20 seeds a year')
  })

  it('does not call seed gone that lies in quarantine', async () => {
    const { lotId, accessionId } = await beans('Mouldy', '300 seeds')
    await test.call('lot.quarantine', { lotId, reason: 'a smell of mould' })
    const need = await test.call('regeneration.get', { accessionId })
    const look = '300 seeds are in quarantine or kept as the reference sample: look at them first.'
    expect(need.why).toBe(`No living seed is counted here, but ${look}`)
    expect(need.rescue[0]).toBe(`No seed is free to sow here, but ${look}`)
  })

  it('knows what is held nowhere else', async () => {
    const first = await beans('Shared', '20 seeds')
    const only = async () =>
      (await test.call('regeneration.list', {})).needs.map(({ onlySource }) => onlySource)
    expect(await only()).toEqual([true])
    const { rows } = await test.call('lot.list', {})
    const { varietyId } = await test.call('lot.get', { lotId: rows[0]?.lotId ?? 0 })
    await takeIn(test, { variety: { varietyId }, amount: '20 seeds' })
    expect(await only()).toEqual([false, false])
    await test.call('lot.split', {
      lotId: first.lotId,
      on: TODAY,
      amount: '5 seeds',
      role: 'duplicate-elsewhere',
      heldBy: 'Upper Ferry library',
    })
    const { needs } = await test.call('regeneration.list', { text: first.lotNumber.slice(0, -2) })
    expect(needs[0]?.heldElsewhere).toEqual([expect.stringContaining('with Upper Ferry library')])
  })
})

describe('one need, opened', () => {
  it('shows its arithmetic line by line, the seasons to come and where the plants come from', async () => {
    const { lotId, lotNumber, accessionId } = await beans('Middling', '30 seeds')
    await tested(lotId, 45)
    const need = await test.call('regeneration.get', { accessionId })
    const lines = Object.fromEntries(need.arithmetic.map(({ heading, lines }) => [heading, lines]))
    expect(lines['To keep']?.[1]).toBe('to keep: 3 x 15 = 45 living seeds')
    expect(lines['In each lot']).toEqual([
      `${lotNumber}: 30 seeds x 89\u00a0% alive, forecast from the test of 14 Mar 2026 = 27 living`,
    ])
    expect(lines['To sow']).toEqual([
      `10 plants / (89\u00a0% alive x 0.8 emergence) = 14 seeds of ${lotNumber} on average`,
      expect.stringMatching(/^sown 18: 9\d times in 100 all 10 plants come up, with the doubt of both$/),
    ])
    expect(lines['What members took']).toEqual(['nothing so far'])
    expect(need.plantsFrom).toBe('Common bean at maintenance grade: 10 plants (selfer)')
    expect(need.outlook.map(({ year }) => year)).toEqual([2026, 2027, 2028, 2029, 2030])
    const living = need.outlook.map((season) => season.living)
    expect(living).toEqual(living.toSorted((a, b) => b - a))
    expect(need.rescue).toEqual([])
    expect(need).toMatchObject({ effectivePopulation: null, drift: ['Not grown here yet.'] })
  })

  it('advises on the last seeds and names who may have more', async () => {
    const { taken } = await test.call('intake.record', {
      donor: { newPerson: { name: 'Ilka Brandt' } },
      receivedOn: TODAY,
      gifts: [{ variety: { newVariety: { cropId: 'bean', name: 'Last handful' } }, amount: '9 seeds' }],
    })
    const { rescue } = await test.call('regeneration.get', { accessionId: taken[0]?.accessionId ?? 0 })
    expect(rescue[0]).toMatch(/^Sow 6 seeds of .*keep 3 back/)
    expect(rescue.at(-1)).toBe('Ask for seed before it is too late: Ilka Brandt (who gave it).')
    expect(rescue.join(' ')).toMatch(/damp for a day/)
  })

  it('computes the effective population of the generations grown here', async () => {
    const first = await beans('Old line', '300 seeds')
    let parentLotId = first.lotId
    for (const plantsGrown of [40, 5]) {
      const back = await test.call('return.record', {
        person: { newPerson: { name: `Grower of ${plantsGrown}` } },
        parentLotId,
        receivedOn: TODAY,
        amount: '200 seeds',
        plantsGrown,
      })
      parentLotId = back.taken.lotId
      await test.call('return.check', { lotId: parentLotId, on: TODAY, outcome: 'keep' })
    }
    const need = await test.call('regeneration.get', { accessionId: first.accessionId })
    expect(need.generations.map(({ generation, plants }) => [generation, plants])).toEqual([
      [1, 40],
      [2, 5],
    ])
    expect(need.effectivePopulation).toBeCloseTo(2 / (1 / 40 + 1 / 5), 9)
    expect(need.drift.join(' ')).toMatch(
      /behaves like 8.9 plants in each: 2 \/ \(1\/40 \+ 1\/5\).*fewer than the 10 wanted/,
    )
  })

  it('answers as the list does, whatever was written, forecast or taken back in between', async () => {
    const { lotId, accessionId } = await beans('Asked for', '90 seeds')
    await beans('Other', '30 seeds')
    const agree = async () => {
      const { needs } = await test.call('regeneration.list', {})
      for (const line of needs) {
        expect(await test.call('regeneration.get', { accessionId: line.accessionId })).toMatchObject(line)
      }
      return needs.find((line) => line.accessionId === accessionId)
    }
    const before = await agree()
    const { entryId } = await test.call('withdrawal.record', {
      person: null,
      on: TODAY,
      lines: [{ lotId, amount: '80 seeds' }],
      despite: ['too-few-left'],
      reason: 'a school garden',
    })
    expect(await agree()).toMatchObject({ rank: 1, state: 'rescue' })
    await test.refused('season-list.create', { chosen: [accessionId, 99] })
    await test.call('settings.change', { settings: { regrowingsKept: 9 } })
    expect((await agree())?.stock.keep).toBeGreaterThan(before?.stock.keep ?? 0)
    await test.call('settings.change', { settings: { regrowingsKept: 3 } })
    await test.call('entry.undo', { entryId })
    expect(await agree()).toEqual(before)
  })

  it('is refused for an accession that is not there', async () => {
    expect(await test.refused('regeneration.get', { accessionId: 77 })).toMatchObject({ code: 'not-found' })
  })
})

describe('season lists', () => {
  it('keep what was chosen, and tell later what became of it', async () => {
    const sown = await beans('Sown', '24 seeds')
    await beans('Left', '6 seeds')
    await beans('Plenty', '900 seeds')
    const { listId } = await test.call('season-list.create', {
      chosen: [sown.accessionId],
      note: 'Two growers',
    })
    const lists = await test.call('season-list.list', {})
    expect(lists.lists).toMatchObject([{ listId, season: 2026, on: TODAY, accessions: 2, chosen: 1 }])
    await test.call('withdrawal.record', {
      person: { newPerson: { name: 'Teodor Ash' } },
      on: TODAY,
      purpose: 'grow-out',
      lines: [{ lotId: sown.lotId, amount: '14 seeds' }],
      despite: ['too-few-left'],
      reason: 'season list',
    })
    await test.call('return.record', {
      person: { newPerson: { name: 'Teodor Ash the grower' } },
      parentLotId: sown.lotId,
      receivedOn: TODAY,
      amount: '400 seeds',
    })
    const { lines } = await test.call('season-list.get', { listId })
    expect(
      lines.map(({ variety, chosen, stateThen, stateNow }) => [variety, chosen, stateThen, stateNow]),
    ).toEqual([
      ['Sown', true, 'regrow', 'well-stocked'],
      ['Left', false, 'rescue', 'rescue'],
    ])
    expect(lines[0]?.became.join('; ')).toMatch(/^14 seeds went out to be grown; 400 seeds came back as/)
    expect(lines[1]?.became).toEqual([])
  })

  it('can be taken back, and refuse an accession that is not there', async () => {
    const { accessionId } = await beans('Sown', '20 seeds')
    const { entryId, listId } = await test.call('season-list.create', { chosen: [accessionId] })
    await test.call('entry.undo', { entryId })
    expect(await test.call('season-list.list', {})).toEqual({ lists: [] })
    expect(await test.refused('season-list.get', { listId })).toMatchObject({ code: 'not-found' })
    expect(await test.refused('season-list.create', { chosen: [accessionId, 99] })).toMatchObject({
      code: 'not-found',
      field: 'chosen',
    })
  })
})
