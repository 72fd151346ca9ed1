import fc from 'fast-check'
import { beforeAll, describe, expect, test } from 'vitest'
import { loadPaperFonts } from '../../db/paper/drawing/fonts.ts'
import { lettersOf } from '../../db/paper/drawing/letters.ts'
import { openFaces } from '../../db/paper/drawing/paper-document.ts'
import { printableText } from '../../db/paper/drawing/printable-text.ts'
import { balanceLines, fitLines, lineText, lineWidth, piecesOf } from '../../db/paper/drawing/text-fitting.ts'
import { openTypeface, type Typeface } from '../../db/paper/drawing/typeface.ts'
import { bare, nastyName } from '../builders/packets.ts'
import { sized } from '../support/sized.ts'

let face: Typeface
let every: Typeface
beforeAll(async () => {
  const fonts = await loadPaperFonts()
  face = openTypeface(fonts.regular)
  every = openFaces(fonts).regular
})

const roomOf = (width: number, changes = {}) => ({
  widthOf: () => width,
  maxLines: 99,
  mayBreak: false,
  mayCut: false,
  ...changes,
})
const words = (lines: readonly Parameters<typeof lineText>[0][] | undefined) => lines?.map(lineText)

describe('text made printable', () => {
  test('joins accents to their letters and drops what cannot be seen', () => {
    expect(printableText('hra\u0301s\u030cek\u200b zlu\u00adty\u0301', face)).toEqual({
      text: 'hrášek zlutý',
      missing: [],
    })
  })

  test('turns line breaks, tabs and controls into one space, and keeps a no-break space', () => {
    expect(printableText(' a\r\n\tb\u0007c\u202fd ', face).text).toBe('a b c\u00a0d')
  })

  test('prints a box for each letter that the typeface lacks, and names it once', () => {
    expect(printableText('Bean 🫘 👩‍🌾 🫘', face)).toEqual({ text: 'Bean □ □ □', missing: ['🫘', '👩‍🌾'] })
  })

  test('has all letters of European Latin, modern Greek and Cyrillic', () => {
    const alphabets =
      'ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖØÙÚÛÜÝÞßĀĂĄĆĈČĎĐĒĘĚĞĢĦĪĮİĶĹĽŁŃŅŇŊŌŐŒŔŘŚŞŠŢŤŦŪŮŰŲŴŶŸŹŻŽȘȚẀẂẄỲ' +
      'ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩάέήίόύώϊϋΐΰς' +
      'АБВГДЕЁЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯІЇЄҐЉЊЂЋЏЅЈЌЃЎ'
    expect(printableText(alphabets + alphabets.toLowerCase(), face).missing).toEqual([])
  })
})

describe('text broken into lines', () => {
  test('breaks at spaces, and after hyphens and slashes', () => {
    expect(piecesOf('white-seeded pea/bean').map((piece) => piece.text)).toEqual([
      'white-',
      'seeded',
      'pea/',
      'bean',
    ])
    expect(lineText(piecesOf('white-seeded pea/bean'))).toBe('white-seeded pea/bean')
  })

  test('always breaks at a line feed', () => {
    expect(words(fitLines(face, piecesOf('one\ntwo'), roomOf(100))?.lines)).toEqual(['one', 'two'])
  })

  test('breaks an over-long word only where it may', () => {
    const pieces = piecesOf('Donaudampfschifffahrt')
    expect(fitLines(face, pieces, roomOf(5))).toBeNull()
    const broken = fitLines(face, pieces, roomOf(5, { mayBreak: true }))
    expect(words(broken?.lines)?.join('')).toBe('Donaudampfschifffahrt')
    expect(broken?.lines.length).toBe(3)
  })

  test('cuts with an ellipsis only where it may, and says so', () => {
    const pieces = piecesOf('one two three four five six')
    expect(fitLines(face, pieces, roomOf(5, { maxLines: 1 }))).toBeNull()
    const cut = fitLines(face, pieces, roomOf(5, { maxLines: 1, mayCut: true }))
    expect(cut?.cut).toBe(true)
    expect(words(cut?.lines)).toEqual(['one two t…'])
  })

  test('makes two lines alike in length', () => {
    const pieces = piecesOf('Winter Butterhead of the Upper Quill')
    const greedy = fitLines(face, pieces, roomOf(14))
    if (!greedy) throw new Error('The text should fit.')
    expect(words(greedy.lines)).toEqual(['Winter Butterhead of the Upper', 'Quill'])
    expect(words(balanceLines(face, pieces, roomOf(14), greedy).lines)).toEqual([
      'Winter Butterhead',
      'of the Upper Quill',
    ])
  })

  test('no line is wider than its room, and no letter is lost unless cut', () => {
    fc.assert(
      fc.property(
        nastyName,
        fc.double({ min: 4, max: 40, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        (raw, width, maxLines) => {
          const { text } = printableText(raw, every)
          const fitted = fitLines(
            every,
            piecesOf(text),
            roomOf(width, { maxLines, mayBreak: true, mayCut: true }),
          )
          if (!fitted) throw new Error('What may be cut always fits.')
          for (const line of fitted.lines) expect(lineWidth(every, line)).toBeLessThanOrEqual(width + 1e-9)
          expect(fitted.lines.length).toBeLessThanOrEqual(maxLines)
          const printed = bare(fitted.lines.map(lineText).join(' '))
          if (!fitted.cut) expect(printed).toBe(bare(text))
          else expect(bare(text).startsWith(printed.replace(/(…|\.\.\.)$/u, ''))).toBe(true)
        },
      ),
      {
        numRuns: sized(100, 3_000),
        seed: 20261125,
        // The ink of a j reaches to the left of where it begins.
        examples: [['ÿЂєYj!čрřa a', 4, 2]],
      },
    )
  })

  test('a letter is what a reader calls one', () => {
    expect(lettersOf('E\u0323\u0300w👩‍🌾')).toEqual(['E\u0323\u0300', 'w', '👩‍🌾'])
  })
})
