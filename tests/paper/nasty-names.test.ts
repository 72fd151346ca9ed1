import fc from 'fast-check'
import { afterAll, describe, expect, test } from 'vitest'
import type { ShippedSheet } from '../../db/contract/print-operations.ts'
import {
  carriesBySize,
  carriesFacts,
  cellAt,
  isEnvelope,
  type SheetGeometry,
  sheetFault,
} from '../../db/paper/packets/label-sheets.ts'
import { SMALLEST_TYPE_PT } from '../../db/paper/packets/packet-styles.ts'
import type { PacketLabel } from '../../db/paper/packets/packet-text.ts'
import { SHEETS } from '../../db/paper/packets/shipped-sheets.ts'
import { inkOutside, inkRoomsOf, labelsReadBack } from '../builders/labels-read-back.ts'
import { bare, nastyPacket, print } from '../builders/packets.ts'
import { readCodes } from '../builders/read-codes.ts'
import { readPdf } from '../builders/read-pdf.ts'
import { SHEETS_TRIED } from '../builders/sheets-tried.ts'
import { counted } from '../support/counted.ts'
import { sized } from '../support/sized.ts'

let readBack = 0
afterAll(() => counted('labels with nasty names printed and read back', readBack))

const HOW_MANY = sized(8, 500)
const LONG_MS = 120_000
const SEED = 20261125
/** Pages that are looked at as pixels too: every one would take minutes where a page holds one label. */
const PAGES_LOOKED_AT = 2

/** The texts of a packet as they are to be read, with what a warning calls each. */
function textsOf(label: PacketLabel): [string, RegExp][] {
  const source = label.source && `from ${label.source}`
  return [
    [label.crop, /plant kind/],
    [label.harvest, /harvest/],
    [label.variety, /variety/],
    [source, /source|who it is from/],
    [label.germination, /germination/],
    [label.contents, /contents|how much is in it/],
    [label.libraryName, /name of the library|library's name/],
    ...label.cautions.map((caution): [string, RegExp] => [caution, new RegExp(caution)]),
  ]
}
const NOT_ON_TINY = /source|germination|contents|library/

function named(count: number): readonly PacketLabel[] {
  const each = fc.tuple(...Array.from({ length: count }, (_, index) => nastyPacket(index)))
  return fc.sample(each, { numRuns: 1, seed: SEED })[0] as PacketLabel[]
}

/** Text that a reader of PDF may give in another order than it was written in: a line of it runs from right to left. */
const OTHER_ORDER = /[\p{Script=Hebrew}\p{Script=Arabic}]/u

/** Whether some words' letters, as UTF-16 units, are in a text as often as in the words. */
function holdsAll(text: string, words: string): boolean {
  const left = bare(text).split('')
  return bare(words)
    .split('')
    .every((unit) => {
      const at = left.indexOf(unit)
      if (at >= 0) left.splice(at, 1)
      return at >= 0
    })
}

/** The one geometry check: all ink inside its own label, no text below its least size, every loss told. */
async function holdTogether(packets: readonly PacketLabel[], sheet: SheetGeometry): Promise<void> {
  const { bytes, warnings } = await print(packets, { sheet })
  const pdf = await readPdf(bytes)
  const { labels, astray } = labelsReadBack(pdf, sheet)
  const stray = astray.map((read) => `${read.character} ${JSON.stringify(read.ink)} ${read.sizePt}`)
  expect(stray.slice(0, 6)).toEqual([])
  expect(labels.length).toBe(packets.length)
  labels.forEach(({ text, characters }, index) => {
    const label = packets[index] as PacketLabel
    const told = warnings.filter((warning) => warning.startsWith(label.lotNumber))
    const boxed = told.some((warning) => warning.includes('typeface has no'))
    const smallest = Math.min(...characters.map(({ sizePt }) => sizePt))
    const small = told.some((warning) => /number is printed in/.test(warning))
    if (!small) expect(smallest).toBeGreaterThanOrEqual(SMALLEST_TYPE_PT - 0.01)
    expect(bare(text)).toContain(bare(label.lotNumber))
    for (const [words, called] of textsOf(label)) {
      const caution = label.cautions.includes(words)
      if (sheet.carries === 'number-only' && !caution) continue
      if (!carriesFacts(sheet.carries) && NOT_ON_TINY.test(called.source)) continue
      const printed = OTHER_ORDER.test(words) ? holdsAll(text, words) : bare(text).includes(bare(words))
      const warned = boxed || told.some((warning) => called.test(warning))
      expect(printed || warned, `${label.lotNumber}: '${words}' in '${text}'`).toBe(true)
    }
  })
  for (const page of pdf.pages.slice(0, PAGES_LOOKED_AT))
    expect(inkOutside(page.raster(100), inkRoomsOf(sheet), 100)).toBe(0)
  pdf.close()
  readBack += labels.length
}

describe(`${HOW_MANY} nasty names`, () => {
  const packets = named(HOW_MANY)

  // A page each: the narrowest and the widest envelope take all names, those between them a fifth.
  const between = (sheet: ShippedSheet) =>
    isEnvelope(SHEETS[sheet]) && sheet !== 'coin-1' && sheet !== 'iso-c6'
  test.each(SHEETS_TRIED)(
    '%s: all text stands inside its label, and what is not there is said',
    (sheet) => holdTogether(between(sheet) ? packets.slice(0, HOW_MANY / 5) : packets, SHEETS[sheet]),
    LONG_MS,
  )

  test.each(['letter-80', 'a4-21'] as const)(
    '%s with the number alone: inside its label, cautions still there or told',
    (sheet) => holdTogether(packets, { ...SHEETS[sheet], carries: 'number-only' }),
    LONG_MS,
  )
})

const OWN_SHEETS = sized(4, 24)

/** Sheets as a library may measure them: whatever is let through must print. */
const ownSheet: fc.Arbitrary<SheetGeometry> = fc
  .record({
    columns: fc.integer({ min: 1, max: 6 }),
    rows: fc.integer({ min: 1, max: 14 }),
    widthMm: fc.integer({ min: 20, max: 140 }),
    heightMm: fc.integer({ min: 8, max: 120 }),
    leftMm: fc.integer({ min: 0, max: 20 }),
    topMm: fc.integer({ min: 0, max: 25 }),
    gapX: fc.integer({ min: 0, max: 6 }),
    gapY: fc.integer({ min: 0, max: 6 }),
  })
  .map(({ gapX, gapY, ...measures }) => ({
    ...measures,
    name: 'Own',
    pageMm: { width: 210, height: 297 },
    pitchXMm: measures.widthMm + gapX,
    pitchYMm: measures.heightMm + gapY,
    carries: carriesBySize(measures.widthMm, measures.heightMm),
    confidence: 'own' as const,
  }))

test(
  'sheets of a library’s own: what is let through prints inside its labels, and its code is read',
  async () => {
    const passed = fc
      .sample(ownSheet, { numRuns: 400, seed: SEED })
      .filter((sheet) => sheetFault(sheet) === null)
      .slice(0, OWN_SHEETS)
    expect(passed).toHaveLength(OWN_SHEETS)
    const packets = named(3)
    for (const sheet of passed) {
      await holdTogether(packets, sheet)
      const pdf = await readPdf((await print(packets.slice(0, 1), { sheet })).bytes)
      const first = pdf.pages[0]?.raster(300, cellAt(sheet, 0))
      const codes = first ? await readCodes(first) : []
      expect(codes.map(({ text }) => text)).toEqual([packets[0]?.scanCode])
      pdf.close()
    }
  },
  LONG_MS,
)
