import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { CONTENT_SECURITY_POLICY } from '../../electron/host/built-files.ts'

/** Everything by which a page makes markup or script of a text. */
const MARKUP_FROM_TEXT = [
  /dangerouslySetInnerHTML/,
  /\b(inner|outer)HTML\b/,
  /\binsertAdjacentHTML\b/,
  /\bset(HTML|HTMLUnsafe)\b/,
  /\bcreateContextualFragment\b/,
  /\bDOMParser\b/,
  /\bdocument\.write(ln)?\b/,
  /\bsrcdoc\b/i,
  /\beval\s*\(/,
  /\bnew Function\b/,
  /\bset(Timeout|Interval)\s*\(\s*['"`]/,
  /javascript:/i,
]

const PLANTED = [
  '<p dangerouslySetInnerHTML={{ __html: name }} />',
  'row.innerHTML = name',
  'row.outerHTML = name',
  "row.insertAdjacentHTML('beforeend', name)",
  'row.setHTMLUnsafe(name)',
  'range.createContextualFragment(name)',
  "new DOMParser().parseFromString(name, 'text/html')",
  'document.write(name)',
  '<iframe srcDoc={name} />',
  'eval(name)',
  'new Function(name)()',
  "setTimeout('tell()', 10)",
  '<a href="javascript:tell()">',
]

const foundIn = (text: string) => MARKUP_FROM_TEXT.filter((pattern) => pattern.test(text)).map(String)

describe('the window makes neither markup nor script of a text', () => {
  const folder = join(import.meta.dirname, '..', '..', 'renderer')
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.(tsx?|html)$/.test(name),
  )

  test('in none of its files', () => {
    expect(files.length).toBeGreaterThan(100)
    const found = files.flatMap((name) =>
      foundIn(readFileSync(join(folder, name), 'utf8')).map((pattern) => `${name}: ${pattern}`),
    )
    expect(found).toEqual([])
  })

  test.each(PLANTED)('%s is found', (line) => {
    expect(foundIn(line)).not.toEqual([])
  })

  test('and the browser would refuse it, by the policy sent with every file', () => {
    expect(CONTENT_SECURITY_POLICY).toContain("require-trusted-types-for 'script'")
    expect(CONTENT_SECURITY_POLICY).toContain("trusted-types 'none'")
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe-(inline|eval)/)
  })
})
