import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createScanReader } from '../../renderer/app/scan-reader.ts'

/** A key pressed on the keyboard that the computer takes the reader for: what comes of it, and its place. */
const pressed = (key: string, timeStamp: number, code = '') => ({ key, code, timeStamp })

/** Types keys with a pause before each, milliseconds, and answers what was heard at the last. */
function typed(keys: readonly string[], gap: number) {
  const reader = createScanReader()
  let at = 1_000
  let heard = reader.hear(pressed(keys[0] ?? '', at))
  for (const key of keys.slice(1)) {
    at += gap
    heard = reader.hear(pressed(key, at))
  }
  return heard
}

describe('a label reader is told from a hand', () => {
  it('hears a code that comes in one go and ends with Enter', () => {
    expect(typed([...'QH260142BK', 'Enter'], 8)).toEqual({
      kind: 'scan',
      text: 'QH260142BK',
      byPlace: 'QH260142BK',
    })
  })

  it('takes the shift keys that a reader presses for capitals as part of the go', () => {
    expect(typed(['Shift', 'Q', 'Shift', 'H', '2', '6', '9', 'Enter'], 10)).toEqual({
      kind: 'scan',
      text: 'QH269',
      byPlace: 'QH269',
    })
  })

  it('leaves a fast typist alone', () => {
    expect(typed([...'QH260142BK', 'Enter'], 70).kind).toBe('nothing')
  })

  it('bears single letters that come late', () => {
    const reader = createScanReader()
    const times = [0, 8, 190, 198, 206, 214, 222, 230]
    const heard = [...'QH26014', 'Enter'].map((key, i) => reader.hear(pressed(key, 1_000 + (times[i] ?? 0))))
    expect(heard.at(-1)).toMatchObject({ kind: 'scan', text: 'QH26014' })
  })

  it('leaves an Enter alone that comes after a pause', () => {
    const reader = createScanReader()
    for (const [i, key] of [...'QH26'].entries()) reader.hear(pressed(key, 1_000 + 5 * i))
    expect(reader.hear(pressed('Enter', 1_300)).kind).toBe('nothing')
  })

  it.each(['12g', 'tomato', 'QH 2601'])('does not take ‘%s’ for a code', (text) => {
    expect(typed([...text, 'Enter'], 5).kind).toBe('nothing')
  })

  it('says when letters begin, so that the field can be put back as it was', () => {
    const reader = createScanReader()
    expect(reader.hear(pressed('Q', 1_000)).kind).toBe('first')
    expect(reader.hear(pressed('H', 1_008)).kind).toBe('letter')
    expect(reader.hear(pressed('x', 2_000)).kind).toBe('first')
  })

  it('begins anew after a scan, and after an arrow', () => {
    const reader = createScanReader()
    for (const [i, key] of [...'QH2601', 'Enter'].entries()) reader.hear(pressed(key, 1_000 + 5 * i))
    expect(reader.hear(pressed('Enter', 1_040)).kind).toBe('nothing')
    for (const [i, key] of ['Q', 'H', '2', 'ArrowDown', '6', 'Enter'].entries())
      reader.hear(pressed(key, 3_000 + 5 * i))
    expect(reader.hear(pressed('Enter', 3_035)).kind).toBe('nothing')
  })

  it('knows a code by the places of its keys, however the keyboard is set', () => {
    fc.assert(
      fc.property(CODE, fc.constantFrom(...Object.values(LAYOUTS)), (code, layout) => {
        const reader = createScanReader()
        const keys = [...code].map((letter) => pressed(layout(letter), 0, placeOf(letter)))
        const heard = [...keys, pressed('Enter', 0, 'Enter')].map((key, i) =>
          reader.hear({ ...key, timeStamp: 1_000 + 5 * i }),
        )
        expect(heard.at(-1)).toMatchObject({ kind: 'scan', byPlace: code })
      }),
    )
  })
})

const CODE = fc.stringMatching(/^[A-Z]{2}[0-9]{2}-?[0-9A-Z]{1,8}$/)

function placeOf(letter: string): string {
  if (letter === '-') return 'Minus'
  return /\d/.test(letter) ? `Digit${letter}` : `Key${letter}`
}

/** What stands on the keys of a plain Latin keyboard, and on those of others in the same places; from memory. */
const LATIN = 'QWERTYUIOPASDFGHJKLZXCVBNM1234567890-'
const LAYOUTS: Readonly<Record<string, (letter: string) => string>> = {
  plain: (letter) => letter,
  french: ofRow('AZERTYUIOPQSDFGHJKLMWXCVBN&é"\'(-è_çà)'),
  german: ofRow('QWERTZUIOPASDFGHJKLYXCVBNM1234567890ß'),
  ukrainian: ofRow('ЙЦУКЕНГШЩЗФІВАПРОЛДЯЧСМИТЬ1234567890-'),
  // One key gives two letters at once.
  arabic: (letter) => (letter === 'B' ? 'لا' : ofRow('ضصثقفغعهخحشسيبلاتنمئءؤرلىة١٢٣٤٥٦٧٨٩٠-')(letter)),
  // A key that waits for the next one gives no letter of its own.
  'dead keys': (letter) => (letter === '6' ? 'Dead' : letter),
}

function ofRow(row: string): (letter: string) => string {
  return (letter) => row[LATIN.indexOf(letter)] ?? letter
}
