import { expect, test } from 'vitest'
import { isOverVisitLimit } from '../../../db/domain/withdrawal/visit-limit.ts'

test.each([
  [3, 3, 'to-grow', false],
  [4, 3, 'to-grow', true],
  [4, 3, 'to-return', true],
  [4, null, 'to-grow', false],
  [4, 3, 'to-test', false],
] as const)('%i packets under a limit of %s, %s: over it is %s', (packets, limit, purpose, over) => {
  expect(isOverVisitLimit(packets, limit, purpose)).toBe(over)
})
