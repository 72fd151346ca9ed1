import { expect, test } from 'vitest'
import { nearTests } from './near-tests.ts'

const tests = [
  { path: 'tests/services/stocktake.test.ts', text: "import { aCollection } from '../builders/a.ts'" },
  { path: 'tests/domain/weights/count.test.ts', text: "import { x } from '../../../db/domain/weights/w.ts'" },
  { path: 'tests/services/people.test.ts', text: "import { aCollection } from '../builders/a.ts'" },
]

test.each([
  [
    'one that is called like the file',
    'db/services/stock/stocktake.ts',
    ['tests/services/stocktake.test.ts'],
  ],
  ['one that imports it', 'db/domain/weights/w.ts', ['tests/domain/weights/count.test.ts']],
  ['a changed test', 'tests/services/people.test.ts', ['tests/services/people.test.ts']],
  ['none of the others', 'db/services/print/letters.ts', []],
])('finds %s', (_, changed, found) => {
  expect(nearTests([changed], tests)).toEqual(found)
})
