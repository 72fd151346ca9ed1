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

type Kind = 'room' | 'fridge' | 'freezer' | 'box'
const place = async (name: string, kind: Kind, parentId: number | null = null) =>
  (await test.call('place.create', { name, kind, parentId })).placeId
const walkEvery = (placeId: number, roundDays: number | null) =>
  test.call('place.change-terms', { placeId, aim: 'short-term', roundDays })
const due = () => test.call('round.list-due', {})
const walk = (placeId: number, checks: object[], more: object = {}) =>
  test.call('round.record', { on: TODAY, places: [{ placeId, checks, ...more }] as never })
const lot = async (placeId: number) => await takeIn(test, { placeId })
const reasonOf = async (lotId: number) => (await test.call('lot.get', { lotId })).quarantineReason

describe('what a round goes to', () => {
  it('is each place with a rhythm, the one due first first, with the lots that lie nearest to it', async () => {
    const room = await place('Back room', 'room')
    const fridge = await place('Fridge', 'fridge', room)
    const box = await place('Box', 'box', fridge)
    const [inRoom, inBox] = [await lot(room), await lot(box)]
    expect((await due()).places).toEqual([])
    await walkEvery(room, 30)
    expect((await due()).places.map(({ path, lots }) => [path, lots.length])).toEqual([['Back room', 2]])
    await walkEvery(fridge, 7)
    await walk(room, [{ look: 'pests', outcome: 'fine' }])
    const { places, toWalk, cautions } = await due()
    expect(toWalk).toBe(1)
    expect(cautions.join(' ')).toContain('moist seed')
    expect(places).toMatchObject(
      [
        { path: 'Back room / Fridge', lastOn: null, due: { on: TODAY, when: 'today' }, lots: [inBox] },
        { path: 'Back room', lastOn: TODAY, due: { on: '2026-04-13', when: 'later' }, lots: [inRoom] },
      ].map(({ lots, ...stop }) => ({ ...stop, lots: lots.map(({ lotId }) => ({ lotId })) })),
    )
  })

  it('tells the outermost places with lots that no round goes to; such a place may be walked to all the same', async () => {
    const room = await place('Back room', 'room')
    const fridge = await place('Fridge', 'fridge', room)
    await place('Empty room', 'room')
    const unvisited = async () => (await due()).unvisited.map(({ path }) => path)
    expect(await unvisited()).toEqual([])
    await lot(fridge)
    expect(await unvisited()).toEqual(['Back room'])
    await walk(fridge, [{ look: 'seals', outcome: 'fine' }])
    expect(await due()).toMatchObject({ places: [], toWalk: 0 })
    await walkEvery(fridge, 30)
    expect(await unvisited()).toEqual([])
    await lot(room)
    expect(await unvisited()).toEqual(['Back room'])
    await walkEvery(room, 30)
    expect(await unvisited()).toEqual([])
  })

  it('looks at drying gel where something is closed in airtight', async () => {
    const room = await place('Back room', 'room')
    await walkEvery(room, 30)
    const { lotId } = await lot(room)
    const looks = async () => (await due()).places[0]?.looks.map(({ look }) => look)
    expect(await looks()).toEqual(['pests', 'dampness', 'reading'])
    const { entryId } = await test.call('lot.change-container', {
      lotIds: [lotId],
      kind: 'jar',
      airtight: true,
      pestProof: true,
      since: TODAY,
    })
    expect(await looks()).toEqual(['pests', 'seals', 'gel', 'dampness', 'reading'])
    expect((await due()).cautions.join(' ')).toContain('cobalt chloride')
    await test.call('entry.undo', { entryId })
    expect(await looks()).not.toContain('gel')
  })
})

describe('a round that was walked', () => {
  it('puts lots into quarantine with what was found, writes the reading down, and is taken back as one', async () => {
    const room = await place('Back room', 'room')
    await walkEvery(room, 30)
    const [sick, well] = [await lot(room), await lot(room)]
    const written = await walk(
      room,
      [
        {
          look: 'pests',
          outcome: 'found',
          note: 'weevils in the envelope',
          lotIds: [sick.lotId],
          quarantine: true,
        },
        { look: 'dampness', outcome: 'fine' },
      ],
      { reading: { time: '09:00', temperature: 30, humidity: 70 } },
    )
    expect(written).toMatchObject({ found: 2, quarantined: 1, undoable: true })
    expect(written.said).toBe(
      'Checked 1 place; pests in Back room and readings beyond the limits in Back room; 1 lot in quarantine',
    )
    expect(await reasonOf(sick.lotId)).toBe('weevils in the envelope')
    expect(await reasonOf(well.lotId)).toBe('')
    expect((await test.call('storage.get', { placeId: room })).sum?.highest).toBe(30)
    const finding = { look: 'pests', note: 'weevils in the envelope', lots: [{ lotId: sick.lotId }] }
    expect((await test.call('round.list', { placeId: room })).rounds).toMatchObject([
      { on: TODAY, places: 1, findings: [finding, { look: 'reading', note: 'too warm and too damp' }] },
    ])
    expect((await test.call('lot.get-storage', { lotId: sick.lotId })).findings).toMatchObject([
      { on: TODAY, place: 'Back room', words: 'pests: weevils in the envelope' },
    ])
    await test.call('entry.undo', { entryId: written.entryId })
    expect(await reasonOf(sick.lotId)).toBe('')
    expect((await test.call('round.list', {})).total).toBe(0)
    expect((await test.call('lot.get-storage', { lotId: sick.lotId })).findings).toEqual([])
    expect((await test.call('storage.get', { placeId: room })).sum).toBeNull()
    expect((await due()).places[0]).toMatchObject({ lastOn: null })
  })

  it('leaves a lot in quarantine the reason it is there for, also when it is taken back', async () => {
    const room = await place('Back room', 'room')
    const { lotId } = await lot(room)
    await test.call('lot.quarantine', { lotId, reason: 'mixed up' })
    const found = { look: 'pests', outcome: 'found', note: 'moths', lotIds: [lotId], quarantine: true }
    const { quarantined, entryId } = await walk(room, [found])
    expect([quarantined, await reasonOf(lotId)]).toEqual([0, 'mixed up'])
    await test.call('entry.undo', { entryId })
    expect(await reasonOf(lotId)).toBe('mixed up')
  })

  it.each([
    ['a finding without words', { look: 'pests', outcome: 'found' }, 'places.0.checks.0.note'],
    [
      'quarantine for no lot',
      { look: 'pests', outcome: 'found', note: 'moths', quarantine: true },
      'places.0.checks.0.lotIds',
    ],
    ['a lot where all is well', { look: 'gel', outcome: 'fine', lotIds: [1] }, 'places.0.checks.0.outcome'],
    [
      'a lot that lies elsewhere',
      { look: 'gel', outcome: 'found', note: 'pink', lotIds: [1] },
      'places.0.checks.0.lotIds.0',
    ],
  ])('is refused with %s, and nothing of it is written', async (_, check, field) => {
    const [room, loft] = [await place('Back room', 'room'), await place('Loft', 'room')]
    expect((await lot(loft)).lotId).toBe(1)
    const places = [{ placeId: room, checks: [check] }] as never
    expect(await test.refused('round.record', { on: TODAY, places })).toMatchObject({ field })
    expect((await test.call('round.list', {})).total).toBe(0)
  })

  it('is refused with nothing looked at, with one place twice, and on a day that has not come', async () => {
    const placeId = await place('Back room', 'room')
    const fine = { placeId, checks: [{ look: 'pests' as const, outcome: 'fine' as const }] }
    const refused = async (on: string, places: object[]) =>
      (await test.refused('round.record', { on, places: places as never })).field
    expect(await refused(TODAY, [{ placeId }])).toBe('places.0.checks')
    expect(await refused(TODAY, [fine, fine])).toBe('places.1.placeId')
    expect(await refused(TODAY, [{ placeId, checks: [...fine.checks, ...fine.checks] }])).toBe(
      'places.0.checks.1.look',
    )
    expect(await refused('2026-03-15', [fine])).toBe('on')
  })
})

describe('the round sheet', () => {
  it('is refused until a rhythm is set, saying where to set it', async () => {
    await place('Back room', 'room')
    expect((await test.refused('round.print', {})).todo).toContain('What it is meant for')
  })

  it('is made of the places asked for', async () => {
    const [room, loft] = [await place('Back room', 'room'), await place('Loft', 'room')]
    await walkEvery(room, 30)
    expect(await test.call('round.print', {})).toMatchObject({
      pages: 1,
      warnings: [],
      fileName: `round-sheet-${TODAY}.pdf`,
    })
    expect((await test.refused('round.print', { placeIds: [room, loft] })).field).toBe('placeIds')
  })
})
