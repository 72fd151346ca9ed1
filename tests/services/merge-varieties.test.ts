import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

async function gift(name: string, cropId = 'pea'): Promise<{ varietyId: number; lotId: number }> {
  const { taken } = await test.call('intake.record', {
    donor: null,
    receivedOn: TODAY,
    gifts: [{ variety: { newVariety: { cropId, name } }, amount: '40 g' }],
  })
  const lotId = taken[0]?.lotId ?? 0
  const { varietyId } = await test.call('lot.get', { lotId })
  return { varietyId, lotId }
}

const found = async (text: string) => {
  const { varieties } = await test.call('variety.search', { text })
  return varieties.map(({ name, accessions, synonyms }) => [name, accessions, [...synonyms].toSorted()])
}
const varietyOf = async ({ lotId }: { lotId: number }) => (await test.call('lot.get', { lotId })).variety

describe('two records of one variety', () => {
  it('become one: accessions move, names stay as other names, and a search finds it by each', async () => {
    const kept = await gift('Ferry Lane Pink')
    const joined = await gift('Pink Ferry')
    await test.call('variety.add-name', { varietyId: joined.varietyId, name: 'Ferryman’s' })
    const { accessions, said } = await test.call('variety.merge', {
      keepId: kept.varietyId,
      joinId: joined.varietyId,
    })
    expect([accessions, said]).toEqual([1, 'Joined the variety Pink Ferry into Ferry Lane Pink'])
    expect(await varietyOf(joined)).toBe('Ferry Lane Pink')
    const one = [['Ferry Lane Pink', 2, ['Ferryman’s', 'Pink Ferry']]]
    for (const text of ['ferry lane', 'pink ferry', 'ferryman']) expect(await found(text)).toEqual(one)
    const { rows } = await test.call('lot.list', { text: 'ferryman' })
    expect(rows.map(({ lotId }) => lotId).toSorted()).toEqual([kept.lotId, joined.lotId])
  })

  it('take in later gifts as one, whichever record is named', async () => {
    const [kept, joined] = [await gift('Ferry Lane Pink'), await gift('Pink Ferry')]
    await test.call('variety.merge', { keepId: kept.varietyId, joinId: joined.varietyId })
    expect(await varietyOf(await gift('Pink Ferry'))).toBe('Ferry Lane Pink')
    const { taken } = await test.call('intake.record', {
      donor: null,
      receivedOn: TODAY,
      gifts: [{ variety: { varietyId: joined.varietyId }, amount: '10 g' }],
    })
    expect(await varietyOf({ lotId: taken[0]?.lotId ?? 0 })).toBe('Ferry Lane Pink')
    expect(await found('pink')).toEqual([['Ferry Lane Pink', 4, ['Pink Ferry']]])
  })

  it('are parted by undo; what came to the kept one since stays with it', async () => {
    const [kept, joined] = [await gift('Ferry Lane Pink'), await gift('Pink Ferry')]
    await test.call('variety.add-name', { varietyId: kept.varietyId, name: 'Lane’s Own' })
    const { entryId } = await test.call('variety.merge', {
      keepId: kept.varietyId,
      joinId: joined.varietyId,
    })
    const later = await gift('Pink Ferry')
    await test.call('entry.undo', { entryId })
    expect(await varietyOf(joined)).toBe('Pink Ferry')
    expect(await varietyOf(later)).toBe('Ferry Lane Pink')
    expect(await found('pink')).toEqual([
      ['Pink Ferry', 1, []],
      ['Ferry Lane Pink', 2, ['Lane’s Own']],
    ])
  })

  it('follow when the kept one is joined in turn, and are parted in the opposite order only', async () => {
    const [a, b, c] = [await gift('Quay Red'), await gift('Red Quay'), await gift('Quayside')]
    const first = await test.call('variety.merge', { keepId: b.varietyId, joinId: a.varietyId })
    const second = await test.call('variety.merge', { keepId: c.varietyId, joinId: b.varietyId })
    expect(await varietyOf(await gift('Quay Red'))).toBe('Quayside')
    expect(await test.refused('entry.undo', { entryId: first.entryId })).toMatchObject({
      code: 'cannot-undo',
      sentence: 'Red Quay was joined into Quayside.',
      todo: 'Undo that first.',
    })
    await test.call('entry.undo', { entryId: second.entryId })
    expect(await varietyOf(a)).toBe('Red Quay')
    expect(await varietyOf(await gift('Quay Red'))).toBe('Red Quay')
    await test.call('entry.undo', { entryId: first.entryId })
    expect(await varietyOf(a)).toBe('Quay Red')
    expect(await varietyOf(await gift('Quay Red'))).toBe('Quay Red')
  })

  it('must be of one crop, two, in the book, and not joined already', async () => {
    const [kept, joined, other] = [await gift('Pink'), await gift('Rose'), await gift('Pink', 'bean')]
    const { varietyId: keepId } = kept
    const refused = (joinId: number) => test.refused('variety.merge', { keepId, joinId })
    expect(await refused(other.varietyId)).toMatchObject({ field: 'joinId', code: 'not-mergeable' })
    expect(await refused(keepId)).toMatchObject({ sentence: 'Those two are one variety already.' })
    expect(await refused(999)).toMatchObject({ code: 'not-found' })
    await test.call('variety.merge', { keepId, joinId: joined.varietyId })
    expect(await refused(joined.varietyId)).toMatchObject({
      sentence: 'Rose was joined into Pink.',
      todo: 'Choose Pink instead.',
    })
    expect(await varietyOf(other)).toBe('Pink')
  })

  it('are one to a list that comes in, by either name', async () => {
    const [kept, joined] = [await gift('Ferry Lane Pink'), await gift('Pink Ferry')]
    await test.call('variety.merge', { keepId: kept.varietyId, joinId: joined.varietyId })
    const text = 'Crop,Variety,Amount\nPea,Pink Ferry,15 g\n'
    const list = { fileName: 'list.csv', content: Buffer.from(text).toString('base64') }
    await test.call('import.record', list)
    expect(await found('pink')).toEqual([['Ferry Lane Pink', 3, ['Pink Ferry']]])
  })
})
