import { expect, test } from 'vitest'
import { english } from '../../db/messages/english.ts'
import { message } from '../../db/messages/message.ts'
import { flowingDocument } from '../../db/paper/drawing/flowing-document.ts'
import { type FontFile, openFont } from '../../db/paper/drawing/font-file.ts'
import { loadPaperFonts, type PaperFonts } from '../../db/paper/drawing/fonts.ts'
import { otherFonts } from '../../db/paper/drawing/other-fonts.ts'
import { openFaces } from '../../db/paper/drawing/paper-document.ts'
import { printableText } from '../../db/paper/drawing/printable-text.ts'
import { piecesOf, runsOfLine } from '../../db/paper/drawing/text-fitting.ts'
import { paragraphsIn } from '../../db/paper/drawing/text-flow.ts'
import type { FaceName } from '../../db/paper/drawing/typeface.ts'
import { alike, inkByHarfBuzz, inkOf, shapedByHarfBuzz } from '../builders/drawn-by-harfbuzz.ts'
import { saidInEnglish } from '../builders/in-english.ts'
import { bare } from '../builders/packets.ts'
import { readPdf } from '../builders/read-pdf.ts'

const fonts = loadPaperFonts()
const SIZE_PT = 24
const DPI = 150
/** Where the first line of a page stands, mm. */
const TOP_LINE = { x: 10, y: 12, width: 190, height: 26 }
const DOTS_TO_EM = (SIZE_PT / 72) * DPI

/** Prints a text as a paragraph of its own and reads the page back. */
async function printed(text: string, face: FaceName = 'regular', given?: PaperFonts) {
  const blocks = [paragraphsIn(SIZE_PT)(text, 0, { face })]
  const made = await flowingDocument({
    title: 'A text',
    language: 'en-GB',
    fonts: given ?? (await fonts),
    paper: 'a4',
    parts: [{ name: message('paper.the-report'), texts: english, blocks }],
  })
  const pdf = await readPdf(made.bytes)
  const [page] = pdf.pages
  if (!page) throw new Error('There should be a page.')
  const read = {
    ...made,
    characters: page.characters,
    ink: inkOf(page.raster(DPI, TOP_LINE)),
    widthMm: page.widthMm,
  }
  pdf.close()
  return read
}

const runsIn = async (text: string, face: FaceName = 'regular') => {
  const typeface = openFaces(await fonts)[face]
  return runsOfLine(typeface, piecesOf(printableText(text, typeface).text))
}

/** The one font that a word is set in. */
async function fontOf(word: string, face: FaceName = 'regular'): Promise<FontFile> {
  const [font, ...more] = new Set((await runsIn(word, face)).map((run) => run.font))
  if (!font || more.length > 0) throw new Error(`‘${word}’ should be set in one font.`)
  return font
}

/** Words of invented names, a script each, without spaces: one font sets all of a word. */
const WORDS: readonly (readonly [script: string, words: readonly string[]])[] = [
  ['Hebrew', ['שעועית', 'שְׁעוּעִית', '״חסה״']],
  ['Arabic', ['فاصوليا', 'لا', 'طَمَاطِم', 'پرتقال', 'می‌خواهم', 'ٹماٹر']],
  ['Devanagari', ['राजमा', 'क्षेत्र', 'हिन्दी', 'सर्वोत्तम', 'कार्तिक', 'क्‍ष']],
  ['Chinese', ['红豆', '「番茄」', '丝瓜（长）']],
  ['Japanese', ['えだまめ', 'いんげん豆', 'ガーデン', 'がぎぐ']],
  ['Korean', ['강낭콩', '뷁', '고추']],
  ['emoji', ['🍅', '🫘', '👩‍🌾', '❤️', '👍🏽', '🇫🇷', '1️⃣', '🌶️']],
  ['Georgian and Armenian', ['სიმინდი', 'լոբի']],
]

test.each(WORDS)('%s is inked as HarfBuzz draws it, and no word as boxes', async (_, words) => {
  for (const [index, word] of words.entries()) {
    const face = index % 2 === 0 ? 'regular' : 'semibold'
    const { ink, warnings } = await printed(word, face)
    const { bytes, name } = await fontOf(word, face)
    expect([warnings, ink.count > 0]).toEqual([[], true])
    const drawn = inkByHarfBuzz(bytes, shapedByHarfBuzz(bytes, word), DOTS_TO_EM)
    expect(alike(ink, drawn), `${word} in ${name}`).toBeGreaterThan(0.8)
    const boxes = await printed('□'.repeat(Array.from(word).length), face)
    expect(alike(ink, boxes.ink), `${word} beside boxes`).toBeLessThan(0.6)
  }
})

/** A glyph that moves nothing may stand in any order among its like: marks of Hebrew are sorted by HarfBuzz. */
const inAnyOrder = (glyphs: readonly { readonly id: number; readonly advance: number }[]) =>
  glyphs.map(({ id, advance }) => `${id} ${Math.round(advance)}`).toSorted()

test.each(WORDS)('%s: the glyphs and advances are HarfBuzz’s', async (_, words) => {
  for (const word of words) {
    const { bytes } = await fontOf(word)
    const ours = (await runsIn(word)).flatMap(({ text }) => {
      const { glyphs, positions } = openFont(bytes).layout(text)
      return glyphs.map(({ id }, index) => ({ id, advance: positions?.[index]?.xAdvance ?? 0 }))
    })
    const theirs = shapedByHarfBuzz(bytes, word)
    const seen = (all: readonly { readonly id: number; readonly advance: number }[]) =>
      all.filter(({ advance }) => advance !== 0).map(({ id, advance }) => `${id} ${Math.round(advance)}`)
    expect(seen(ours), word).toEqual(seen(theirs))
    // HarfBuzz keeps a glyph without ink for a variation selector.
    const selector = /\ufe0f/u.test(word) ? theirs.filter(({ advance }) => advance !== 0) : theirs
    expect(inAnyOrder(ours), word).toEqual(inAnyOrder(selector))
  }
})

test.each([
  'שעועית אדומה',
  'فاصوليا حمراء لا',
  'दादी का लाल राजमा, क्षेत्र १२',
  '奶奶的红豆角，「绿」',
  'おばあちゃんの赤い豆「ガーデン」',
  '할머니의 붉은 강낭콩',
  'Red 🍅 of 👩‍🌾 Mira ❤️',
  'ლობიო Լոբի ★',
])('‘%s’ is found in the document as it is written', async (text) => {
  const { characters } = await printed(text)
  expect(bare(characters.map(({ character }) => character).join(''))).toBe(bare(text))
})

const turned = (text: string) => Array.from(text).toReversed().join('')

test.each([
  ['Bean שעועית (12) – X', `Bean (12) ${turned('שעועית')} – X`],
  ['שעועית Bean 12 אדומה', `${turned('אדומה')} Bean 12 ${turned('שעועית')}`],
  ['from שרה · 85 % sprouted', `from ${turned('שרה')} · 85 % sprouted`],
  ['שרה · 85 · לוי', `${turned('לוי')} · 85 · ${turned('שרה')}`],
  ['فول ٢٠٢٤ X', `X ٢٠٢٤ ${turned('فول')}`],
  ['HL26-0001: \u2068שעועית\u2069, 12', `HL26-0001: ${turned('שעועית')}, 12`],
])('‘%s’ is seen from the left as it is to be', async (text, seen) => {
  const { characters } = await printed(text)
  const fromLeft = characters.toSorted((a, b) => a.at.x - b.at.x)
  expect(bare(fromLeft.map(({ character }) => character).join(''))).toBe(bare(seen))
})

test.each(['٢٠٢٤', '۱۴۰۵', '१२'])('the figures %s are inked from left to right', async (figures) => {
  const { ink } = await printed(figures)
  const { bytes } = await fontOf(figures)
  const [fromLeft, fromRight] = [figures, turned(figures)].map((order) =>
    inkByHarfBuzz(bytes, shapedByHarfBuzz(bytes, order, { fromLeft: true }), DOTS_TO_EM),
  )
  if (!fromLeft || !fromRight) throw new Error('There should be two.')
  expect(alike(ink, fromLeft)).toBeGreaterThan(0.8)
  expect(alike(ink, fromRight)).toBeLessThan(0.6)
})

test('an emoji is no letter of Latin: a figure after it stays in text from right to left', async () => {
  const runs = await runsIn('אבג 🍅 12 דהו')
  expect(runs.map(({ text }) => text).join('')).toBe('דהו 12 🍅 אבג')
})

test('brackets of text from right to left open towards it', async () => {
  expect((await runsIn('(שעועית) [12]')).map(({ text }) => text).join('')).toBe('[12] (שעועית)')
})

test('a paragraph from right to left stands at the right edge, each of its lines', async () => {
  const story =
    'שעועית אדומה של סבתא מן הגבעה מעל הנהר נשמרה שנים רבות HL26-0001 בצנצנת (12) של זכוכית. '.repeat(3)
  const { characters, widthMm } = await printed(story)
  const lines = Map.groupBy(
    characters.filter(({ character }) => character.trim() !== ''),
    ({ at }) => at.y.toFixed(1),
  )
  expect(lines.size).toBeGreaterThan(3)
  for (const line of lines.values()) {
    const right = Math.max(...line.map(({ ink }) => ink.right))
    expect(widthMm - right).toBeGreaterThan(18 - 0.6)
    expect(widthMm - right).toBeLessThan(18 + 1)
    expect(Math.min(...line.map(({ ink }) => ink.left))).toBeGreaterThan(18 - 0.6)
  }
})

test('ideographs are drawn as in Japan beside kana, and as in China elsewhere', async () => {
  const fontsOf = async (text: string) => new Set((await runsIn(text)).map(({ font }) => font.name))
  expect(await fontsOf('赤い豆')).toEqual(new Set(['BIZUDPGothic-Regular']))
  expect(await fontsOf('红豆')).toEqual(new Set(['NotoSansSC-Regular']))
})

test('ideographs break between any two, but a line begins with no stop and ends with no bracket', () => {
  const parts = (text: string) => piecesOf(text).map((piece) => piece.text)
  expect(parts('奶奶的红豆，绿「番茄」')).toEqual(['奶', '奶', '的', '红', '豆，', '绿', '「番', '茄」'])
  expect(parts('ちゃんの')).toEqual(['ちゃ', 'ん', 'の'])
})

test('a font is read when a letter needs it, and a document in Latin reads none', async () => {
  const asked: string[] = []
  const absent = otherFonts((file) => {
    asked.push(file)
    throw Object.assign(new Error('No such font.'), { code: 'MODULE_NOT_FOUND' })
  })
  const without = { ...(await fonts), others: absent }
  const latin = await printed('Hrášek ‘Painted Quill’, Κολοκύθι, Огурец · 12 ½ %', 'regular', without)
  expect([latin.warnings, asked]).toEqual([[], []])
  const hebrew = await printed('אב', 'regular', without)
  expect(asked.map((file) => file.split('/').at(-1))).toEqual([
    'NotoSansHebrew_400Regular.ttf',
    'DejaVuSans.ttf',
  ])
  expect(hebrew.warnings.map(saidInEnglish)).toEqual([
    'The report: the typeface has no א ב. A box is printed in its place: write it by hand.',
  ])
  expect(hebrew.characters.map(({ character }) => character)).toEqual(['□', '□'])
})

test('a fault of a font’s file is not taken for a font that is not there', async () => {
  const broken = otherFonts(() => {
    throw Object.assign(new Error('The disk has a fault.'), { code: 'EIO' })
  })
  await expect(printed('א', 'regular', { ...(await fonts), others: broken })).rejects.toThrow(
    'disk has a fault',
  )
})

test('what no font has is a box, and alone is named', async () => {
  const { warnings } = await printed('שעועית க்ஷ 콩 \u{e001}')
  expect(warnings.map(saidInEnglish)).toEqual([
    'The report: the typeface has no க் ஷ \u{e001}. A box is printed in its place: write it by hand.',
  ])
})
