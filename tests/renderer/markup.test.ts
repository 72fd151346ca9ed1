import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const RENDERER = join(import.meta.dirname, '..', '..', 'renderer')
const SOURCES = globSync('**/*.tsx', { cwd: RENDERER }).map(
  (file) => [file, readFileSync(join(RENDERER, file), 'utf8')] as const,
)

/** Where a pattern is found in the sources of the window, each with its file. */
function found(pattern: RegExp): readonly string[] {
  return SOURCES.flatMap(([file, text]) => [...text.matchAll(pattern)].map(([at]) => `${file}: ${at}`))
}

test('every table says what it is', () => {
  const unnamed = SOURCES.flatMap(([file, text]) =>
    [...text.matchAll(/<(?:table|RowTable)\b[\s\S]*?(?:<(?:thead|tbody|caption)|columns=)/g)]
      .filter(([head]) => !/label=|<caption|caption=/.test(head))
      .map(([head]) => `${file}: ${head}`),
  )
  expect(found(/<(?:table|RowTable)\b/g).length).toBeGreaterThan(10)
  expect(unnamed).toEqual([])
})

test('no heading holds a button, whose word would be read as a part of it', () => {
  expect(found(/<h[1-6]\b(?:(?!<\/h[1-6]>)[\s\S])*?<(?:button|ActionButton)/g)).toEqual([])
})

test('every card names the window', () => {
  expect(found(/<article\b/g)).toEqual(['shared/panes/card.tsx: <article'])
})
