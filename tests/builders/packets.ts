import fc from 'fast-check'
import type { ShippedSheet } from '../../db/contract/print-operations.ts'
import { lotLetter } from '../../db/domain/numbers/lot-letter.ts'
import { scanCode } from '../../db/domain/numbers/scan-code.ts'
import { loadPaperFonts, type PaperFonts } from '../../db/paper/drawing/fonts.ts'
import type { SheetGeometry } from '../../db/paper/packets/label-sheets.ts'
import { type PacketLabelSheets, packetLabels } from '../../db/paper/packets/packet-labels.ts'
import type { PacketLabel } from '../../db/paper/packets/packet-text.ts'
import { SHEETS } from '../../db/paper/packets/shipped-sheets.ts'
import { ENGLISH, saidInEnglish } from './in-english.ts'

let fonts: Promise<PaperFonts> | undefined

/** Prints labels on the usual sheet, but for what is given. */
export async function print(
  labels: readonly PacketLabel[],
  changes: Partial<Omit<PacketLabelSheets, 'sheet'>> & { sheet?: ShippedSheet | SheetGeometry } = {},
) {
  fonts ??= loadPaperFonts()
  const { warnings, ...printed } = await packetLabels({
    labels,
    texts: ENGLISH,
    startAt: 1,
    offsetMm: [0, 0],
    title: 'Packet labels',
    language: 'en-GB',
    fonts: await fonts,
    cropMarks: false,
    ...changes,
    sheet: measured(changes.sheet ?? 'a4-21'),
  })
  return { ...printed, warnings: warnings.map(saidInEnglish) }
}

/** The measures of a sheet by its name, or those given. */
export function measured(sheet: ShippedSheet | SheetGeometry): SheetGeometry {
  return typeof sheet === 'string' ? SHEETS[sheet] : sheet
}

/** A packet of an invented library, but for what is given. */
export function packet(changes: Partial<PacketLabel> = {}): PacketLabel {
  const lotNumber = changes.lotNumber ?? 'HL26-0142-B'
  return {
    crop: 'Runner bean',
    species: 'Phaseolus coccineus',
    variety: 'Painted Quill',
    harvest: '2024',
    lotNumber,
    scanCode: scanCode(lotNumber),
    source: 'Mira Tollander',
    germination: '85 % sprouted, Mar 2026',
    contents: '25 seeds',
    cautions: [],
    libraryName: 'Quillhaven Seed Library',
    ...changes,
  }
}

export const TREATED = 'TREATED with thiram. Not for food, feed or oil.'
export const POISONOUS = 'POISONOUS IF EATEN. Keep from children and animals.'

/** Letters that the labels' typeface has, from three scripts, with marks and signs. */
const PRINTABLE = [
  ...'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789',
  ...'àáâãäåæçèéêëìíîïñòóôõöøùúûüýÿßœžščřďťňůęąłńśźżőűğışțđħẅỳẞĄĘŁÅÜÖÄŽŠČŘÉẾỘ',
  ...'αβγδεζηθικλμνξοπρστυφχψωάέήίόύώϊϋΑΒΓΔΕΖΗΘΛΞΠΣΦΨΩΆΈΉ',
  ...'абвгдежзийклмнопрстуфхцчшщъыьэюяёАБВГДЕЖЗИЙКЛМНОПРСТУФХЦЧШЩЭЮЯіїєґљњђћўЂЋ',
  ...'’‘“”„«»–—·½¼°±×&()[]!?.,;:#%+*@',
] as const
/** Letters that other fonts have: other scripts, emoji, joined emoji. */
const OF_OTHER_FONTS = ['🍅', '🫘', '👩‍🌾', '❤️', 'ש', 'ל', 'ع', 'क', '豆', 'ね', '콩'] as const
/** Letters that no font has: a script that is not shipped, a private letter. */
const LACKED = ['க்ஷ', '\u{e001}'] as const
/** Marks that join the letter before them, and signs that are not to be seen. */
const ODD = [
  'e\u0301',
  'E\u0323\u0300',
  'o\u0331\u030d',
  '\u200b',
  '\u00ad',
  '\u202f',
  '\u00a0',
  '\t',
  '\n',
  '\u0007',
] as const

const word = fc.string({ unit: fc.constantFrom(...PRINTABLE), minLength: 1, maxLength: 14 })
const longWord = fc.string({ unit: fc.constantFrom(...PRINTABLE), minLength: 30, maxLength: 120 })
const oddWord = fc.string({
  unit: fc.constantFrom(...PRINTABLE, ...OF_OTHER_FONTS, ...LACKED, ...ODD),
  minLength: 1,
  maxLength: 20,
})
const anyWord = fc.oneof(
  { weight: 12, arbitrary: word },
  { weight: 1, arbitrary: longWord },
  { weight: 2, arbitrary: oddWord },
)
const joint = fc.constantFrom(' ', ' ', ' ', '-', '/', '–')

/** Names that nobody would wish on a label: short and very long, unbroken, accented, in three scripts and beyond. */
export const nastyName: fc.Arbitrary<string> = fc
  .array(fc.tuple(anyWord, joint), { minLength: 1, maxLength: 16 })
  .map((words) =>
    words
      .map(([text, after]) => text + after)
      .join('')
      .slice(0, 200)
      .trim(),
  )

const maybe = <T>(arbitrary: fc.Arbitrary<T>, otherwise: T) => fc.oneof(arbitrary, fc.constant(otherwise))

/** A packet with a nasty name, the n-th of its page. */
export function nastyPacket(ordinal: number): fc.Arbitrary<PacketLabel> {
  const lotNumber = `HL26-${String(1000 + ordinal)}-${lotLetter((ordinal % 40) + 1)}`
  return fc.record({
    crop: fc.oneof(fc.constantFrom('Pea', 'Winter squash', 'Κολοκύθι', 'Огурец'), nastyName),
    species: fc.constantFrom('', 'Pisum sativum', 'Brassica oleracea var. gongylodes', '× Triticosecale'),
    variety: nastyName,
    harvest: fc.constantFrom('2024', 'about 2019', '2017–2019', 'year unknown', ''),
    lotNumber: fc.constant(lotNumber),
    scanCode: fc.constant(scanCode(lotNumber)),
    source: maybe(nastyName, ''),
    germination: fc.constantFrom('85 % sprouted, Mar 2026', '7 of 8 sprouted, 2025', ''),
    contents: fc.constantFrom('25 seeds', 'about 1,240 seeds, 31.2 g', ''),
    cautions: fc.subarray([TREATED, POISONOUS, 'PROTECTED VARIETY. Do not pass on.']),
    libraryName: maybe(fc.constant('Quillhaven Seed Library'), ''),
  })
}

/** Text as it is compared: composed, without any white space or invisible signs. */
export function bare(text: string): string {
  return text.normalize('NFKC').replace(/[\s\p{Cc}\p{Default_Ignorable_Code_Point}]/gu, '')
}
