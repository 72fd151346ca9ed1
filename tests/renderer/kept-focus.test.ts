import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const RENDERER = join(import.meta.dirname, '..', '..', 'renderer')

/** A browser takes the focus from what is disabled while it has it: only a box that another box switches off may be. */
test('nothing that is pressed is switched off in a way that loses the focus', () => {
  const disabled = globSync('**/*.tsx', { cwd: RENDERER }).flatMap((file) =>
    [
      ...readFileSync(join(RENDERER, file), 'utf8').matchAll(
        /<(\w+)((?:(?!<\w)[\s\S])*?)\sdisabled(?:=|\s*\/?>)/g,
      ),
    ]
      .filter(([, tag = '', before = '']) => tag !== 'input' || !before.includes('type="checkbox"'))
      .map(([, tag]) => `${file}: ${tag}`),
  )
  expect(disabled).toEqual([])
})
