import { expect, test } from 'vitest'
import { cautionTold, harvestCaution } from '../../../db/domain/cautions/caution-text.ts'
import type { CautionKind } from '../../../db/domain/shared/closed-sets.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const cautionText = (caution: CautionKind, note: string) => saidInEnglish(cautionTold(caution, note))

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

test('a harvest waits for what holds of its plant, and to be told from what was left of treated seed', () => {
  const told = (caution: CautionKind, note: string) => saidInEnglish(harvestCaution(caution, note))
  expect(told('treated', ' thiram ')).toMatch(/^Grown from seed treated with thiram\. Check/)
  expect(told('treated', '')).toMatch(/^Grown from treated seed\. Check/)
  expect(told('pests-seen', '')).toMatch(/^Pests were seen in the seed it was grown from/)
  expect(told('toxic', '')).toBe(cautionText('toxic', ''))
})
