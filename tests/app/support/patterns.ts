import { join } from 'node:path'

/** What is in the drawer when a test begins: the demonstration, an empty collection of the keeper's own, or three lots on it. */
export type Pattern = 'demo' | 'empty' | 'shelf'

/** The collection that was made before all tests, to be copied. */
export function patternOf(pattern: Pattern): string {
  const folder = process.env['COMMON_DRAWER_TEST_PATTERNS']
  if (folder === undefined) throw new Error('The collections to copy were not made before the tests')
  return join(folder, `${pattern}.drawer`)
}
