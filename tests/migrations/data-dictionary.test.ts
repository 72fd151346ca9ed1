import { readFileSync } from 'node:fs'
import { getTableColumns, getTableName } from 'drizzle-orm'
import { expect, it } from 'vitest'
import { tables } from '../../db/schema/tables.ts'

it('explains every table and column of the file, and none that is not there', () => {
  const page = readFileSync(new URL('../../docs/data-dictionary.md', import.meta.url), 'utf8')
  const explained = page
    .split(/^## /m)
    .slice(1)
    .map((section) => [
      section.split('\n')[0],
      [...section.matchAll(/^\| ([a-z_]+) \|/gm)].map((match) => match[1]),
    ])
  const inCode = Object.values(tables).map((table) => [
    getTableName(table),
    Object.values(getTableColumns(table)).map((column) => column.name),
  ])
  const sorted = (pairs: unknown[][]) =>
    Object.fromEntries(
      pairs.map(([name, columns]) => [
        name,
        (columns as string[]).filter((c) => c !== 'holds_seed').toSorted(),
      ]),
    )
  expect(sorted(explained)).toEqual(sorted(inCode))
})
