import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { LabelSheet } from '../../db/contract/paper-operations.ts'
import { SHEETS } from '../../db/paper/label-sheets.ts'
import type { PacketLabel } from '../../db/paper/packet-text.ts'
import { inkOutside, labelsReadBack, roomsOf } from '../builders/labels-read-back.ts'
import { bare, nastyPacket, print } from '../builders/packets.ts'
import { readPdf } from '../builders/read-pdf.ts'

const HOW_MANY = 320
const SEED = 20261125

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

describe('320 nasty names', () => {
  const packets = fc.sample(fc.tuple(...Array.from({ length: HOW_MANY }, (_, index) => nastyPacket(index))), {
    numRuns: 1,
    seed: SEED,
  })[0] as PacketLabel[]

  test.each(LabelSheet.options)(
    '%s: all text stands inside its label, and what is not there is said',
    async (sheet) => {
      const { bytes, warnings } = await print(packets, { sheet })
      const pdf = await readPdf(bytes)
      const { labels, astray } = labelsReadBack(pdf, sheet)
      expect(
        astray
          .map(
            (read) =>
              `${read.character} ${JSON.stringify(read.ink)} ${JSON.stringify(read.at)} ${read.sizePt}`,
          )
          .slice(0, 6),
      ).toEqual([])
      expect(labels.length).toBe(HOW_MANY)
      labels.forEach(({ text }, index) => {
        const label = packets[index] as PacketLabel
        const told = warnings.filter((warning) => warning.startsWith(label.lotNumber))
        const boxed = told.some((warning) => warning.includes('typeface has no'))
        expect(bare(text)).toContain(bare(label.lotNumber))
        for (const [words, called] of textsOf(label)) {
          if (SHEETS[sheet].carries === 'name-and-number' && NOT_ON_TINY.test(called.source)) continue
          const printed = bare(text).includes(bare(words))
          const warned = boxed || told.some((warning) => called.test(warning))
          expect(printed || warned, `${label.lotNumber}: '${words}' in '${text}'`).toBe(true)
        }
      })
      for (const page of pdf.pages) expect(inkOutside(page.raster(100), roomsOf(sheet), 100)).toBe(0)
      pdf.close()
    },
    120_000,
  )
})
