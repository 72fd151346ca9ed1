import { strToU8, zipSync } from 'fflate'
import { expect, it, onTestFinished } from 'vitest'
import { aCollection } from '../builders/temporary-collection.ts'

const SHEETS = ['Seeds', 'Members'] as const
const HEADINGS = ['Crop', 'Variety', 'Amount', 'Remarks', 'What she told me', 'Donor']
const CELLS = ['bean', 'Hollow Lane', '100 seeds', 'climbs', 'third house on the left', 'Ilka Brandt']

/** A workbook whose second sheet is hidden, and some columns of its first, counted from 1. */
function workbook(hidden: readonly number[]): string {
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
  const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
  const row = (cells: readonly string[]) =>
    `<row>${cells.map((cell) => `<c t="inlineStr"><is><t>${cell}</t></is></c>`).join('')}</row>`
  const cols = hidden.map((at) => `<col min="${at}" max="${at}" hidden="1"/>`).join('')
  const sheet = `<worksheet xmlns="${main}">${cols === '' ? '' : `<cols>${cols}</cols>`}<sheetData>${row(HEADINGS)}${row(CELLS)}</sheetData></worksheet>`
  const part = (name: string, index: number) =>
    `<sheet name="${name}" sheetId="${index + 1}" r:id="r${index}"${index > 0 ? ' state="hidden"' : ''}/>`
  const files = {
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets>${SHEETS.map(part).join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships>${SHEETS.map((_, index) => `<Relationship Id="r${index}" Target="worksheets/sheet${index}.xml"/>`).join('')}</Relationships>`,
    'xl/worksheets/sheet0.xml': sheet,
    'xl/worksheets/sheet1.xml': sheet,
  }
  const packed = zipSync(Object.fromEntries(Object.entries(files).map(([name, xml]) => [name, strToU8(xml)])))
  return Buffer.from(packed).toString('base64')
}

it('leaves out, and names, what a workbook hides and would become a note; other columns keep their use', async () => {
  const test = await aCollection()
  onTestFinished(() => test.remove())
  const look = async (hidden: readonly number[]) => {
    const read = await test.call('import.preview', { content: workbook(hidden), fileName: 'seeds.xlsx' })
    if (read.kind !== 'read') throw new Error(read.because)
    return read
  }
  const shown = await look([])
  expect(shown.sheets).toEqual(['Seeds'])
  expect(shown.understood).toContain('1 hidden sheet is not read.')
  for (const [index, { use, heading }] of shown.columns.entries()) {
    const read = await look([index + 1])
    const leftOut = use === 'note'
    expect(read.columns[index]?.use, heading).toBe(leftOut ? 'leave-out' : use)
    expect(read.understood.join().includes(`left out: ${heading}`), heading).toBe(leftOut)
  }
  expect(shown.columns.filter(({ use }) => use === 'note')).not.toEqual([])
})
