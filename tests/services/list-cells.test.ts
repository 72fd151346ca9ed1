import fc from 'fast-check'
import papaparse from 'papaparse'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { LIST_FIELDS } from '../../db/exchange/list-fields.ts'
import { answered, listOf, previewed } from '../builders/answered-list.ts'
import { aCollection, type TemporaryCollection } from '../builders/temporary-collection.ts'
import { sized } from '../support/sized.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

/** Every text of what a list can write, one after the other. */
function allWritten(): string {
  const { sqlite } = test.collection
  return [
    'accession',
    'accession_passport',
    'lot',
    'lot_caution',
    'person',
    'storage_place',
    'variety',
    'variety_synonym',
  ]
    .map((table) => JSON.stringify(sqlite.prepare(`SELECT * FROM ${table}`).all()))
    .join('\n')
}

describe('no cell is lost unsaid', () => {
  /** Cells that each can be found again, by field; a long one shows where something is cut. */
  const mark = (n: number, long: boolean) => `zq${n}x${long ? ` ${'word '.repeat(500)}end${n}y` : ''}`
  const TEXTS = [
    'otherNames',
    'ownNumber',
    'donorTown',
    'grownAt',
    'treated',
    'terms',
    'note',
    'donor',
    'place',
  ] as const
  const column = fc.record({ use: fc.constantFrom(...TEXTS), long: fc.boolean() })

  it('whatever a column is for, twice over and however long: it is in the book, or its row is not', async () => {
    const runs = sized(8, 300)
    await fc.assert(
      fc.asyncProperty(fc.array(column, { minLength: 1, maxLength: 6 }), async (columns) => {
        test.remove()
        test = await aCollection()
        const cells = columns.map(({ long }, n) => mark(n, long))
        const rows = [
          ['Crop', 'Variety', 'Amount', ...columns.map((_, n) => `Heading ${n}`)],
          ['Pea', 'Quay', '50 g', ...cells],
          ['Pea', 'Lantern', '5 g'],
        ]
        const uses = ['crop', 'variety', 'amount', ...columns.map(({ use }) => use)]
        const list = listOf(papaparse.unparse(rows), { choices: { columns: uses } })
        const settled = await answered(test, list)
        const { counts } = await previewed(test, settled)
        await test.call('import.record', { ...settled, leaveOut: true })
        const written = allWritten()
        for (const [n, { long }] of columns.entries()) {
          if (counts.refused > 0) continue
          expect(written, `${columns[n]?.use}`).toContain(`zq${n}x`)
          if (long) expect(written, `the end of ${columns[n]?.use}`).toContain(`end${n}y`)
        }
      }),
      { numRuns: runs },
    )
  })

  it('seeds beside their weight give the seed weight, in either order', async () => {
    for (const [text, name] of [
      ['Crop,Variety,Seeds,Weight (g)\nBean,Quay,200,50\n', 'Quay'],
      ['Crop,Variety,Weight (g),Seeds\nBean,Weir,50,200\n', 'Weir'],
    ] as const) {
      const { firstLotId } = await test.call('import.record', listOf(text))
      const lot = await test.call('lot.get', { lotId: firstLotId })
      expect(lot.quantity, name).toMatchObject({ massMg: 50_000, count: 200, weighed: true })
    }
  })

  it('a second amount that gives no weight is told in the story', async () => {
    const list = listOf('Crop,Variety,Seeds,Packets\nBean,Quay,200,4\n')
    await test.call('import.record', list)
    expect(allWritten()).toContain('Packets: 4')
  })
})

describe('the rows that did not come in', () => {
  it('are whole, however wide, and come in again as they would have at first', async () => {
    const many = Array.from({ length: 210 }, (_, n) => `Pea;Sort ${n} of the mill;5 g;`)
    const text = ['Crop;Variety;Amount;Remarks', ...many, 'Pea;Late;some;told;far out;;further'].join('\n')
    const { csv, rows } = await test.call('import.list-refused', listOf(text))
    expect(rows).toBe(1)
    const [, cells] = papaparse.parse<string[]>(csv.trim()).data
    expect(cells?.slice(2)).toEqual(['Pea', 'Late', 'some', 'told', 'far out', '', 'further'])
    const mended = listOf(csv.replace(',some', ',7 g'))
    const read = await previewed(test, mended)
    expect(read.columns.map(({ use }) => use).slice(0, 6)).toEqual([
      ...['leave-out', 'leave-out', 'crop', 'variety', 'amount', 'note'],
    ])
    await test.call('import.record', mended)
    const story = test.collection.sqlite.prepare('SELECT story FROM accession').pluck().get()
    expect(story).toMatch(/told[\s\S]*far out[\s\S]*further/)
    expect(story).not.toContain('is not an amount')
  })

  it('name their columns where the list had no headings', async () => {
    const { csv } = await test.call(
      'import.list-refused',
      listOf('Pea;Late;some\nPea;Quay;5 g\nPea;Weir;6 g\n', {
        choices: { headingRow: -1, columns: ['crop', 'variety', 'amount'] },
      }),
    )
    const read = await previewed(test, listOf(csv.replace(',some', ',7 g')))
    expect(read.columns.map(({ use }) => use)).toEqual([
      'leave-out',
      'leave-out',
      'crop',
      'variety',
      'amount',
    ])
  })
})

it('how people are reached is left out of stories, by headings and by shapes, and what goes out masks the rest', async () => {
  const list = listOf(
    'Crop,Variety,Amount,Donor,E-mail,Telefon,Street,Extra,Notes\n' +
      'Bean,Quay,900 g,Ada Wren,ada@example.org,01632 960001,3 Ferry Lane,+44 1632 960002,Ask ada@example.org or 01632 960003\n',
  )
  const read = await previewed(test, list)
  expect(read.columns.slice(4).map(({ use }) => use)).toEqual([
    'leave-out',
    'leave-out',
    'leave-out',
    'leave-out',
    'note',
  ])
  expect(read.understood.join(' ')).toContain('How people are reached is left out: E-mail, Telefon, Street.')
  const { firstLotId } = await test.call('import.record', list)
  expect(allWritten()).not.toMatch(/Ferry Lane|96000[12]/)
  const { html } = await test.call('catalogue.export', {})
  expect(html).toContain('(contact left out)')
  expect(html).not.toMatch(/example\.org|960003/)
  expect((await test.call('passport.export', {})).csv).not.toMatch(/example\.org|960003/)
  expect((await test.call('lot.get', { lotId: firstLotId })).story).toContain('01632 960003')
})

it('every field is one that the law of cells knows, or is read into a fact of its own', () => {
  const facts = ['crop', 'variety', 'harvest', 'amount', 'hundredWeight', 'sample', 'received']
  const texts = [
    'otherNames',
    'ownNumber',
    'donorTown',
    'grownAt',
    'treated',
    'terms',
    'note',
    'donor',
    'place',
  ]
  expect([...LIST_FIELDS].toSorted()).toEqual([...facts, ...texts].toSorted())
})
