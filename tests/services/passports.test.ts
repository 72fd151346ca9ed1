import { unzipSync } from 'fflate'
import papaparse from 'papaparse'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { checkPassport } from '../../db/exchange/mcpd-check.ts'
import { MCPD_CODES } from '../../db/exchange/mcpd-table.ts'
import { answered } from '../builders/answered-list.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

/** Every descriptor filled, most as in the examples of the standard's own text (seen; see db/reference/mcpd.json). */
const FULL: Record<string, string> = {
  ...{ PUID: 'doi:10.1/x', INSTCODE: 'COL001', ACCENUMB: '00254', COLLNUMB: 'ft-16', COLLCODE: 'COL001' },
  ...{ COLLNAME: '', COLLINSTADDRESS: '', COLLMISSID: 'TRIP-7', GENUS: 'Phaseolus', SPECIES: 'vulgaris' },
  ...{ SPAUTHOR: 'L.', SUBTAXA: 'subsp. vulgaris', SUBTAUTHOR: 'L.', CROPNAME: 'Common bean' },
  ...{ ACCENAME: 'Symphony;Emma', ACQDATE: '1968----', ORIGCTY: 'COL', COLLSITE: '7 km south of the mill' },
  ...{ DECLATITUDE: '-44.6975', LATITUDE: '10----S', DECLONGITUDE: '+120.9123', LONGITUDE: '076----W' },
  ...{ COORDUNCERT: '20', COORDDATUM: 'WGS84', GEOREFMETH: 'GPS', ELEVATION: '763', COLLDATE: '19670600' },
  ...{ BREDCODE: 'CHL002', BREDNAME: '', SAMPSTAT: '300', ANCEST: 'mutant of Hope', COLLSRC: '23' },
  ...{ DONORCODE: 'NLD037', DONORNAME: '', DONORNUMB: '7-7', OTHERNUMB: 'NLD037:CGN00254;:W-3' },
  ...{
    DUPLSITE: 'SWE009',
    DUPLINSTNAME: '',
    STORAGE: '11;13',
    MLSSTAT: '1',
    REMARKS: 'COLLSITE:by the mill',
  },
}

const listOf = (text: string) => ({ fileName: 'mcpd.txt', content: Buffer.from(text).toString('base64') })
const fileOf = (rows: Record<string, string>[], codes: readonly string[] = MCPD_CODES) =>
  papaparse.unparse(
    { fields: [...codes], data: rows.map((row) => codes.map((code) => row[code] ?? '')) },
    { delimiter: '\t' },
  )
const rowsOf = (csv: string) => papaparse.parse<Record<string, string>>(csv, { header: true }).data

describe('the descriptors', () => {
  it('are the 41 of V.2.1, and a full passport fits them', () => {
    expect(MCPD_CODES.length).toBe(41)
    expect(Object.keys(FULL)).toEqual(MCPD_CODES)
    expect(checkPassport(new Map(Object.entries(FULL)))).toEqual([])
  })

  it.each([
    ['SAMPSTAT', '305', 'error'],
    ['STORAGE', '11; 13', 'error'],
    ['ACQDATE', '1968--12', 'error'],
    ['ACQDATE', '19680231', 'error'],
    ['INSTCODE', 'Col1', 'error'],
    ['ACCENUMB', '', 'error'],
    ['DECLATITUDE', '95.5', 'error'],
    ['LONGITUDE', '', 'error'],
    ['COLLNAME', 'A person', 'warning'],
    ['COLLSRC', '99', 'warning'],
    ['SPECIES', 'Vulgaris', 'warning'],
    ['COLLDATE', '1969----', 'warning'],
  ])('%s ‘%s’ gives an %s', (code, value, level) => {
    const findings = checkPassport(new Map(Object.entries({ ...FULL, [code]: value })))
    expect(findings.map((finding) => finding.level)).toContain(level)
  })
})

describe('a file of descriptors', () => {
  it('comes in and goes out again unchanged, column by column', async () => {
    const rows = [FULL, { ...FULL, PUID: '', ACCENUMB: '00255', ACCENAME: 'Lantern', ORIGCTY: '' }]
    const list = listOf(fileOf(rows))
    const read = await test.call('import.preview', list)
    expect(read.kind === 'read' && read.columns.map(({ use }) => use)).toEqual(MCPD_CODES)
    const { taken } = await test.call('import.record', { ...list, answers: { 'no-amount': 'empty' } })
    expect(taken).toBe(2)
    const out = await test.call('passport.export', { people: true, places: true })
    expect([rowsOf(out.csv), out.found]).toEqual([rows, 0])
    const again = await test.call('import.preview', listOf(`${fileOf(rows)}\n`))
    expect(again.kind === 'read' && again.counts).toMatchObject({ there: 2, new: 0 })
  })

  it('leaves people and exact places out unless asked, and says so', async () => {
    const { personId } = await test.call('person.create', { name: 'Ada Fenn', creditAs: 'Ada of the Weir' })
    await test.call('person.change', { personId, name: 'Ada Fennimore' })
    const named = {
      ...FULL,
      COLLCODE: '',
      COLLNAME: 'Ada Fennimore',
      DONORCODE: '',
      DONORNAME: 'Ada Fennimore',
      COLLSITE: 'by the mill of Fennimore, Ada, once Ada Fenn or Ada of the Weir',
    }
    await test.call('import.record', { ...listOf(fileOf([named])), answers: { 'no-amount': 'empty' } })
    const out = await test.call('passport.export', {})
    expect(out.csv).not.toMatch(/Fennimore|mill|44\.6975/)
    expect(out.withheld.join(' ')).toMatch(/People are left out.*grown is left out/)
    expect((await test.call('occurrence.export', {})).csv).not.toMatch(/Fennimore|mill|44\.6975/)
    expect((await test.call('passport.export', { places: true })).csv).toContain(
      'by the mill of somebody, once somebody or somebody',
    )
    expect((await test.call('passport.export', { people: true })).csv).toContain('Ada Fennimore')
  })

  it('names no collector, in whatever descriptor or text one stands, unless people are asked for', async () => {
    const plants = ['GENUS', 'SPECIES', 'SPAUTHOR', 'SUBTAXA', 'SUBTAUTHOR', 'CROPNAME', 'ACCENAME', 'ANCEST']
    const collected = Object.fromEntries(
      MCPD_CODES.filter((code) => !plants.includes(code) && !/^(ACCENUMB|ACQDATE|COLLDATE)$/.test(code)).map(
        (code) => [code, `${FULL[code as keyof typeof FULL] ?? ''} Nadia Quist; QUIST, NADIA`],
      ),
    )
    const row = { ...FULL, ...collected, COLLNAME: 'Nadia Quist', COLLNUMB: 'Quist 16' }
    const list = { ...listOf(fileOf([row])), answers: { 'no-amount': 'empty' } }
    await test.call('import.record', await answered(test, list))
    for (const asked of [{}, { places: true }]) {
      expect((await test.call('passport.export', asked)).csv).not.toMatch(/quist/i)
      expect((await test.call('occurrence.export', asked)).csv).not.toMatch(/quist/i)
      const { content } = await test.call('package.export', asked)
      const files = Object.values(unzipSync(Buffer.from(content, 'base64'))).map((file) =>
        Buffer.from(file).toString(),
      )
      expect(files.join('\n')).not.toMatch(/nadia|quist/i)
    }
    const out = await test.call('occurrence.export', { people: true })
    expect(rowsOf(out.csv)[0]).toMatchObject({ recordNumber: 'Quist 16', recordedBy: 'Nadia Quist' })
  })

  it('is made of what the book knows of a gift from the table', async () => {
    await test.call('intake.record', {
      donor: { newPerson: { name: 'Ada Fennimore' } },
      receivedOn: TODAY,
      gifts: [aGift({ variety: { newVariety: { cropId: 'kale', name: 'Mill; Lane' } } })],
    })
    const [row] = rowsOf((await test.call('passport.export', {})).csv)
    expect(row).toMatchObject({
      ACCENUMB: 'HL26-0001',
      GENUS: 'Brassica',
      ACCENAME: 'Mill, Lane',
      STORAGE: '10',
    })
    expect(row).toMatchObject({ ACQDATE: TODAY.replaceAll('-', ''), DONORNAME: '', INSTCODE: '' })
    const [seen] = rowsOf((await test.call('occurrence.export', {})).csv)
    expect(seen).toMatchObject({
      catalogNumber: 'HL26-0001',
      basisOfRecord: 'LivingSpecimen',
      preparations: 'dry seed',
    })
  })

  it('is looked at before it comes in, each finding told once with how often it is true', async () => {
    const rows = [1, 2, 3].map((id) => ({ ...FULL, PUID: '', ACCENUMB: `00${id}`, SAMPSTAT: '305' }))
    const read = await test.call('import.preview', listOf(fileOf(rows)))
    expect(read.kind === 'read' && read.findings).toEqual([
      { level: 'error', sentence: 'SAMPSTAT 305 is not in its list of codes', times: 3, first: 2 },
    ])
  })

  it('names nobody in what was told of a gift, nor does the table of every lot', async () => {
    await test.call('intake.record', {
      donor: { newPerson: { name: 'Ada Fennimore' } },
      receivedOn: TODAY,
      gifts: [aGift({ story: 'Ada Fennimore carried it over the pass.' })],
    })
    const files = [
      await test.call('passport.export', {}),
      await test.call('occurrence.export', {}),
      await test.call('stock.export', {}),
    ]
    for (const { csv } of files) expect(csv).not.toContain('Fennimore')
    const { csv, rows } = await test.call('stock.export', { people: true })
    expect([csv.includes('Ada Fennimore'), rows]).toEqual([true, 1])
  })
})
