import { describe, expect, test } from 'vitest'
import type { ShippedSheet } from '../../db/contract/print-operations.ts'
import { cellsOf, inkOutside, inkRoomsOf, labelsReadBack } from '../builders/labels-read-back.ts'
import { bare, POISONOUS, packet, print, TREATED } from '../builders/packets.ts'
import { partOf, readCodes } from '../builders/read-codes.ts'
import { readPdf } from '../builders/read-pdf.ts'
import { SHEETS_TRIED } from '../builders/sheets-tried.ts'

const FULL = ['a4-21', 'a4-24', 'letter-30', 'letter-10'] as const
const TINY = ['a4-65', 'letter-80'] as const

/** Envelopes in mm: ISO 269 for C6 and C7; the coin sizes are the usual ones in inches, from memory. */
const ENVELOPES: Readonly<Record<string, readonly [number, number]>> = {
  'coin-1': [57.15, 88.9],
  'coin-3': [63.5, 107.95],
  'coin-4-half': [76.2, 123.83],
  'coin-5-half': [79.38, 139.7],
  'coin-6': [85.73, 152.4],
  'coin-7': [88.9, 165.1],
  'iso-c7': [81, 114],
  'iso-c6': [114, 162],
}

/** Width and height of a page in mm: ISO 216 A4, ANSI/ASME Y14.1 A, or an envelope. */
function pageSize(sheet: ShippedSheet): readonly [number, number] {
  const usual = /(^|-)a4(-|$)/.test(sheet) ? ([210, 297] as const) : ([215.9, 279.4] as const)
  return ENVELOPES[sheet] ?? usual
}

async function readBack(...asked: Parameters<typeof print>) {
  const printed = await print(...asked)
  const pdf = await readPdf(printed.bytes)
  const back = labelsReadBack(pdf, asked[1]?.sheet ?? 'a4-21', asked[1]?.offsetMm)
  pdf.close()
  return { ...printed, ...back, title: pdf.title, language: pdf.language, pages: pdf.pages }
}

describe('what a label says', () => {
  test.each(FULL)('%s carries everything, in Latin, Greek and Cyrillic', async (sheet) => {
    const labels = [
      packet({ variety: 'Žlutý hrášek', source: 'Jiřina Šťastná', lotNumber: 'HL26-0001-A' }),
      packet({ crop: 'Κολοκύθι', variety: 'Στρογγυλό', source: 'Ελένη', lotNumber: 'HL26-0002-A' }),
      packet({ crop: 'Огурец', variety: 'Неженский', source: 'Нина Щербакова', lotNumber: 'HL26-0003-A' }),
    ]
    const { labels: read, warnings, astray } = await readBack(labels, { sheet })
    expect(warnings).toEqual([])
    expect(astray.length).toBe(0)
    expect(read.length).toBe(3)
    read.forEach(({ text }, index) => {
      const label = labels[index]
      const facts = [
        label?.crop,
        label?.species,
        label?.variety,
        `harvest ${label?.harvest}`,
        label?.lotNumber,
      ]
      const more = [`from ${label?.source}`, label?.germination, label?.contents, label?.libraryName]
      for (const words of [...facts, ...more, 'For sowing only. Not for eating.']) {
        expect(bare(text)).toContain(bare(words ?? ''))
      }
    })
  })

  test.each(TINY)('%s carries kind, harvest, variety and number', async (sheet) => {
    const { labels, warnings } = await readBack([packet({ harvest: 'about 2019' })], { sheet })
    expect(warnings).toEqual([])
    for (const words of ['Runner bean', 'about 2019', 'Painted Quill', 'HL26-0142-B']) {
      expect(bare(labels[0]?.text ?? '')).toContain(bare(words))
    }
  })

  test('leaves out what is empty, without a word about it', async () => {
    const nothing = { species: '', source: '', germination: '', contents: '', libraryName: '', harvest: '' }
    const { labels, warnings } = await readBack([packet(nothing)])
    expect(warnings).toEqual([])
    expect(labels[0]?.text).not.toMatch(/from|harvest/)
  })

  test('a mark over a capital stands higher than one over a small letter', async () => {
    const { labels } = await readBack([packet({ variety: 'Ẹ̀ẹ̀' })])
    const marks = labels[0]?.characters.filter((read) => read.character === '\u0300') ?? []
    const letter = labels[0]?.characters.find((read) => read.character === 'E')
    expect(bare(labels[0]?.text ?? '')).toContain(bare('Ẹ̀ẹ̀'))
    expect(marks.length).toBe(2)
    expect((letter?.at.y ?? 0) - (marks[0]?.at.y ?? 0)).toBeGreaterThan(0.5)
    expect((letter?.at.y ?? 0) - (marks[1]?.at.y ?? 0)).toBeCloseTo(0)
  })

  test('prints the number with more weight than anything but the name', async () => {
    const { labels } = await readBack([packet()])
    const sizeOf = (letter: string) =>
      labels[0]?.characters.find((read) => read.character === letter)?.sizePt ?? 0
    expect(sizeOf('H')).toBeGreaterThanOrEqual(14)
    expect(sizeOf('P')).toBeGreaterThan(0)
  })
})

describe('cautions', () => {
  test.each(FULL)('%s prints a caution whole in 8 point or larger', async (sheet) => {
    for (const caution of [TREATED, POISONOUS]) {
      const { labels, warnings } = await readBack([packet({ cautions: [caution] })], { sheet })
      expect(warnings).toEqual([])
      const letters = labels[0]?.characters.filter((read) => read.character.trim() !== '') ?? []
      const from = letters
        .map((read) => read.character)
        .join('')
        .indexOf(bare(caution))
      expect(from).toBeGreaterThanOrEqual(0)
      for (const read of letters.slice(from, from + bare(caution).length)) {
        expect(read.sizePt).toBeGreaterThanOrEqual(8)
      }
    }
  })

  test.each(SHEETS_TRIED)('%s never drops or shortens a caution silently', async (sheet) => {
    const long = `TREATED with ${'methylcyclopropenylidene '.repeat(8)}. Not for food, feed or oil.`
    for (const cautions of [[TREATED], [POISONOUS, TREATED], [long], [long, long, POISONOUS, TREATED]]) {
      const { labels, warnings } = await readBack([packet({ cautions })], { sheet })
      const told = warnings.join('\n')
      for (const caution of cautions) {
        const whole = bare(labels[0]?.text ?? '').includes(bare(caution))
        if (!whole) expect(told).toContain(caution.replace(/\s+/g, ' '))
      }
      expect(bare(labels[0]?.text ?? '')).toContain('HL26-0142-B')
    }
  })

  test('says so where a caution is smaller than 8 point', async () => {
    const { warnings } = await readBack([packet({ cautions: [TREATED, POISONOUS] })], { sheet: 'letter-30' })
    expect(warnings.join()).toMatch(/HL26-0142-B: the caution is printed in [567](\.\d)? point/)
  })

  test('the smallest label begins the caution and says what to write by hand', async () => {
    const { labels, warnings } = await readBack([packet({ cautions: [POISONOUS] })], { sheet: 'letter-80' })
    expect(bare(labels[0]?.text ?? '')).toContain(bare('POISONOUS IF EATEN.'))
    expect(warnings.join()).toContain(`only the beginning of the caution fits. Write the rest on the packet`)
    expect(warnings.join()).toContain(POISONOUS)
  })
})

describe('texts that do not fit', () => {
  test('are cut with a visible ellipsis and a warning that names the lot', async () => {
    const variety = 'Winter Butterhead of the Upper Quill Valley '.repeat(5)
    const { labels, warnings } = await readBack([packet({ variety })], { sheet: 'letter-30' })
    expect(labels[0]?.text).toContain('…')
    expect(warnings).toContainEqual('HL26-0142-B: the variety is too long for this label and was cut short.')
  })

  test('shrink before they are cut, never below the smallest type', async () => {
    for (const sheet of SHEETS_TRIED) {
      const long = packet({
        variety: 'Quillhaven '.repeat(18),
        source: 'Parsonage Garden Society '.repeat(6),
      })
      const { labels } = await readBack([long], { sheet })
      for (const read of labels[0]?.characters ?? []) expect(read.sizePt).toBeGreaterThanOrEqual(5.5)
    }
  })

  test('a number is never cut: a very long one is printed small, with a warning', async () => {
    const lotNumber = `HL26-${'0142'.repeat(9)}-B`
    const { labels, warnings } = await readBack([packet({ lotNumber, scanCode: 'HL260142B7' })], {
      sheet: 'letter-80',
    })
    expect(bare(labels[0]?.text ?? '')).toContain(lotNumber)
    expect(warnings.join()).toMatch(/so long a number is printed in \d(\.\d)? point/)
  })

  test('letters that no font has are boxes, with a warning that names them', async () => {
    const { labels, warnings } = await readBack([packet({ variety: 'Bean 豆 \u{e001}\u{e002}' })])
    expect(labels[0]?.text).toContain('Bean 豆 □□')
    expect(warnings.length).toBe(1)
    expect(warnings[0]).toMatch(/^HL26-0142-B: .* has no \u{e001} \u{e002}\./u)
  })
})

describe('where it is printed', () => {
  test('starts at any label of a used sheet and goes on to the next', async () => {
    const labels = Array.from({ length: 23 }, (_, index) => packet({ lotNumber: `HL26-${1000 + index}-A` }))
    const { labels: read, pages } = await readBack(labels, { startAt: 20 })
    expect(read.map(({ page, position }) => [page, position])).toEqual([
      [0, 19],
      [0, 20],
      ...Array.from({ length: 21 }, (_, position) => [1, position]),
    ])
    expect(pages.length).toBe(2)
    expect(read[2]?.text).toContain('HL26-1002-A')
  })

  test.each([0, 22, 1.5])('refuses to start at label %d of 21', async (startAt) => {
    await expect(print([packet()], { startAt })).rejects.toThrow('start at one of 1 to 21')
  })

  test('refuses to print nothing, and a scan code that a scanner would garble', async () => {
    await expect(print([])).rejects.toThrow('Choose at least one label')
    await expect(print([packet({ scanCode: 'HL26-0142-B' })])).rejects.toThrow('capitals and digits only')
  })

  test('moves everything by the offset, right and down', async () => {
    const still = await readBack([packet()])
    const moved = await readBack([packet()], { offsetMm: [1.5, -0.5] })
    expect(moved.astray.length).toBe(0)
    const at = (read: typeof still) => read.labels[0]?.characters[0]?.at ?? { x: 0, y: 0 }
    expect(at(moved).x - at(still).x).toBeCloseTo(1.5, 2)
    expect(at(moved).y - at(still).y).toBeCloseTo(-0.5, 2)
    expect(moved.warnings).toEqual([])
  })

  test('warns where an offset brings text near the edge of the paper', async () => {
    const { warnings } = await print([packet()], { offsetMm: [-6, 0] })
    expect(warnings.join()).toContain('within 3.2 mm of the edge of the paper')
  })

  test.each(SHEETS_TRIED)('%s has no ink outside its labels, on a page of the right size', async (sheet) => {
    const labels = Array.from({ length: cellsOf(sheet).length + 1 }, () =>
      packet({ variety: 'Ǻńgström Ẹ̀wà', cautions: [TREATED] }),
    )
    const pdf = await readPdf((await print(labels, { sheet })).bytes)
    expect(labelsReadBack(pdf, sheet).astray.length).toBe(0)
    const [width, height] = pageSize(sheet)
    expect(pdf.pages).toHaveLength(2)
    for (const page of pdf.pages) {
      expect(page.widthMm).toBeCloseTo(width, 1)
      expect(page.heightMm).toBeCloseTo(height, 1)
      expect(inkOutside(page.raster(150), inkRoomsOf(sheet), 150)).toBe(0)
    }
    pdf.close()
  })
})

describe('QR codes', () => {
  test.each(SHEETS_TRIED)('every code of a full sheet %s is read from a 300 dpi print', async (sheet) => {
    const cells = cellsOf(sheet)
    const labels = cells.map((_, index) => packet({ lotNumber: `HL26-${1000 + index}-A` }))
    const pdf = await readPdf((await print(labels, { sheet })).bytes)
    expect(pdf.pages.length).toBe(1)
    const raster = pdf.pages[0]?.raster(300)
    const read: string[] = []
    for (const cell of raster ? cells : []) {
      const found = raster ? await readCodes(partOf(raster, cell, 300)) : []
      read.push(...found.map((code) => code.text))
    }
    pdf.close()
    expect(read).toEqual(labels.map((label) => label.scanCode))
  })
})

describe('long scan codes', () => {
  const long = packet({ scanCode: 'HL260142'.repeat(5) })

  test('take more room rather than finer modules', async () => {
    const { warnings } = await print([long], { sheet: 'a4-65' })
    expect(warnings).toEqual([])
  })

  test('are warned of where the label is too low for them', async () => {
    const { warnings } = await print([long], { sheet: 'letter-80' })
    expect(warnings.join()).toContain('its QR code is finer than 0.33 mm and may not scan')
  })
})

describe('the document', () => {
  test('has its title, its language and no other colour than black', async () => {
    const { title, language } = await readBack([packet()], { title: 'Labels, March ž', language: 'cs-CZ' })
    expect(title).toBe('Labels, March ž')
    expect(language).toBe('cs-CZ')
  })

  test('is the same, byte for byte, for the same labels', async () => {
    const labels = [packet(), packet({ variety: 'Неженский', cautions: [TREATED] })]
    const [first, second] = [await print(labels), await print(labels)]
    expect(Buffer.from(first.bytes).equals(Buffer.from(second.bytes))).toBe(true)
    const other = await print([packet({ variety: 'Alderwick' })])
    expect(Buffer.from(first.bytes).equals(Buffer.from(other.bytes))).toBe(false)
  })

  test('carries only the letters it uses', async () => {
    const { bytes } = await print([packet()])
    expect(bytes.length).toBeLessThan(60_000)
  })
})
