import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bareNumber, checkCharacter, readScanCode, scanCode } from '../../../db/domain/numbers/scan-code.ts'

const ALPHABET = [...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ']
const anyCode = fc.string({ unit: fc.constantFrom(...ALPHABET), minLength: 1, maxLength: 20 })

test('the bare number is capitals and digits only', () => {
  expect(bareNumber('hl26-0142-b')).toBe('HL260142B')
  expect(bareNumber(' QH 26/0142_B ')).toBe('QH260142B')
  expect(bareNumber('🌱')).toBe('')
})

test('a scan code is the bare number with its check character, and reads back', () => {
  expect(scanCode('QH26-0142-A')).toBe(`QH260142A${checkCharacter('QH260142A')}`)
  fc.assert(
    fc.property(anyCode, (code) => {
      expect(readScanCode(scanCode(code))).toBe(code)
      expect(readScanCode(scanCode(code).toLowerCase())).toBe(code)
    }),
  )
})

test.each(['', 'A', '-', '1', 'é'])('%j is no scan', (scanned) => {
  expect(readScanCode(scanned)).toBeNull()
})

test.each(['a', '-', 'É', '１', ' '])('%j has no check character', (character) => {
  expect(() => checkCharacter(character)).toThrow(RangeError)
})

describe('what the check character catches', () => {
  test('every single wrong character, the check character included', () => {
    fc.assert(
      fc.property(anyCode, fc.nat(), fc.constantFrom(...ALPHABET), (code, at, wrong) => {
        const right = scanCode(code)
        const place = at % right.length
        fc.pre(right[place] !== wrong)
        expect(readScanCode(right.slice(0, place) + wrong + right.slice(place + 1))).toBeNull()
      }),
      { numRuns: 2_000 },
    )
  })

  test('nearly every exchange of two neighbours: fewer than one in two hundred is missed', () => {
    const pairs = ALPHABET.flatMap((a) => ALPHABET.filter((b) => b !== a).map((b) => [a, b] as const))
    const missed = pairs.filter(([a, b]) => checkCharacter(`QH${a}${b}1`) === checkCharacter(`QH${b}${a}1`))
    expect(missed.length / pairs.length).toBeLessThan(0.005)
  })
})
