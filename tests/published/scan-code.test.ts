import { mod37_36 } from 'cdigit'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkCharacter, readScanCode } from '../../db/domain/numbers/scan-code.ts'

/**
 * ISO/IEC 7064, hybrid system MOD 37,36. The two examples were seen on a public documentation page of a checksum
 * function (a data warehouse's manual); the text of the standard itself was not seen.
 */
test.each([
  ['123AB', 'X'],
  ['A12425GABC1234002', 'M'],
])('the published check character of %s is %s', (code, character) => {
  expect(checkCharacter(code)).toBe(character)
  expect(readScanCode(code + character)).toBe(code)
})

/** An independent implementation of the same standard: the cdigit package. */
test('every code gets the check character that an independent implementation gives it', () => {
  const alphabet = [...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ']
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(...alphabet), minLength: 1, maxLength: 24 }), (code) => {
      expect(checkCharacter(code)).toBe(mod37_36.compute(code))
      expect(mod37_36.validate(code + checkCharacter(code))).toBe(true)
    }),
    { numRuns: 2_000 },
  )
})
