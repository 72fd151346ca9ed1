import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { cruisePlanted, ruleNames } from './check-layers.ts'

// That no import of the project is refused says `npm run check:layers`, beside these tests.
describe('imports point one way', () => {
  test('every rule catches the violation planted for it', async () => {
    const { violations } = await cruisePlanted()
    const caught = new Set(violations.map((violation) => violation.rule))
    expect([...ruleNames()].filter((name) => !caught.has(name))).toEqual([])
  })

  test('a screen that takes even a type from a table is caught', async () => {
    const { violations } = await cruisePlanted()
    expect(violations).toContainEqual({
      rule: 'renderer-knows-the-contract',
      from: 'renderer/screens/take-in/planted.ts',
      to: 'db/schema/planted.ts',
    })
  })
})

/** What a pure rule of the trade never holds; the compiler lets Date through, so the text is read. */
const NEVER_IN_DOMAIN = [
  /\bDate\.now\b/,
  /\bnew Date\b/,
  /\bMath\.random\b/,
  /\bprocess\s*\./,
  /\bglobalThis\b/,
]

describe('the domain has no clock, no chance and no machine', () => {
  const folder = join(import.meta.dirname, '..', '..', 'db', 'domain')
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.ts'),
  )

  test('there are files to read', () => {
    expect(files.length).toBeGreaterThan(10)
  })

  test.each(files)('%s', (name) => {
    const text = readFileSync(join(folder, name), 'utf8')
    expect(NEVER_IN_DOMAIN.filter((pattern) => pattern.test(text)).map(String)).toEqual([])
  })

  test('the patterns find what they look for', () => {
    const planted = 'Date.now() new Date() Math.random() process.env globalThis.x'
    expect(NEVER_IN_DOMAIN.every((pattern) => pattern.test(planted))).toBe(true)
  })
})
