import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

const few = (more: Parameters<typeof takeIn>[1] = {}) => takeIn(test, { amount: '6 seeds', ...more })
const decide = (accessionId: number, policy: 'keep' | 'pass-on' | 'closed', reason = 'said so') =>
  test.call('accession.decide-keeping', { accessionId, breeding: 'unknown', policy, on: TODAY, reason })
const counts = async () => {
  const { counts: listed } = await test.call('regeneration.list', {})
  const { counts: shelved } = await test.call('accession.list-states', {})
  expect(shelved).toEqual(listed)
  return listed
}

describe('what is not kept', () => {
  it('is no rescue any more, is found as such, and is one again when that is taken back', async () => {
    const { accessionId, lotId } = await few()
    expect(await counts()).toMatchObject({ rescue: 1, 'not-kept': 0 })
    const { entryId, stock } = await decide(accessionId, 'pass-on')
    expect(stock).toMatchObject({ state: 'not-kept', keep: 0 })
    expect(await counts()).toMatchObject({ rescue: 0, 'not-kept': 1 })
    const { rows } = await test.call('lot.list', { state: 'not-kept' })
    expect(rows.map((row) => row.lotId)).toEqual([lotId])
    await test.call('entry.undo', { entryId })
    expect(await counts()).toMatchObject({ rescue: 1, 'not-kept': 0 })
  })

  it('is handed out to the last seed without a word about too few', async () => {
    const { accessionId, lotId } = await few()
    await decide(accessionId, 'pass-on')
    const lines = [{ lotId, amount: '6 seeds' }]
    const { lines: previewed } = await test.call('withdrawal.preview', { lines })
    expect(previewed[0]?.cautions).toEqual([])
  })

  it('goes on no season list and into no plan, not even where it was asked for', async () => {
    const { accessionId } = await few()
    await decide(accessionId, 'pass-on')
    expect(await test.refused('season-list.create', { chosen: [accessionId] })).toMatchObject({
      code: 'not-kept',
    })
    await test.call('site.change', { name: 'Wall bed', growerId: null, areaM2: 50, mostVarieties: 9 })
    const need = await test.call('regeneration.get', { accessionId })
    expect([need.rescue, need.outlook]).toEqual([[], []])
    const plan = await test.call('season-plan.preview', { accessionIds: [accessionId], seconds: 0 })
    expect(plan.lines).toEqual([])
    expect(plan.left.map(({ why }) => why)).toEqual([
      'The library does not keep it: nothing has to be regrown.',
    ])
  })
})

describe('what is closed', () => {
  it('needs a reason, is not offered nor tested, keeps its history, and opens again', async () => {
    const { accessionId, lotId } = await takeIn(test, { amount: '900 seeds', harvest: '2019' })
    const offered = async () => (await test.call('withdrawal.list-lots', { text: '' })).lots.length
    const due = async () => (await test.call('germination.list-due', {})).total
    expect([await offered(), await due()]).toEqual([1, 1])
    expect(
      await test.refused('accession.decide-keeping', {
        accessionId,
        breeding: 'unknown',
        policy: 'closed',
        on: TODAY,
      }),
    ).toMatchObject({ code: 'reason-missing', field: 'reason' })
    await decide(accessionId, 'closed', 'the same as another')
    expect([await offered(), await due()]).toEqual([0, 0])
    const lines = [{ lotId, amount: '6 seeds' }]
    const visit = { person: null, on: TODAY, purpose: 'to-grow', lines } as const
    expect(await test.refused('withdrawal.record', visit)).toMatchObject({ choices: ['closed'] })
    await expect(test.call('catalogue.print', {})).rejects.toMatchObject({
      problem: { code: 'nothing-to-print' },
    })
    const lot = await test.call('lot.get', { lotId })
    expect(lot.keeping).toMatchObject({ policy: 'closed', on: TODAY, reason: 'the same as another' })
    expect(lot.ledger).toHaveLength(1)
    await decide(accessionId, 'keep')
    expect([await offered(), await due()]).toEqual([1, 1])
  })
})

describe('a first-generation hybrid', () => {
  it('is passed on unless the keeper says otherwise at the table', async () => {
    const usual = await few({ breeding: 'first-generation-hybrid' })
    const kept = await takeIn(test, {
      variety: { newVariety: { cropId: 'bean', name: 'Kept all the same' } },
      amount: '6 seeds',
      breeding: 'first-generation-hybrid',
      policy: 'keep',
    })
    const policyOf = async (lotId: number) => (await test.call('lot.get', { lotId })).keeping.policy
    expect([await policyOf(usual.lotId), await policyOf(kept.lotId)]).toEqual(['pass-on', 'keep'])
  })

  it('says so in the passport, beside a landrace, and nothing of seed of which nobody knows', async () => {
    await few({ breeding: 'first-generation-hybrid' })
    await few({ variety: { newVariety: { cropId: 'bean', name: 'Old one' } }, breeding: 'landrace' })
    await few({ variety: { newVariety: { cropId: 'bean', name: 'Any' } } })
    const { csv } = await test.call('passport.export', { people: true, places: true })
    const [head = '', ...rows] = csv.trim().split(/\r?\n/)
    const at = head.split(',').indexOf('SAMPSTAT')
    expect(rows.map((row) => row.split(',')[at])).toEqual(['412', '300', ''])
  })
})
