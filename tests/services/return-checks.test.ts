import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CallInput } from '../../db/contract/contract.ts'
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

const grower = { newPerson: { name: 'Isolde Quern' } }
type Answers = Partial<CallInput<'return.record'>>

/** Squashes, which cross, of the library's own seed. */
const squash = () =>
  takeIn(test, {
    variety: { newVariety: { cropId: 'squash-pepo', name: 'Tolver Crookneck' } },
    amount: '900 g',
  })

const bringBack = (parentLotId: number, answers: Answers = {}) =>
  test.call('return.record', {
    person: grower,
    parentLotId,
    receivedOn: TODAY,
    harvest: '2025',
    amount: '800 g',
    plantsGrown: 60,
    ...answers,
  })
const check = (lotId: number, more: Omit<CallInput<'return.check'>, 'key' | 'lotId' | 'on'>) =>
  test.call('return.check', { lotId, on: TODAY, ...more })
const get = (lotId: number) => test.call('lot.get', { lotId })
const kindsOf = async (lotId: number) => (await get(lotId)).cautions.map(({ caution }) => caution)
const toCheck = async () => (await test.call('return.list-to-check', {})).returns

describe('a return at the table', () => {
  it('is offered at once where its crop sets seed by itself and came from enough plants', async () => {
    const { lotId } = await takeIn(test)
    const { taken } = await bringBack(lotId)
    expect(taken.quarantined).toBe(false)
    expect(await toCheck()).toEqual([])
    expect(await test.call('return.preview', { parentLotId: lotId, plantsGrown: 60 })).toEqual({
      questions: ['plants', 'odd'],
      waits: [],
    })
  })

  it('waits where its crop crosses, is not offered, and counts as a possible cross while nobody knows', async () => {
    const { lotId } = await squash()
    const told = await test.call('return.preview', { parentLotId: lotId })
    expect(told.questions).toEqual(['plants', 'near', 'odd'])
    const { taken } = await bringBack(lotId)
    expect(taken.quarantined).toBe(true)
    expect((await get(taken.lotId)).quarantineReason).toBe(told.waits.join(' '))
    expect(await kindsOf(taken.lotId)).toEqual(['possible-cross'])
    const { lots } = await test.call('withdrawal.list-lots', { text: 'Tolver' })
    expect(lots.map((lot) => lot.lotId)).toEqual([lotId])
  })

  it('tells what it was that waits, with the answers, and who brought it', async () => {
    const { lotId } = await squash()
    const { taken } = await bringBack(lotId, {
      plantsGrown: 3,
      floweredNear: 'kept-apart',
      nearNote: 'flowers tied shut',
      odd: 'one fruit was round',
    })
    expect(await toCheck()).toMatchObject([
      {
        lotId: taken.lotId,
        person: 'Isolde Quern',
        on: TODAY,
        answers: ['Saved from 3 plants.', 'It was kept apart: flowers tied shut', 'Odd: one fruit was round'],
        checks: [],
      },
    ])
    expect((await toCheck())[0]?.reason).toMatch(/kept apart.*3 plants.*one fruit was round/)
    expect(await kindsOf(taken.lotId)).toEqual([])
  })

  it('waits by the keeper’s rule, and for few plants by the goal of its accession', async () => {
    const { lotId, accessionId } = await takeIn(test)
    expect((await bringBack(lotId, { plantsGrown: 10 })).taken.quarantined).toBe(false)
    await test.call('accession.change-policy', { accessionId, plantsToKeep: 11 })
    expect((await bringBack(lotId, { plantsGrown: 10 })).taken.quarantined).toBe(true)
    const other = await takeIn(test)
    await test.call('settings.change', { settings: { checkReturns: 'always' } })
    expect((await bringBack(other.lotId)).taken.quarantined).toBe(true)
  })

  it('leaves nothing behind when it is taken back', async () => {
    const { lotId } = await squash()
    const { entryId } = await bringBack(lotId)
    await test.call('entry.undo', { entryId })
    expect(await toCheck()).toEqual([])
  })
})

describe('the check of a return', () => {
  const FOUND = { dry: 'yes', clean: 'yes', trueToType: 'yes', comparedWith: 'reference-sample' } as const

  it('keeps it: it is offered, no possible cross any more, and waits again when that is undone', async () => {
    const { taken } = await bringBack((await squash()).lotId)
    const { entryId, said } = await check(taken.lotId, { ...FOUND, outcome: 'keep' })
    expect(said).toBe(`Checked ${taken.lotNumber}: kept`)
    expect(await get(taken.lotId)).toMatchObject({ quarantined: false, cautions: [] })
    expect((await get(taken.lotId)).cameBack?.checks).toEqual([
      'Checked 14 Mar 2026, beside the reference sample: dry, clean and true to type; kept.',
    ])
    expect(await toCheck()).toEqual([])
    await test.call('entry.undo', { entryId })
    expect(await get(taken.lotId)).toMatchObject({
      quarantined: true,
      cautions: [{ caution: 'possible-cross' }],
    })
    expect((await toCheck())[0]?.checks).toEqual([])
  })

  it('passes it on with its words: at the table, on the label and on the list for everybody', async () => {
    const { lotId } = await squash()
    const { taken } = await bringBack(lotId, { floweredNear: 'nothing' })
    await check(taken.lotId, {
      ...FOUND,
      trueToType: 'no',
      outcome: 'pass-on',
      note: 'round fruit in one packet',
    })
    expect(await kindsOf(taken.lotId)).toEqual(['possible-cross'])
    const refused = await test.refused('withdrawal.record', {
      person: null,
      on: TODAY,
      lines: [{ lotId: taken.lotId, amount: '5 seeds' }],
    })
    expect(refused.choices).toEqual(['possible-cross'])
    const label = await test.call('label.print', {
      labels: [{ lotId: taken.lotId, copies: 1, contents: '' }],
      sheet: 'packet-a4',
    })
    expect(await textOf(label)).toContain('May not be true to type')
    expect((await test.call('catalogue.export', {})).html).not.toContain('May not be true to type')
    await test.call('lot.discard', { lotId, on: TODAY, amount: 'everything', reason: 'old' })
    expect((await test.call('catalogue.export', {})).html).toContain('May not be true to type')
  })

  it('lets it wait on, with what was found', async () => {
    const { taken } = await bringBack((await squash()).lotId)
    await check(taken.lotId, { dry: 'no', outcome: 'wait', note: 'on the rack' })
    expect((await toCheck())[0]?.checks).toEqual([
      'Checked 14 Mar 2026, with nothing beside it: not dry, cleanness not looked at and type not known; waits on: on the rack',
    ])
    expect(await kindsOf(taken.lotId)).toEqual(['possible-cross'])
  })

  it('asks once about seed that goes on though it was found wanting', async () => {
    const { taken } = await bringBack((await squash()).lotId)
    const asked = await test.refused('return.check', {
      lotId: taken.lotId,
      on: TODAY,
      dry: 'no',
      outcome: 'keep',
    })
    expect(asked).toMatchObject({ code: 'odd-but-possible', field: 'outcome' })
    await check(taken.lotId, { dry: 'no', outcome: 'keep', itIsSo: [asked.asks ?? ''] })
    expect((await get(taken.lotId)).quarantined).toBe(false)
  })

  it('is of a part that was split off as well, each for itself', async () => {
    const { taken } = await bringBack((await squash()).lotId, { plantsGrown: 3 })
    const part = { on: TODAY, role: 'reserve', amount: '100 g' } as const
    const { newLotId } = await test.call('lot.split', { lotId: taken.lotId, ...part })
    const { newLotId: partOfPart } = await test.call('lot.split', { lotId: newLotId, ...part, amount: '9 g' })
    expect((await toCheck()).map(({ lotId }) => lotId)).toEqual([taken.lotId, newLotId, partOfPart])
    expect((await get(partOfPart)).cameBack?.answers).toContain('Saved from 3 plants.')
    await check(partOfPart, { ...FOUND, outcome: 'keep' })
    expect((await toCheck()).map(({ lotId }) => lotId)).toEqual([taken.lotId, newLotId])
    expect(await kindsOf(partOfPart)).toEqual([])
    expect(await kindsOf(newLotId)).toEqual(['possible-cross'])
    await check(taken.lotId, { ...FOUND, outcome: 'keep' })
    expect(await kindsOf(newLotId)).toEqual([])
  })

  it('is of returns only', async () => {
    const { lotId } = await takeIn(test)
    expect((await get(lotId)).cameBack).toBeNull()
    expect(await test.refused('return.check', { lotId, on: TODAY, outcome: 'keep' })).toMatchObject({
      code: 'not-a-return',
      field: 'lotId',
    })
  })
})
