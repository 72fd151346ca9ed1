import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { en } from '../../db/messages/en/index.ts'
import { es } from '../../db/messages/es/index.ts'
import { GLOSSARY_WORDS } from '../../db/messages/glossary.ts'

const page = readFileSync(join(import.meta.dirname, '../../docs/languages/glossary.md'), 'utf8')
const table = page
  .split('\n')
  .filter((line) => line.startsWith('| '))
  .slice(1)
  .map((line) => line.slice(2, -2).split(' | '))

it('explains the same words in the app and in docs/languages/glossary.md', () => {
  const app = GLOSSARY_WORDS.map((word) => [
    en[`glossary.word.${word}`].text,
    en[`glossary.means.${word}`].text,
    es[`glossary.word.${word}`],
    es[`glossary.means.${word}`],
  ])
  const inOrder = (rows: string[][]) => rows.map((row) => row.join(' | ')).toSorted()
  expect(inOrder(table.map((row) => row.slice(0, 4)))).toEqual(inOrder(app))
})

it('says of every word where it comes from', () => {
  expect(table.filter((row) => row.length !== 5 || row[4] === '')).toEqual([])
})
