import { afterEach, beforeEach, expect, it } from 'vitest'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const donor = { newPerson: { name: 'Orsolya Venn' } }
const later = (steps: ('drying' | 'freezing')[] = ['drying']) =>
  test.call('gift.offer', {
    donor,
    offeredOn: TODAY,
    gift: aGift(),
    decision: { kind: 'later', waitsFor: steps.map((step) => ({ step, due: '2026-03-10' })) },
  })
const gifts = async () => (await test.call('gift.list', {})).gifts

it('keeps a gift for later without a number, with what it waits for and whether that is late', async () => {
  const { giftId } = await later()
  expect(await gifts()).toMatchObject([
    {
      giftId,
      donor: 'Orsolya Venn',
      variety: 'Miller’s Pole',
      state: 'offered',
      waitsFor: [{ step: 'drying', late: true }],
    },
  ])
  expect((await test.call('collection.get', {})).accessions).toBe(0)
})

it('takes it in once its steps are done, as it was offered', async () => {
  const { giftId } = await later()
  const early = await test.refused('gift.accept', { giftId, receivedOn: TODAY })
  expect(early).toMatchObject({ code: 'caution', sentence: 'Miller’s Pole still waits for drying.' })
  const { gift } = await test.call('gift.record-step', { giftId, step: 'drying', done: true, on: TODAY })
  expect(gift).toMatchObject({ waitsFor: [], done: [{ step: 'drying', on: TODAY }] })
  const { taken } = await test.call('gift.accept', { giftId, receivedOn: TODAY })
  expect(taken.lotNumber).toBe('HL26-0001-A')
  expect(await gifts()).toMatchObject([
    { state: 'accepted', accessionNumber: 'HL26-0001', lotId: taken.lotId },
  ])
  expect((await test.refused('gift.accept', { giftId, receivedOn: TODAY })).sentence).toContain(
    'taken in already',
  )
})

it('may be taken in with steps open for a reason', async () => {
  const { giftId } = await later(['freezing'])
  await test.call('gift.accept', { giftId, receivedOn: TODAY, reason: 'the freezer is full; kept apart' })
})

it('waits again when taking it in is taken back', async () => {
  const { giftId } = await later([])
  const { entryId } = await test.call('gift.accept', { giftId, receivedOn: TODAY })
  await test.call('entry.undo', { entryId })
  expect(await gifts()).toMatchObject([{ giftId, state: 'offered', accessionNumber: '' }])
})

it('keeps why a gift was declined, at the table or later', async () => {
  const { giftId } = await test.call('gift.offer', {
    donor,
    offeredOn: TODAY,
    gift: aGift({ cautions: ['treated'] }),
    decision: { kind: 'decline', reason: 'treated with something nobody can name' },
  })
  const waiting = await later()
  await test.call('gift.decline', { giftId: waiting.giftId, reason: 'mould' })
  const { gifts: declined } = await test.call('gift.list', { state: 'declined' })
  expect(declined.map((gift) => [gift.giftId, gift.reason])).toEqual([
    [giftId, 'treated with something nobody can name'],
    [waiting.giftId, 'mould'],
  ])
})

it('decides each gift of one visit by itself, and takes the whole visit back as one', async () => {
  const named = (name: string) => ({ variety: { newVariety: { cropId: 'bean', name } } })
  const { taken, kept, said, entryId } = await test.call('intake.record', {
    donor,
    receivedOn: TODAY,
    gifts: [
      aGift({
        ...named('Old Millpond'),
        amount: '',
        decision: { kind: 'later', waitsFor: [{ step: 'identity' }] },
      }),
      aGift(named('Ferry Blue')),
      aGift({ ...named('Lantern Row'), decision: { kind: 'decline', reason: 'mould' } }),
    ],
  })
  expect(taken.map(({ lotNumber }) => lotNumber)).toEqual(['HL26-0001-A'])
  expect(kept.map(({ variety, decision }) => [variety, decision])).toEqual([
    ['Old Millpond', 'later'],
    ['Lantern Row', 'decline'],
  ])
  expect(said).toBe('This visit: took in HL26-0001-A, kept Old Millpond for later and declined Lantern Row')
  expect(await gifts()).toMatchObject([
    { variety: 'Old Millpond', donor: 'Orsolya Venn', state: 'offered', waitsFor: [{ step: 'identity' }] },
    { variety: 'Lantern Row', donor: 'Orsolya Venn', state: 'declined', reason: 'mould' },
  ])
  const unweighed = await test.refused('gift.accept', {
    giftId: kept[0]?.giftId ?? 0,
    receivedOn: TODAY,
    reason: 'the donor is sure',
  })
  expect(unweighed.field).toBe('gift.amount')
  await test.call('entry.undo', { entryId })
  expect(await gifts()).toEqual([])
})

it('lists lots in quarantine beside the gifts that wait', async () => {
  await test.call('intake.record', {
    donor: null,
    receivedOn: TODAY,
    gifts: [aGift({ cautions: ['pests-seen'] })],
  })
  expect((await test.call('gift.list', {})).quarantined).toMatchObject([{ lotNumber: 'HL26-0001-A' }])
})
