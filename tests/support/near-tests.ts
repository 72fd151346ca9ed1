import { basename, dirname, normalize } from 'node:path'

/** A file of tests: its path in the project, and its text. */
export interface TestFile {
  readonly path: string
  readonly text: string
}

const IMPORTED = /from '(\.{1,2}\/[^']+)'/g

/**
 * The tests nearest to some changed files of the project: changed ones, those that import a changed file themselves,
 * and those that are called like one.
 *
 * Nearly every test of a service loads all services, so what a change can touch at all is nearly everything.
 */
export function nearTests(changed: readonly string[], tests: readonly TestFile[]): string[] {
  const touched = new Set(changed)
  const names = new Set(changed.map((path) => basename(path).replace(/\.[a-z.]+$/, '')))
  return tests
    .filter(({ path, text }) => {
      if (touched.has(path) || names.has(basename(path, '.test.ts'))) return true
      return [...text.matchAll(IMPORTED)].some(([, from = '']) =>
        touched.has(normalize(`${dirname(path)}/${from}`)),
      )
    })
    .map(({ path }) => path)
}
