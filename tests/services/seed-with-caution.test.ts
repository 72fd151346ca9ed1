import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Caution } from '../../db/contract/fields.ts'
import { cautionTold } from '../../db/domain/cautions/caution-text.ts'
import { CAUTION_RULES } from '../../db/domain/cautions/inheritance.ts'
import { saidInEnglish } from '../builders/in-english.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const SUBSTANCE = 'thiram'
const REASON = 'told her, gloves, written on the packet'
const grower = { newPerson: { name: 'Isolde Quern' } }

/** Whether what is grown from seed with a caution has it too. */
const isOfThePlant = (caution: Caution) => ['has-it', 'until-checked'].includes(CAUTION_RULES[caution].return)

/** A gift with a caution that was checked and released. */
async function released(caution: Caution) {
  const taken = await takeIn(test, { cautions: [caution], cautionNote: SUBSTANCE, amount: '900 g' })
  await test.call('lot.release', { lotId: taken.lotId, checked: 'looked at' })
  return taken
}
const cautionsOf = async (lotId: number) =>
  (await test.call('lot.get', { lotId })).cautions.map(({ caution }) => caution)
const handOut = (lotId: number) => ({
  person: null,
  on: TODAY,
  lines: [{ lotId, amount: '5 seeds' }],
})
const bringBack = (parentLotId: number, more: { cautions?: Caution[]; cautionNote?: string } = {}) =>
  test.call('return.record', {
    person: grower,
    parentLotId,
    receivedOn: TODAY,
    harvest: '2025',
    amount: '800 g',
    ...more,
  })

/** What a hand-out of a lot asks about its seed. */
async function askedOf(lotId: number): Promise<string[]> {
  const { lines } = await test.call('withdrawal.preview', { lines: [{ lotId, amount: '5 seeds' }] })
  return lines.flatMap(({ cautions }) => cautions.map(({ despite }) => despite))
}

describe.each(Caution.options)('seed with the caution %s, once released', (caution) => {
  it('goes out only with a reason, from any part of it, and the ledger tells it', async () => {
    const { lotId } = await released(caution)
    const part = { lotId, on: TODAY, amount: '300 g', role: 'working' } as const
    const { newLotId } = await test.call('lot.split', part)
    for (const each of [lotId, newLotId]) {
      expect(await askedOf(each)).toEqual([caution])
      expect((await test.refused('withdrawal.record', handOut(each))).choices).toEqual([caution])
      await test.call('withdrawal.record', { ...handOut(each), despite: [caution], reason: REASON })
      const { ledger } = await test.call('lot.get', { lotId: each })
      expect(ledger.some(({ overridden }) => overridden.endsWith(`: ${REASON}`))).toBe(true)
    }
  })

  it('is told in tables and offers, and never listed for everybody without its words, treated or with pests not at all', async () => {
    const { lotId, accessionNumber } = await released(caution)
    const { csv } = await test.call('lot.export', { lotIds: [lotId] })
    expect(csv).toContain(saidInEnglish(cautionTold(caution, SUBSTANCE)))
    expect((await test.call('withdrawal.list-lots', { text: 'Miller' })).lots[0]?.why).not.toMatch(/^harvest/)
    const html = await test.call('catalogue.export', {}).then(
      (page) => page.html,
      () => '',
    )
    const listed = html.includes(accessionNumber)
    expect(listed).toBe(caution === 'toxic' || caution === 'possible-cross')
    expect(html.includes(saidInEnglish(cautionTold(caution, SUBSTANCE)))).toBe(listed)
  })

  it('gives a harvest that waits to be checked, and inherits only what its plant has', async () => {
    const { lotId } = await released(caution)
    const { taken } = await bringBack(lotId)
    expect(taken.quarantined).toBe(true)
    expect(taken.warnings.join()).toContain('In quarantine until it is checked')
    const { quarantineReason } = await test.call('lot.get', { lotId: taken.lotId })
    if (caution === 'treated') expect(quarantineReason).toContain(SUBSTANCE)
    await test.call('lot.release', { lotId: taken.lotId, checked: 'its harvest' })
    const { newLotId } = await test.call('lot.split', {
      lotId: taken.lotId,
      on: TODAY,
      amount: '100 g',
      role: 'working',
    })
    for (const each of [taken.lotId, newLotId]) {
      expect(await cautionsOf(each)).toEqual(isOfThePlant(caution) ? [caution] : [])
    }
    const { taken: grandchild } = await bringBack(taken.lotId)
    expect(grandchild.quarantined).toBe(isOfThePlant(caution))
  })

  it('is asked about when a harvest comes back, and holds for that harvest', async () => {
    const { lotId } = await takeIn(test)
    const { taken } = await bringBack(lotId, { cautions: [caution], cautionNote: SUBSTANCE })
    expect(taken.quarantined).toBe(true)
    await test.call('lot.release', { lotId: taken.lotId, checked: 'looked at' })
    expect(await askedOf(taken.lotId)).toEqual([caution])
    expect(await cautionsOf(lotId)).toEqual([])
  })
})

it('keeps treated seed treated where it is poured into a harvest, until that is taken back', async () => {
  const { lotId } = await released('treated')
  const { taken } = await bringBack(lotId)
  await test.call('lot.release', { lotId: taken.lotId, checked: 'its harvest' })
  const { entryId } = await test.call('lot.merge', { intoLotId: taken.lotId, fromLotIds: [lotId], on: TODAY })
  expect(await cautionsOf(taken.lotId)).toEqual(['treated'])
  await test.call('entry.undo', { entryId })
  expect(await cautionsOf(taken.lotId)).toEqual([])
})

it('offers a harvest before the treated seed that it was grown from', async () => {
  const { lotId } = await released('treated')
  const { taken } = await bringBack(lotId)
  await test.call('lot.release', { lotId: taken.lotId, checked: 'its harvest' })
  const { lots } = await test.call('withdrawal.list-lots', { text: 'Miller' })
  expect(lots.map((lot) => lot.lotId)).toEqual([taken.lotId, lotId])
  const { html } = await test.call('catalogue.export', {})
  expect(html).not.toContain('TREATED')
})

it('lets no harvest into working stock while seed of its accession is in quarantine', async () => {
  const { lotId } = await takeIn(test)
  await test.call('lot.quarantine', { lotId, reason: 'mould on the jar' })
  const { taken } = await bringBack(lotId)
  expect(taken.quarantined).toBe(true)
  expect((await test.refused('withdrawal.record', handOut(taken.lotId))).code).toBe('in-quarantine')
})
