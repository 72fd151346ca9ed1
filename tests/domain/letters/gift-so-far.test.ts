import { expect, test } from 'vitest'
import { type GiftSoFar, sofarInWords } from '../../../db/domain/letters/gift-so-far.ts'

const NOTHING: GiftSoFar = { takers: 0, packets: 0, regrown: 0, sprouted: null, tested: null }

test.each<[Partial<GiftSoFar>, string]>([
  [{}, ''],
  [{ packets: 1 }, 'So far, once seed of it went out.'],
  [{ packets: 3 }, 'So far, 3 times seed of it went out.'],
  [{ packets: 3, takers: 1 }, 'So far, one person took seed of it.'],
  [{ packets: 3, takers: 2 }, 'So far, 2 people took seed of it.'],
  [{ regrown: 1 }, 'So far, it was grown again and seed came back once.'],
  [{ regrown: 2 }, 'So far, it was grown again and seed came back 2 times.'],
  [{ tested: 50, sprouted: 0 }, 'So far, of 50 seeds tested last, 0 sprouted.'],
  [{ tested: 50 }, ''],
  [{ sprouted: 5 }, ''],
  [
    { packets: 2, takers: 2, regrown: 1 },
    'So far, 2 people took seed of it, and it was grown again and seed came back once.',
  ],
  [
    { packets: 2, takers: 2, regrown: 1, tested: 50, sprouted: 41 },
    'So far, 2 people took seed of it, it was grown again and seed came back once, and of 50 seeds tested last, 41 sprouted.',
  ],
])('what became of a gift: %j', (changes, sentence) => {
  expect(sofarInWords({ ...NOTHING, ...changes })).toBe(sentence)
})
