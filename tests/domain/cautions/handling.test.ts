import { expect, it } from 'vitest'
import { handlingOf, handlingTold } from '../../../db/domain/cautions/handling.ts'
import { CAUTION_RULES } from '../../../db/domain/cautions/inheritance.ts'
import { CAUTION_KINDS } from '../../../db/domain/shared/closed-sets.ts'

it.each(CAUTION_KINDS)(
  'says how seed with the caution %s is handled exactly where its rule says with care',
  (kind) => {
    for (const doing of ['test', 'discard'] as const) {
      expect(handlingOf(kind, doing) !== null).toBe(CAUTION_RULES[kind][doing] === 'with-care')
    }
  },
)

it('says each once', () => {
  expect(
    handlingTold(['toxic', 'treated', 'toxic', 'possible-cross'], 'discard').map(({ id }) => id),
  ).toEqual(['handling.discard-toxic', 'handling.discard-treated'])
})
