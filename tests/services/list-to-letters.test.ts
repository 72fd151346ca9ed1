import papaparse from 'papaparse'
import { afterEach, expect, it } from 'vitest'
import type { Value } from '../../db/contract/contract.ts'
import { answered, listOf, previewed } from '../builders/answered-list.ts'
import { inWindows1252, messyList } from '../builders/messy-list.ts'
import { everyRecord, packed, readInto } from '../builders/packed-collection.ts'
import { readPdf } from '../builders/read-pdf.ts'
import { aCollection, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'
import { sized } from '../support/sized.ts'

let test: TemporaryCollection
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

async function textOf({ pdf }: Pick<Value<'tray.render'>, 'pdf'>): Promise<string> {
  const read = await readPdf(new Uint8Array(Buffer.from(pdf, 'base64')))
  const text = read.pages.flatMap((page) => page.characters.map(({ character }) => character)).join('')
  read.close()
  return text.replace(/\s+/g, ' ')
}

/** Every row has its fate, each refused one with why; all that can come in does, in one go. */
async function takeMessyListIn(lines: number) {
  const { text } = messyList(lines, 'several')
  const sure = await answered(test, listOf(text))
  const { counts, rows } = await previewed(test, sure)
  expect(counts.doubtful).toBe(0)
  expect(counts.new + counts.there + counts.refused + counts['left-out']).toBe(lines + 1)
  expect(rows.filter(({ fate, because }) => fate === 'refused' && because === '')).toEqual([])
  const refused = await test.call('import.list-refused', sure)
  const { taken, leftOut } = await test.call('import.record', { ...sure, leaveOut: true })
  expect([taken, leftOut, taken + leftOut]).toEqual([counts.new, refused.rows, lines + 1])
  expect(taken).toBeGreaterThan(lines / 3)
  return { taken, refused }
}

/** The file of refused rows, mended as its reasons ask, comes in as a list of its own. */
async function takeRefusedIn(csv: string): Promise<number> {
  const [heading, ...rows] = papaparse.parse<string[]>(csv, { skipEmptyLines: true }).data
  const amount = heading?.indexOf('Menge') ?? -1
  const why = rows.map((row) => row.join(' ')).filter((row) => row.includes('is not an amount'))
  expect(why.length).toBeGreaterThan(0)
  const mended = rows.map((row) =>
    row.map((cell, at) => (at === amount && cell === 'some' ? '30 seeds' : cell)),
  )
  const again = await answered(test, listOf(papaparse.unparse([heading ?? [], ...mended])))
  const { taken } = await test.call('import.record', { ...again, leaveOut: true })
  return taken
}

it('goes from a messy list of hundreds of rows to labels of one shelf, letters to its donors, and an equal copy', {
  tags: 'long',
  timeout: 90_000,
}, async () => {
  test = await aCollection()
  const { taken, refused } = await takeMessyListIn(sized(200, 400))
  expect(await takeRefusedIn(refused.csv)).toBeGreaterThan(0)
  expect((await test.call('collection.get', {})).accessions).toBeGreaterThan(taken)

  const treated = await test.call('lot.list', { quarantined: true, limit: 200 })
  expect(treated.rows.length).toBeGreaterThan(5)

  const { places } = await test.call('place.list', {})
  const shelf = places.filter(({ name }) => name.toLowerCase() === 'cold box 1')
  expect(shelf).toHaveLength(1)
  const here = await test.call('lot.list', { placeId: shelf[0]?.placeId, limit: 200, emptyToo: true })
  expect(here.rows.length).toBeGreaterThan(20)
  const { itemIds } = await test.call('tray.add', {
    items: here.rows.map(({ lotId }) => ({ kind: 'label' as const, lotId })),
  })
  const labels = await test.call('tray.render', { kind: 'label', itemIds, sheet: 'a4-24' })
  expect(labels.pages).toBe(Math.ceil(here.rows.length / 24))
  const onLabels = await textOf(labels)
  expect(here.rows.filter(({ lotNumber }) => !onLabels.includes(lotNumber))).toEqual([])

  const { people } = await test.call('person.list', { limit: 500 })
  expect(people.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['Оксана Верболіз', 'Ελένη Κήπου', 'דנה זרעוני', 'ليلى البستاني']),
  )
  expect(people.filter(({ name }) => name.toLowerCase() === 'ada fennimore')).toHaveLength(1)
  for (const { personId } of people)
    await test.call('person.change', { personId, address: '3 Hollow Lane', mayWrite: true })
  const period = { from: '2020-01-01', until: TODAY }
  const added = await test.call('tray.add-letters', period)
  expect(added.letters).toBe(people.length)
  const letters = await test.call('tray.render', { kind: 'letter', itemIds: added.itemIds })
  const inLetters = await textOf(letters)
  for (const name of ['Ada Fennimore', 'Оксана Верболіз', 'Ελένη Κήπου']) expect(inLetters).toContain(name)
  for (const name of ['דנה זרעוני', 'ليلى البستاني'])
    expect(letters.warnings.some((warning) => warning.includes(name))).toBe(true)
  await test.call('tray.mark-printed', { kind: 'letter', itemIds: added.itemIds })
  await test.refused('tray.add-letters', period)

  await readInto(packed(test.collection), async (copy) => {
    expect(everyRecord(copy.collection)).toEqual(everyRecord(test.collection))
  })
})

it('reads the same list as an old spreadsheet saved it, in Windows-1252 beneath a title', async () => {
  test = await aCollection()
  const first = await previewed(test, listOf(inWindows1252(messyList(60).text)))
  expect(first).toMatchObject({ delimiter: ';', encoding: 'windows-1252', headingRow: 2 })
})
