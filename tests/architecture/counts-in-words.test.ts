import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const ROOT = join(import.meta.dirname, '../..')
/** A number in words with a plural written after it; where the same line knows of one, it is right already. */
const PLURAL_AFTER = /(?:format\.number|numberInWords)\([^()]*\)\}\s+([a-z]+s|people)\b/

/** Counts that cannot be one, with the reason. */
const NEVER_ONE: readonly string[] = [
  'forecasts worked out', // told from two lots on
  'format.number(1_240)', // an example
  'of the ${numberInWords(available', // of those that there are
]

test('a number before a plural says ‘1 lot’, not ‘1 lots’', () => {
  const files = globSync('{db,renderer}/**/*.{ts,tsx}', { cwd: ROOT })
  expect(files.length).toBeGreaterThan(300)
  const wrong = files.flatMap((file) => {
    const lines = readFileSync(join(ROOT, file), 'utf8').split('\n')
    return lines.filter((line, at) => {
      const around = lines.slice(Math.max(0, at - 1), at + 1).join(' ')
      return (
        PLURAL_AFTER.test(line) &&
        !around.includes('=== 1') &&
        !NEVER_ONE.some((known) => line.includes(known))
      )
    })
  })
  expect(wrong).toEqual([])
})
