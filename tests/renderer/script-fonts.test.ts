import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { create } from '@cantoo/fontkit'
import { expect, test } from 'vitest'

const SHARED = join(import.meta.dirname, '..', '..', 'renderer', 'shared')
const read = (file: string) => readFileSync(join(SHARED, file), 'utf8')

interface ScreenFont {
  readonly family: string
  readonly file: string
  readonly ranges: readonly (readonly [first: number, last: number])[]
}

const FONTS: readonly ScreenFont[] = Array.from(
  read('script-fonts.css').matchAll(
    /family: "([^"]+)";[^}]*url\("([^"]+)"\)[^}]*unicode-range:\s*([^;]+);/gu,
  ),
  ([, family = '', file = '', ranges = '']) => ({
    family,
    file: join(SHARED, file),
    ranges: ranges.split(',').map((range) => {
      const [first = '', last = first] = range.trim().replace('U+', '').split('-')
      return [Number.parseInt(first, 16), Number.parseInt(last, 16)] as const
    }),
  }),
)

const asksFor = (letter: string) =>
  FONTS.filter(({ ranges }) => {
    const code = letter.codePointAt(0) ?? 0
    return ranges.some(([first, last]) => code >= first && code <= last)
  }).map(({ family }) => family)

test.each([
  ['Noto Sans Hebrew', 'שעועית'],
  ['Noto Sans Arabic', 'فاصولياپگٹ'],
  ['Noto Sans Devanagari', 'राजमाक्षेत्र'],
  ['BIZ UDPGothic', 'えだまめガーデン'],
  ['Nanum Gothic', '강낭콩'],
  ['Noto Sans SC', '红豆番茄「」，'],
  ['DejaVu Sans', 'სიმინდილոբի'],
  ['Noto Emoji', '🍅🫘🌶'],
])('%s is asked for the letters of its script, and has them', (family, letters) => {
  const font = FONTS.find((each) => each.family === family)
  if (!font) throw new Error('There should be such a font.')
  const opened = create(readFileSync(font.file))
  if ('fonts' in opened) throw new Error('It should be one font.')
  for (const letter of letters) {
    expect(asksFor(letter), letter).toEqual([family])
    expect(opened.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0), letter).toBe(true)
  }
  expect(read('tokens.css')).toContain(`"${family}"`)
})

test('text in Latin, Greek and Cyrillic asks for none of them', () => {
  for (const letter of ' ABCxyz0189.,;:–—‘’“”·½°€ÄÖßéŁŽαβγΩабвЯїњ')
    expect(asksFor(letter), letter).toEqual([])
})
