import { expect, test } from 'vitest'
import { type CautionKind, cautionText } from '../../../db/domain/cautions/caution-text.ts'

test('treated seed names what it was treated with, and warns against eating it either way', () => {
  expect(cautionText('treated', ' thiram ')).toBe('TREATED with thiram. Do not use for food, feed or oil.')
  expect(cautionText('treated', '')).toBe('TREATED. Do not use for food, feed or oil.')
})

test.each<[CautionKind, RegExp]>([
  ['toxic', /POISONOUS IF EATEN.*children and animals/],
  ['pests-seen', /Do not pass on until checked/],
  ['regulated', /local seed authority/],
  ['protected-variety', /right holder/],
])('%s says what to do, and that the note does not replace it', (caution, words) => {
  expect(cautionText(caution, 'a note')).toMatch(words)
  expect(cautionText(caution, '')).toBe(cautionText(caution, 'a note'))
})
