const ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'
const MODULUS = ALPHABET.length

/**
 * The check character of a code of capitals and digits: ISO/IEC 7064, hybrid system MOD 37,36.
 *
 * It catches every single wrong character and nearly every exchange of two neighbours. Throws RangeError for any other
 * character.
 */
export function checkCharacter(code: string): string {
  return ALPHABET.charAt((MODULUS + 1 - runningSum(code)) % MODULUS)
}

function runningSum(code: string): number {
  let sum = MODULUS
  for (const character of code) {
    const value = ALPHABET.indexOf(character)
    if (value < 0) throw new RangeError(`Not a capital letter or digit: ${character}`)
    sum = (sum + value) % MODULUS || MODULUS
    sum = (sum * 2) % (MODULUS + 1)
  }
  return sum
}

/** The form of a printed number that is searched and scanned: capitals and digits only ('hl26-0142-b' is HL260142B). */
export function bareNumber(printed: string): string {
  return printed.toUpperCase().replace(/[^0-9A-Z]/g, '')
}

/** What a label's QR carries: the bare number and its check character. */
export function scanCode(printed: string): string {
  const bare = bareNumber(printed)
  return bare + checkCharacter(bare)
}

/** The bare number inside a scanned code, or null when the check character does not fit. */
export function readScanCode(scanned: string): string | null {
  const text = bareNumber(scanned)
  if (text.length < 2) return null
  const bare = text.slice(0, -1)
  return checkCharacter(bare) === text.at(-1) ? bare : null
}
