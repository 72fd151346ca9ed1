import { describe, expect, it } from 'vitest'
import { createScanReader } from '../../renderer/app/scan-reader.ts'

/** Types keys with a pause before each, milliseconds, and answers what was heard at the last. */
function typed(keys: readonly string[], gap: number) {
  const reader = createScanReader()
  let at = 1_000
  let heard = reader.hear(keys[0] ?? '', at)
  for (const key of keys.slice(1)) {
    at += gap
    heard = reader.hear(key, at)
  }
  return heard
}

describe('a label reader is told from a hand', () => {
  it('hears a code that comes in one go and ends with Enter', () => {
    expect(typed([...'QH260142BK', 'Enter'], 8)).toEqual({ kind: 'scan', text: 'QH260142BK' })
  })

  it('takes the shift keys that a reader presses for capitals as part of the go', () => {
    expect(typed(['Shift', 'Q', 'Shift', 'H', '2', '6', '9', 'Enter'], 10)).toEqual({
      kind: 'scan',
      text: 'QH269',
    })
  })

  it('leaves a fast typist alone', () => {
    expect(typed([...'QH260142BK', 'Enter'], 70).kind).toBe('nothing')
  })

  it('bears single letters that come late', () => {
    const reader = createScanReader()
    const times = [0, 8, 190, 198, 206, 214, 222, 230]
    const heard = [...'QH26014', 'Enter'].map((key, i) => reader.hear(key, 1_000 + (times[i] ?? 0)))
    expect(heard.at(-1)).toEqual({ kind: 'scan', text: 'QH26014' })
  })

  it('leaves an Enter alone that comes after a pause', () => {
    const reader = createScanReader()
    for (const [i, key] of [...'QH26'].entries()) reader.hear(key, 1_000 + 5 * i)
    expect(reader.hear('Enter', 1_300).kind).toBe('nothing')
  })

  it.each(['12g', 'tomato', 'QH 2601'])('does not take ‘%s’ for a code', (text) => {
    expect(typed([...text, 'Enter'], 5).kind).toBe('nothing')
  })

  it('says when letters begin, so that the field can be put back as it was', () => {
    const reader = createScanReader()
    expect(reader.hear('Q', 1_000).kind).toBe('first')
    expect(reader.hear('H', 1_008).kind).toBe('nothing')
    expect(reader.hear('x', 2_000).kind).toBe('first')
  })

  it('begins anew after a scan, and after an arrow', () => {
    const reader = createScanReader()
    for (const [i, key] of [...'QH2601', 'Enter'].entries()) reader.hear(key, 1_000 + 5 * i)
    expect(reader.hear('Enter', 1_040).kind).toBe('nothing')
    for (const [i, key] of ['Q', 'H', '2', 'ArrowDown', '6', 'Enter'].entries())
      reader.hear(key, 3_000 + 5 * i)
    expect(reader.hear('Enter', 3_035).kind).toBe('nothing')
  })
})
