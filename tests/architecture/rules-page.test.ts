import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { PAGE, rules, rulesPage } from './rules-page.ts'

test('docs/rules.md tells the rules as the code holds them: npm run rules writes it', () => {
  expect(readFileSync(PAGE, 'utf8')).toBe(rulesPage())
})

test('every rule says what it does', () => {
  expect(
    rules()
      .filter(({ says }) => says === '')
      .map(({ file, name }) => `${file} ${name}`),
  ).toEqual([])
})

test('the rules that a keeper asks for first are found by their trade names', () => {
  const names = new Set(rules().map(({ name }) => name))
  for (const name of [
    'oldestGoodLotFirst',
    'isOverVisitLimit',
    'packetSeeds',
    'isolationDistance',
    'plantsFor',
  ])
    expect(names).toContain(name)
})
