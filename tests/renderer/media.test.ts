import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const RENDERER = join(import.meta.dirname, '..', '..', 'renderer')

/** Letters that are larger by the keeper's own setting need the narrower layout sooner: px does not know of them. */
test('no layout turns at a width or height in px', () => {
  const inPx = globSync('**/*.{css,ts,tsx}', { cwd: RENDERER }).flatMap((file) =>
    [...readFileSync(join(RENDERER, file), 'utf8').matchAll(/(?:@media|matchMedia)[^{;\n]*\d+px/g)].map(
      ([condition]) => `${file}: ${condition}`,
    ),
  )
  expect(inPx).toEqual([])
})
