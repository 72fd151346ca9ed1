import { afterEach, beforeEach, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const TERMS = {
  contact: 'the caretaker, Tuesdays',
  agreement: 'letter of the spring, in the blue folder',
  agreementEnds: '2026-05-01',
  conditions: 'in a freezer, in a glass jar',
  nextLook: '2027-03-01',
}
const HOLDER = 'Marrow Bridge seed circle'

async function aDuplicate(terms: Partial<typeof TERMS> | null = TERMS) {
  const { lotId } = await takeIn(test)
  const { newLotId } = await test.call('lot.split', {
    lotId,
    on: TODAY,
    amount: '100 seeds',
    role: 'duplicate-elsewhere',
    heldBy: HOLDER,
    terms,
  })
  return { lotId, duplicateId: newLotId }
}

const aPlace = async () =>
  (await test.call('place.create', { name: 'Fridge', kind: 'fridge', parentId: null })).placeId
const listed = async () => (await test.call('duplicate.list', {})).duplicates

it('shows a duplicate with its holder, the terms given as it was made, its last test and what is due', async () => {
  const { duplicateId } = await aDuplicate()
  await test.call('germination.record', { lotId: duplicateId, on: TODAY, tested: 50, sprouted: 45 })
  expect(await test.call('duplicate.list', {})).toMatchObject({
    due: 1,
    duplicates: [
      {
        lotId: duplicateId,
        holder: HOLDER,
        since: TODAY,
        ...TERMS,
        lastTest: { on: TODAY, tested: 50, sprouted: 45 },
        due: [{ matter: 'agreement-ends' }],
      },
    ],
  })
})

it('has no terms where none were noted, and then those noted last, until they are taken back', async () => {
  const { duplicateId } = await aDuplicate(null)
  expect(await listed()).toMatchObject([{ contact: '', agreement: '', agreementEnds: null, due: [] }])
  await test.call('duplicate.change', { lotId: duplicateId, ...TERMS })
  const { entryId } = await test.call('duplicate.change', {
    lotId: duplicateId,
    contact: 'the new caretaker',
  })
  expect(await listed()).toMatchObject([{ contact: 'the new caretaker', agreementEnds: null }])
  await test.call('entry.undo', { entryId })
  expect(await listed()).toMatchObject([TERMS])
})

it('brings a duplicate home into a place, keeps who held it, and gives it back when that is undone', async () => {
  const { duplicateId } = await aDuplicate()
  test.goTo('2026-06-20')
  const home = { lotId: duplicateId, on: '2026-06-18', role: 'reserve' as const, placeId: await aPlace() }
  const { entryId, said } = await test.call('duplicate.bring-home', home)
  expect(said).not.toContain(HOLDER)
  const record = await test.call('lot.get', { lotId: duplicateId })
  expect(record).toMatchObject({
    role: 'reserve',
    place: 'Fridge',
    heldBy: '',
    heldSince: '',
    heldBefore: [{ holder: HOLDER, since: TODAY, until: '2026-06-18' }],
  })
  expect(await listed()).toEqual([])
  expect((await test.refused('duplicate.bring-home', home)).code).toBe('wrong-role')
  await test.call('entry.undo', { entryId })
  expect(await test.call('lot.get', { lotId: duplicateId })).toMatchObject({
    role: 'duplicate-elsewhere',
    place: '',
    heldBy: HOLDER,
    heldSince: TODAY,
    heldBefore: [],
  })
  expect(await listed()).toMatchObject([{ lotId: duplicateId, ...TERMS }])
})

it('does not come home before it went, nor to no place, nor does a lot that never left have terms', async () => {
  const { lotId, duplicateId } = await aDuplicate()
  const home = { lotId: duplicateId, on: TODAY, role: 'working' as const, placeId: await aPlace() }
  test.goTo('2026-06-20')
  const { lotId: later } = await takeIn(test, {
    variety: { newVariety: { cropId: 'pea', name: 'Ferry Peas' } },
  })
  expect((await test.refused('duplicate.bring-home', { ...home, on: '2026-03-01' })).code).toBe(
    'before-its-lot',
  )
  expect(await test.refused('duplicate.bring-home', { ...home, placeId: 99 })).toMatchObject({
    field: 'placeId',
  })
  expect(await test.refused('duplicate.change', { lotId: later, ...TERMS })).toMatchObject({
    code: 'wrong-role',
  })
  const move = { lotIds: [lotId, duplicateId], placeId: home.placeId, on: '2026-06-20' }
  expect(await test.refused('lot.move', move)).toMatchObject({ code: 'wrong-role', field: 'lotIds.1' })
  const split = { lotId, on: TODAY, amount: '20 seeds', role: 'reserve' as const, terms: TERMS }
  expect(await test.refused('lot.split', split)).toMatchObject({ code: 'wrong-role', field: 'terms' })
})
