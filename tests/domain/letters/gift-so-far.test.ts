import { expect, test } from 'vitest'
import { type GiftSoFar, giftSoFar } from '../../../db/domain/letters/gift-so-far.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const NOTHING: GiftSoFar = { takers: 0, packets: 0, regrown: 0, sprouted: null, tested: null }

test.each<[Partial<GiftSoFar>, string[]]>([
  [{}, []],
  [{ packets: 1 }, ['So far seed of it went out once.']],
  [{ packets: 3 }, ['So far seed of it went out 3 times.']],
  [{ packets: 3, takers: 1 }, ['So far one person took seed of it.']],
  [{ packets: 3, takers: 2 }, ['So far 2 people took seed of it.']],
  [{ regrown: 1 }, ['It was grown again, and seed came back once.']],
  [{ regrown: 2 }, ['It was grown again, and seed came back 2 times.']],
  [{ tested: 50, sprouted: 0 }, ['Of 50 seeds tested last, 0 sprouted.']],
  [{ tested: 50 }, []],
  [{ sprouted: 5 }, []],
  [
    { packets: 2, takers: 2, regrown: 1, tested: 50, sprouted: 41 },
    [
      'So far 2 people took seed of it.',
      'It was grown again, and seed came back once.',
      'Of 50 seeds tested last, 41 sprouted.',
    ],
  ],
])('what became of a gift: %j', (changes, sentences) => {
  expect(giftSoFar({ ...NOTHING, ...changes }).map(saidInEnglish)).toEqual(sentences)
})
