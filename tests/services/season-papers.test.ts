import { afterEach, beforeEach, expect, it } from 'vitest'
import { readPdf } from '../builders/read-pdf.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

async function textOf({ pdf }: { readonly pdf: string }): Promise<string> {
  const read = await readPdf(new Uint8Array(Buffer.from(pdf, 'base64')))
  const text = read.pages.flatMap((page) => page.characters.map(({ character }) => character)).join('')
  read.close()
  return text.replace(/\s+/g, ' ')
}

const DONOR = { name: 'Ilka Brandt', address: '3 Hollow Lane', mayWrite: true }

async function give(more: Parameters<typeof aGift>[0] = {}) {
  const { taken } = await test.call('intake.record', {
    donor: { newPerson: DONOR },
    receivedOn: TODAY,
    gifts: [aGift(more)],
  })
  const { lotId = 0, accessionId = 0, lotNumber = '' } = taken[0] ?? {}
  return { lotId, accessionId, lotNumber }
}

it('a how-to-keep card tells years for three places, the colder the longer, and of what is on a slip', async () => {
  const { lotId, lotNumber } = await give({ amount: '400 seeds' })
  await test.call('germination.record', { lotId, on: TODAY, tested: 100, sprouted: 94, fromStock: false })
  const card = await textOf(await test.call('keep-card.print', { lotIds: [lotId] }))
  expect(card).toContain(lotNumber)
  const years = ['cupboard', 'fridge', 'freezer'].map((place) => {
    const said = new RegExp(`In a ${place}, about .*?°C: (?:about|(more than)) (\\d+) years`).exec(card)
    return said === null ? Number.NaN : Number(said[2]) + (said[1] === undefined ? 0 : 1)
  })
  const [cupboard = Number.NaN, fridge = Number.NaN, freezer = Number.NaN] = years
  expect(cupboard).toBeGreaterThan(0)
  expect(fridge).toBeGreaterThan(cupboard)
  expect(freezer).toBeGreaterThanOrEqual(fridge)
  expect(card).toContain('promise too much')
  await test.call('withdrawal.record', {
    person: { newPerson: { name: 'Teodor Ash' } },
    on: TODAY,
    lines: [{ lotId, amount: '20 seeds' }],
    slip: true,
  })
  const { groups } = await test.call('tray.list', {})
  const itemIds = groups.find(({ kind }) => kind === 'slip')?.items.map(({ itemId }) => itemId) ?? []
  expect(await textOf(await test.call('keep-card.print', { itemIds }))).toContain(lotNumber)
  expect((await test.refused('keep-card.print', {})).field).toBe('lotIds')
})

it('the catalogue lists what can be spared, and nothing that must be kept or is protected', async () => {
  expect((await test.refused('catalogue.print', {})).sentence).toBe('No seed can be spared now.')
  await give({ amount: '6000 seeds', story: 'Carried over the pass.' })
  const few = await give({ amount: '12 seeds' })
  const own = await give({ amount: '6000 seeds', cautions: ['protected-variety'] })
  const made = await test.call('catalogue.print', {})
  expect(made.listed).toBe(1)
  const text = await textOf(made)
  expect(text).toContain('HL26-0001')
  expect(text).toContain('Carried over the pass.')
  for (const { lotNumber } of [few, own]) expect(text).not.toContain(lotNumber.slice(0, 9))
  expect(text).not.toContain('Hollow Lane')
})

it('the public page is text only, whatever names hold, and names donors only as they wish', async () => {
  const hostile = `<script>alert(1)</script>"'&<img src=x onerror=alert(2)>`
  await test.call('intake.record', {
    donor: { newPerson: { ...DONOR, creditAs: 'I. <b>B.</b>' } },
    receivedOn: TODAY,
    gifts: [
      aGift({
        amount: '6000 seeds',
        variety: { newVariety: { cropId: 'bean', name: hostile } },
        story: `Ilka Brandt of 3 gardens grew it. </p><script src="https://x.invalid/y.js"></script>`,
      }),
    ],
  })
  const { html, listed } = await test.call('catalogue.export', {})
  expect(listed).toBe(1)
  expect([...new Set(html.match(/<[a-z]\w*/gi))].toSorted()).toEqual(
    ['<body', '<h1', '<h2', '<h3', '<head', '<html', '<main', '<meta', '<p', '<style', '<title'].toSorted(),
  )
  expect(html).toContain('&lt;script&gt;alert(1)')
  expect(html).toContain('from I. &lt;b&gt;B.&lt;/b&gt;')
  expect(html).toContain('somebody of 3 gardens grew it.')
  expect(html).not.toMatch(/Brandt|Hollow Lane/)
})

it('the report counts a year, leaves out what was taken back, and names what is gone', async () => {
  const { lotId, lotNumber } = await give({ amount: '300 seeds' })
  const gone = await give({ amount: '20 seeds' })
  const person = { newPerson: { name: 'Teodor Ash' } }
  await test.call('withdrawal.record', { person, on: TODAY, lines: [{ lotId, amount: '30 seeds' }] })
  const wrong = await test.call('withdrawal.record', {
    person: { newPerson: { name: 'Odile Marsh' } },
    on: TODAY,
    lines: [{ lotId, amount: '50 seeds' }],
  })
  await test.call('entry.undo', { entryId: wrong.entryId })
  const all = [{ lotId: gone.lotId, amount: '20 seeds' }]
  await test.call('withdrawal.record', {
    person: null,
    on: TODAY,
    lines: all,
    despite: ['too-few-left'],
    reason: 'The last of it',
  })
  const { figures, ...made } = await test.call('report.print', { year: 2026 })
  expect(figures).toMatchObject({
    gifts: 2,
    donors: 2,
    visits: 2,
    takers: 1,
    lotsOut: 2,
    seedsOut: 50,
    returns: 0,
  })
  expect(figures.emptied.join()).toContain(gone.lotNumber.slice(0, 9))
  expect(figures.emptied.join()).not.toContain(lotNumber.slice(0, 9))
  const text = await textOf(made)
  for (const part of ['The year 2026', '2 gifts of seed came in', 'March', 'Nothing was grown again'])
    expect(text).toContain(part)
  expect(text).not.toMatch(/Ilka|Teodor|Hollow Lane/)
  const before = (await test.call('report.print', { year: 2019 })).figures
  expect(before).toMatchObject({ gifts: 0, visits: 0, seedsOut: 0, emptied: [], regrown: [] })
})

it('a later letter tells the donor what became of the gift so far', async () => {
  const { lotId, accessionId } = await give({ amount: '300 seeds' })
  const letter = async () => {
    const { groups } = await test.call('tray.list', {})
    const items = groups.find(({ kind }) => kind === 'letter')?.items ?? []
    return textOf(
      await test.call('tray.render', { kind: 'letter', itemIds: items.map(({ itemId }) => itemId) }),
    )
  }
  expect(await letter()).not.toContain('So far')
  const person = { newPerson: { name: 'Teodor Ash' } }
  await test.call('withdrawal.record', { person, on: TODAY, lines: [{ lotId, amount: '30 seeds' }] })
  await test.call('tray.add', { items: [{ kind: 'letter', accessionId }] })
  const later = await letter()
  expect(later).toContain('So far one person took seed of it.')
  expect(later).not.toContain('Teodor')
})

it('the stocktake sheet lists every lot by place, and refuses where nothing lies', async () => {
  expect((await test.refused('stocktake.sheet', {})).sentence).toBe('No lot with seed lies there.')
  const { placeId } = await test.call('place.create', {
    name: 'Cold cupboard',
    kind: 'cupboard',
    parentId: null,
  })
  const { lotId, lotNumber } = await give({ amount: '50 seeds' })
  await test.call('lot.move', { lotIds: [lotId], placeId, on: TODAY })
  const text = await textOf(await test.call('stocktake.sheet', { placeIds: [placeId] }))
  for (const part of ['Cold cupboard', lotNumber, '50 seeds', 'Found']) expect(text).toContain(part)
  expect((await test.refused('stocktake.sheet', { placeIds: [99] })).code).toBe('not-found')
})
