import { strToU8, zipSync } from 'fflate'
import { readSheet } from 'read-excel-file/node'
import { afterAll, describe, expect, it } from 'vitest'
import type { CsvColumn } from '../../db/exchange/csv.ts'
import { readPackage } from '../../db/exchange/package-files.ts'
import { readTableFile } from '../../db/exchange/table-file.ts'
import { workbookOf } from '../../db/exchange/xlsx-write.ts'
import { message } from '../../db/messages/message.ts'
import { saidInEnglish } from '../builders/in-english.ts'
import { counted } from '../support/counted.ts'
import { LONG_RUN } from '../support/sized.ts'

const AT = '2026-03-14T10:30:00.000Z'
const SHEET = (cells: string) => ({
  'xl/workbook.xml': strToU8(
    '<workbook xmlns:r="r"><sheets><sheet name="Seeds" r:id="a"/></sheets></workbook>',
  ),
  'xl/_rels/workbook.xml.rels': strToU8(
    '<Relationships><Relationship Id="a" Target="worksheets/sheet1.xml"/></Relationships>',
  ),
  'xl/worksheets/sheet1.xml': strToU8(`<worksheet><sheetData>${cells}</sheetData></worksheet>`),
})
const bookOf = (cells: string) => zipSync(SHEET(cells))
let tried = 0
afterAll(() => counted('hostile or spoilt list files tried', tried))

const because = (bytes: Uint8Array) => {
  tried += 1
  const read = readTableFile(bytes)
  return read.kind === 'unreadable' ? saidInEnglish(read.because) : `read ${read.rows.length} rows`
}

describe('a workbook', () => {
  it('reads back as it was written, here and by an independent reader, formulas as the texts they are', async () => {
    const rows = [
      { name: '=1+1', grams: 12.5 },
      { name: 'Łan & "øl" <b>', grams: 0.125 },
    ]
    const columns: CsvColumn<(typeof rows)[number]>[] = [
      ['name', (row) => row.name],
      ['grams', (row) => row.grams],
    ]
    const bytes = await workbookOf('Seeds', columns, rows, AT)
    const other = await readSheet(Buffer.from(bytes))
    expect(other).toEqual([['name', 'grams'], ...rows.map((row) => [row.name, row.grams])])
    expect(readTableFile(bytes)).toMatchObject({
      rows: [
        ['name', 'grams'],
        ['=1+1', '12.5'],
        ['Łan & "øl" <b>', '0.1250'],
      ],
    })
  })

  it('gives a formula as it was last worked out', () => {
    const read = readTableFile(
      bookOf('<row r="1"><c r="A1" t="str"><f>HYPERLINK("x")</f><v>pea</v></c></row>'),
    )
    expect(read).toMatchObject({ rows: [['pea']] })
  })
})

describe('a hostile or spoilt file is refused in a sentence', () => {
  it('cut off anywhere', () => {
    const whole = bookOf('<row r="1"><c r="A1"><v>1</v></c></row>')
    for (let length = 4; length < whole.length; length += 7)
      expect(because(whole.subarray(0, length))).toMatch(/cut off or damaged|no \.xlsx workbook/)
  })

  it('claims a cell in the millionth row or the last column', () => {
    expect(because(bookOf('<row r="1048576"><c r="A1048576"><v>1</v></c></row>'))).toContain(
      'more than 100,000 rows',
    )
    expect(because(bookOf('<row r="1"><c r="XFD1"><v>1</v></c></row>'))).toContain('more than 200 columns')
  })

  // Packing 170 MB takes seconds.
  it.runIf(LONG_RUN)(
    'unpacks to far more than it is',
    () => {
      const bomb = zipSync(
        { ...SHEET(''), 'xl/worksheets/sheet2.xml': new Uint8Array(170_000_000) },
        { level: 1 },
      )
      expect(bomb.length).toBeLessThan(2_000_000)
      expect(because(bomb)).toContain('far more than a list of seed needs')
    },
    60_000,
  )

  it('leads outside itself, or follows entities', () => {
    expect(because(zipSync({ '../../etc/x.xml': strToU8('x') }))).toContain('leads outside it')
    const xml = `<!DOCTYPE a [<!ENTITY b "bbbb">]><worksheet><sheetData><row r="1"><c r="A1" t="str"><v>&b;</v></c></row></sheetData></worksheet>`
    expect(because(zipSync({ ...SHEET(''), 'xl/worksheets/sheet1.xml': strToU8(xml) }))).toMatch(
      /read 1 rows|damaged/,
    )
  })

  it('has a million columns, or is no text at all', () => {
    expect(because(strToU8(','.repeat(1_000_000)))).toContain('more than 200 columns')
    expect(because(new Uint8Array(50_000).map((_, index) => (index * 7_919) % 256))).toMatch(/is no list/)
    expect(because(Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 1, 2]))).toContain('Save it as .xlsx')
  })

  it('has a cell of ten million letters, which is read as one cell', () => {
    expect(readTableFile(strToU8(`crop,variety\npea,"${'x'.repeat(10_000_000)}"\n`))).toMatchObject({
      kind: 'table',
    })
  })

  it('is no package', () => {
    expect(readPackage(strToU8('PK')).kind).toBe('refused')
    expect(readPackage(zipSync({ 'datapackage.json': strToU8('{"resources": 3}') })).kind).toBe('refused')
    expect(
      readPackage(
        zipSync({ 'datapackage.json': strToU8('{"resources": [{"path": "lot.csv", "schema": {}}]}') }),
      ),
    ).toMatchObject({
      because: message('package.file-missing', { file: 'lot.csv' }),
    })
  })
})
