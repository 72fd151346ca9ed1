import { mkdirSync, readdirSync } from 'node:fs'
import { basename, dirname } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { sheetBeside } from '../../db/migrations/backup-files.ts'
import { readPdf } from '../builders/read-pdf.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

async function sheet(): Promise<string> {
  const { pdf, pages, warnings } = await test.call('fire-sheet.render', {})
  expect(warnings).toEqual([])
  expect(pages).toBeLessThanOrEqual(2)
  const read = await readPdf(new Uint8Array(Buffer.from(pdf, 'base64')))
  const text = read.pages.flatMap((page) => page.characters.map(({ character }) => character)).join('')
  read.close()
  return text.replace(/\s+/g, ' ')
}

const place = async (name: string, kind: 'shelf' | 'box' = 'shelf', parentId: number | null = null) =>
  (await test.call('place.create', { name, kind, parentId })).placeId

async function lotIn(placeId: number | null, name: string, more: object = {}) {
  const { lotId, lotNumber } = await takeIn(test, {
    variety: { newVariety: { cropId: 'bean', name } },
    ...more,
  })
  if (placeId !== null) await test.call('lot.move', { lotIds: [lotId], placeId, on: TODAY })
  return { lotId, lotNumber }
}

it('puts people first, then whom to call, then the places by what burns with them', async () => {
  const [attic, window] = [await place('Attic shelf'), await place('Window shelf')]
  const plain = await lotIn(attic, 'Miller’s Pole')
  await test.call('lot.split', {
    lotId: plain.lotId,
    on: TODAY,
    amount: '100 seeds',
    role: 'duplicate-elsewhere',
    heldBy: 'Marrow Bridge seed circle',
  })
  const rare = await lotIn(window, 'Ferrywoman', { story: 'Carried over the river in a tea caddy.' })
  await lotIn(null, 'Nowhere Runner')
  await test.call('settings.change', {
    settings: { whomToCall: 'Ansa Reed 555 0142\nThe caretaker 555 0177' },
  })
  const text = await sheet()
  const order = [
    'People first',
    'Ansa Reed 555 0142',
    'The caretaker 555 0177',
    'Window shelf',
    rare.lotNumber,
    'Attic shelf',
    plain.lotNumber,
    '1 lot is held by others already',
    'no place of 1 lot',
  ]
  expect(
    order.map((words) => text.indexOf(words)).every((at, index, all) => at > (all[index - 1] ?? -1)),
  ).toBe(true)
  expect(text).toContain('the only one, hard to replace, nobody known who took any')
  expect(text).not.toContain('Marrow Bridge')
})

it('names the shelf that is carried, not the boxes on it, and nobody who gave or took', async () => {
  const shelf = await place('Long shelf')
  const box = await place('Blue box', 'box', shelf)
  const { lotId } = await lotIn(box, 'Ferrywoman')
  await test.call('withdrawal.record', {
    person: { newPerson: { name: 'Ilka Brandt' } },
    on: TODAY,
    lines: [{ lotId, amount: '20 seeds' }],
    despite: ['too-few-left'],
    reason: 'a test of the book',
  })
  const text = await sheet()
  expect(text).toContain('1. Long shelf')
  expect(text).toContain('1 person took some of late')
  expect(text).not.toMatch(/Blue box|Ilka/)
})

it('says what to do while no lot lies in a place', async () => {
  await lotIn(null, 'Ferrywoman')
  expect(await test.refused('fire-sheet.render', {})).toMatchObject({ code: 'nothing-to-print' })
})

it('is due until it is printed, and again in the next season; a print taken back never was', async () => {
  const standing = () => test.call('fire-sheet.get', {})
  expect(await standing()).toEqual({ lastPrinted: null, due: true, whomToCall: '' })
  const { entryId } = await test.call('fire-sheet.mark-printed', { on: TODAY })
  expect(await standing()).toMatchObject({ lastPrinted: TODAY, due: false })
  await test.call('entry.undo', { entryId })
  expect(await standing()).toMatchObject({ lastPrinted: null, due: true })
  await test.call('fire-sheet.mark-printed', { on: TODAY })
  test.goTo('2026-09-01')
  expect(await standing()).toMatchObject({ lastPrinted: TODAY, due: true })
})

it('lies beside every backup and goes with it; a sheet that cannot be written fails no backup', async () => {
  await lotIn(await place('Long shelf'), 'Ferrywoman')
  const first = await test.call('backup.create', {})
  const lyingThere = () => readdirSync(dirname(first.file)).filter((name) => name.endsWith('.pdf'))
  expect(lyingThere()).toEqual([basename(sheetBeside(first.file))])
  test.goTo('2026-03-15')
  const { file } = await test.call('backup.create', { deleteOlder: true })
  expect(lyingThere()).toEqual([basename(sheetBeside(file))])
  test.goTo('2026-03-16')
  const blocked = file.replace('2026-03-15', '2026-03-16')
  mkdirSync(`${sheetBeside(blocked)}/in-the-way`, { recursive: true })
  expect(await test.call('backup.create', {})).toMatchObject({ file: blocked })
})
