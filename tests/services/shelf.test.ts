import papaparse from 'papaparse'
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
afterEach(() => test.remove())

const named = (cropId: string, name: string) => ({ variety: { newVariety: { cropId, name } } })

describe('finding', () => {
  it('finds a lot by its scanned code, its number with or without hyphens, and a few letters', async () => {
    const { lotId, scanCode, lotNumber } = await takeIn(test, named('pea', 'Hrášek Ferry Lane'))
    expect(await test.call('collection.search', { text: scanCode })).toMatchObject({
      exactLotId: lotId,
      scan: 'fits',
    })
    for (const text of [lotNumber, lotNumber.toLowerCase(), lotNumber.replaceAll('-', '')]) {
      expect(await test.call('collection.search', { text })).toMatchObject({
        exactLotId: lotId,
        scan: 'not-a-scan',
      })
    }
    for (const text of ['hrasek', 'HRÁŠEK fer', 'lane', 'pea ferry', '0001']) {
      expect(
        (await test.call('collection.search', { text })).lots.map((lot) => lot.lotId),
        text,
      ).toEqual([lotId])
    }
  })

  it('says when a scan’s check character does not fit, and finds nothing by it', async () => {
    const { scanCode } = await takeIn(test)
    const spoilt = scanCode.slice(0, -1) + (scanCode.endsWith('A') ? 'B' : 'A')
    expect(await test.call('collection.search', { text: spoilt })).toMatchObject({
      exactLotId: null,
      scan: 'does-not-fit',
    })
  })

  it('opens neither of two lots that one code may name, and shows both', async () => {
    const one = await takeIn(test, { amount: '900 seeds' })
    const letter = one.scanCode.at(-1) ?? ''
    // Lots are lettered A to Z, then AA, AB…: the lot whose bare number is the scan code of the first, made by force.
    const wanted = `A${letter}`
    test.collection.sqlite.exec('DROP TRIGGER lot_number_is_never_changed')
    const { newLotId } = await test.call('lot.split', {
      lotId: one.lotId,
      on: TODAY,
      amount: '100 seeds',
      role: 'reserve',
    })
    test.collection.sqlite
      .prepare('UPDATE lot SET number = ?, bare = ? WHERE id = ?')
      .run(`HL26-0001-${wanted}`, `HL260001${wanted}`, newLotId)
    const found = await test.call('collection.search', { text: one.scanCode })
    expect(found.exactLotId).toBeNull()
    expect(found.lots.map((lot) => lot.lotId)).toEqual([one.lotId, newLotId])
  })

  it('finds varieties by any of their names, and accessions by a name added later', async () => {
    const { lotId } = await takeIn(test, named('tomato', 'Ferry Lane Pink'))
    const { varieties } = await test.call('variety.search', { text: 'lane' })
    await test.call('variety.add-name', { varietyId: varieties[0]?.varietyId ?? 0, name: 'Widow Ågren’s' })
    expect((await test.call('variety.search', { text: 'agren' })).varieties[0]).toMatchObject({
      name: 'Ferry Lane Pink',
      matched: 'Widow Ågren’s',
    })
    expect((await test.call('lot.list', { text: 'agren' })).rows.map((row) => row.lotId)).toEqual([lotId])
  })

  it('tells two people of one name apart', async () => {
    for (const town of ['Quillhaven', 'Marrow Bridge'])
      await test.call('person.create', { name: 'Anna Holm', town })
    const { people } = await test.call('person.search', { text: 'holm' })
    expect(people.map((person) => person.tellApart)).toEqual([
      'Quillhaven, in the book since 2026',
      'Marrow Bridge, in the book since 2026',
    ])
  })

  it('treats letters that mean something to a search as letters', async () => {
    await takeIn(test)
    for (const text of ['"', "'; DROP TABLE lot; --", '*', 'a AND', '%', '(', 'NEAR(']) {
      await expect(test.call('collection.search', { text }), text).resolves.toBeDefined()
      await expect(test.call('lot.list', { text }), text).resolves.toBeDefined()
    }
  })
})

describe('the shelf', () => {
  it('filters, sorts and pages', async () => {
    await test.call('intake.record', {
      donor: { newPerson: { name: 'Ilse Corran' } },
      receivedOn: TODAY,
      gifts: [
        aGift({ ...named('pea', 'Zephyr'), amount: '900 seeds', harvest: '2020' }),
        aGift({ ...named('bean', 'Amber'), amount: '24 seeds', harvest: '2025' }),
        aGift({ ...named('bean', 'Mole'), amount: '600 seeds', harvest: '', cautions: ['treated'] }),
      ],
    })
    const varieties = async (query: Parameters<typeof test.call<'lot.list'>>[1]) =>
      (await test.call('lot.list', query)).rows.map((row) => row.variety)
    expect(await varieties({ sort: 'variety' })).toEqual(['Amber', 'Mole', 'Zephyr'])
    expect(await varieties({ sort: 'count', descending: true })).toEqual(['Zephyr', 'Mole', 'Amber'])
    expect(await varieties({ cropId: 'bean', sort: 'variety', limit: 1, offset: 1 })).toEqual(['Mole'])
    expect(await varieties({ quarantined: true })).toEqual(['Mole'])
    expect(await varieties({ state: 'regrow' })).toEqual(['Amber'])
    expect((await test.call('lot.list', { cropId: 'bean', limit: 1 })).total).toBe(2)
  })

  it('leaves empty lots out unless asked', async () => {
    const { lotId } = await takeIn(test)
    await test.call('lot.discard', { lotId, on: TODAY, amount: 'everything', reason: 'mould' })
    expect((await test.call('lot.list', {})).total).toBe(0)
    expect((await test.call('lot.list', { emptyToo: true })).total).toBe(1)
  })
})

describe('what must be kept', () => {
  it('counts working stock and reserve, not the reference sample, duplicates or quarantine', async () => {
    const { lotId, accessionId } = await takeIn(test, { amount: '400 seeds' })
    for (const role of ['reserve', 'reference'] as const)
      await test.call('lot.split', { lotId, on: TODAY, amount: '100 seeds', role })
    await test.call('lot.split', {
      lotId,
      on: TODAY,
      amount: '100 seeds',
      role: 'duplicate-elsewhere',
      heldBy: 'a friend',
    })
    const { accessions } = await test.call('accession.list-states', {})
    expect(accessions.find((line) => line.accessionId === accessionId)?.stock.total).toBe(200)
    await test.call('lot.quarantine', { lotId, reason: 'a smell of mould' })
    expect((await test.call('accession.list-states', {})).accessions[0]?.stock.total).toBe(100)
  })

  it('follows the keeper’s own figures: accession before crop before collection', async () => {
    const { accessionId } = await takeIn(test, { amount: '400 seeds' })
    const keep = async () => (await test.call('accession.list-states', {})).accessions[0]?.stock.keep
    expect(await keep()).toBe(45)
    await test.call('crop.change-policy', {
      cropId: 'bean',
      plantsToKeep: 60,
      reason: 'a landrace is variable',
    })
    expect(await keep()).toBe(252)
    await test.call('accession.change-policy', { accessionId, plantsToKeep: 20, regrowingsKept: 2 })
    expect(await keep()).toBe(58)
    await test.call('accession.change-policy', { accessionId, plantsToKeep: null, regrowingsKept: null })
    expect(await keep()).toBe(252)
    await test.call('settings.change', { settings: { assurance: 0.5 } })
    expect(await keep()).toBe(225)
    await test.call('accession.change-policy', { accessionId, assurance: 0.99 })
    expect(await keep()).toBe(282)
    await test.call('accession.change-policy', { accessionId, assurance: null })
    expect(await keep()).toBe(225)
  })

  it('says that viability is assumed until it is tested', async () => {
    const { lotId } = await takeIn(test, { amount: '400 seeds' })
    expect((await test.call('lot.get', { lotId })).stock.viabilityNotes.join()).toContain(
      '70\u00a0% alive is assumed',
    )
  })
})

it('prints labels for lots as a PDF', async () => {
  const { lotId } = await takeIn(test)
  const { pdf, pages } = await test.call('label.print', { labels: [{ lotId, copies: 22 }], sheet: 'a4-21' })
  expect(Buffer.from(pdf, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
  expect(pages).toBe(2)
  expect(
    (await test.refused('label.print', { labels: [{ lotId }], sheet: 'a4-21', startAt: 22 })).field,
  ).toBe('startAt')
})

describe('what a regrowing is for', () => {
  it('decides the plants of every accession, unless the crop or the accession has its own', async () => {
    const { lotId, accessionId } = await takeIn(test, {
      ...named('maize', 'Ferry Flint'),
      amount: '4000 seeds',
    })
    const keep = async () => (await test.call('lot.get', { lotId })).stock.keep
    expect(await keep()).toBe(210)
    await test.call('settings.change', { settings: { grade: 'conservation' } })
    expect(await keep()).toBe(825)
    await test.call('accession.change-policy', { accessionId, grade: 'quality' })
    expect(await keep()).toBe(45)
    await test.call('accession.change-policy', { accessionId, grade: null })
    expect(await keep()).toBe(825)
    await test.call('crop.change-policy', { cropId: 'maize', plantsToKeep: 80, reason: 'Small garden' })
    expect(await keep()).toBe(333)
  })

  it('is sown on a day of the year that there is', async () => {
    expect(() => test.call('settings.change', { settings: { sowingDay: '02-30' } })).toThrow(/sowing day/)
  })
})

describe('a file for a spreadsheet', () => {
  it('holds the lots asked for, in that order, with accents whole and numbers bare', async () => {
    const peas = await takeIn(test, { ...named('pea', 'Hrášek Ferry Lane'), amount: '1200 seeds' })
    const beans = await takeIn(test, { ...named('bean', 'Widow, "the late"'), amount: '12.5 g' })
    await takeIn(test)
    const { fileName, csv } = await test.call('lot.export', { lotIds: [beans.lotId, peas.lotId] })
    expect(fileName).toBe(`lots-${TODAY}.csv`)
    expect(csv.charCodeAt(0)).toBe(0xfeff)
    const [head, ...rows] = papaparse.parse<string[]>(csv.slice(1)).data
    const cell = (row: string[] | undefined, column: string) => row?.[head?.indexOf(column) ?? -1]
    expect(rows.map((row) => cell(row, 'lot'))).toEqual([beans.lotNumber, peas.lotNumber])
    expect(rows.map((row) => cell(row, 'variety'))).toEqual(['Widow, "the late"', 'Hrášek Ferry Lane'])
    expect(cell(rows[0], 'mass g')).toBe('12.5')
    expect(cell(rows[1], 'seeds')).toBe('1200')
  })

  it('never hands a spreadsheet a formula', async () => {
    const { lotId } = await takeIn(test, named('pea', '=1+1'))
    expect((await test.call('lot.export', { lotIds: [lotId] })).csv).toContain("'=1+1")
  })
})

it('lists only the lots that are named', async () => {
  const one = await takeIn(test)
  await takeIn(test)
  const { rows, total } = await test.call('lot.list', { lotIds: [one.lotId] })
  expect([rows.map(({ lotId }) => lotId), total]).toEqual([[one.lotId], 1])
})
