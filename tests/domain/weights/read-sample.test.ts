import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { weightStatistics } from '../../../db/domain/weights/hundred-seed-weight.ts'
import { readSample } from '../../../db/domain/weights/read-sample.ts'
import { aSample } from '../../builders/domain-values.ts'
import { inEnglish } from '../../builders/in-english.ts'

/** What is answered, as somebody who reads English is told it. */
function told(answer: unknown): unknown {
  return inEnglish<unknown>(answer as never)
}

describe('samples that read one way', () => {
  test.each([
    ['25 weigh 6.10 g', 25, 6_100],
    ['25 pesan 6,10 g', 25, 6_100],
    ['25 seeds weigh 6,10 g', 25, 6_100],
    ['25 beans weighed 6.1g', 25, 6_100],
    ['100 seeds = 2,5 g', 100, 2_500],
    ['100 seeds= 2.5 g', 100, 2_500],
    ['50: 1.2g', 50, 1_200],
    ['50 are 1200 mg', 50, 1_200],
    ['1,000 weigh 3.2 g', 1_000, 3_200],
    ['1 000 WEIGH 1/4 oz.', 1_000, 7_087],
    ['２５ weigh ６．１ｇ', 25, 6_100],
    ['25 weigh 6.102 g', 25, 6_102],
    ['25 weigh 6,102 g', 25, 6_102],
    ['200 weigh 1.234 g', 200, 1_234],
    ['100 weigh 0.294 g', 100, 294],
    ['1 weighs 20 g', 1, 20_000],
    ['1000 weigh 0.5 mg', 1_000, 1],
    ['100000 weigh 1 mg', 100_000, 1],
    ['100 weigh 100 kg', 100, 100_000_000],
  ])('%s', (typed, seeds, mg) => {
    expect(readSample(typed)).toEqual({ kind: 'sample', sample: aSample(seeds, mg) })
  })
})

test('nothing typed is no sample', () => {
  expect(readSample('')).toEqual({ kind: 'empty' })
  expect(readSample('  ')).toEqual({ kind: 'empty' })
})

describe('what cannot be read says what to do', () => {
  test.each([
    ['25', 'Type a sample as'],
    ['6.10 g', 'Type a sample as'],
    ['a few weigh 6 g', 'Type a sample as'],
    ['0 weigh 6 g', 'Type a sample as'],
    ['2.5 weigh 6 g', 'Type a sample as'],
    ['25 weigh', 'Type a sample as'],
    ['25 weigh about 6 g', 'Type a sample as'],
    ['25 weigh -6 g', 'Type a sample as'],
    ['25 weigh 6.10', 'with its unit'],
    ['25 weigh 30 seeds', 'with its unit'],
    ['25 weigh 6 stone', 'with its unit'],
    ['25 weigh 0 g', 'cannot weigh that'],
    ['25 weigh 0.4 mg', 'cannot weigh that'],
    ['25 weigh 101 kg', 'cannot weigh that'],
    ['200000 weigh 1 mg', 'cannot weigh that'],
    ['200 weigh 1.000 g', 'Is the weight 1000 or 1? Type it as 1000 g or 1 g.'],
    ['1000 weigh 1.234 g', 'Is the weight 1234 or 1.234? Type it as 1234 g or 1.2340 g.'],
    ['2000 weigh 1,230 g', 'Is the weight 1230 or 1.23? Type it as 1230 g or 1.23 g.'],
  ])('%s', (typed, because) => {
    expect(told(readSample(typed))).toEqual({ kind: 'unreadable', because: expect.stringContaining(because) })
  })

  test('what it says to type can be typed', () => {
    expect(readSample('1000 weigh 1234 g')).toMatchObject({ sample: aSample(1_000, 1_234_000) })
    expect(readSample('1000 weigh 1.2340 g')).toMatchObject({ sample: aSample(1_000, 1_234) })
  })
})

test('every sample that is read gives a hundred-seed weight', () => {
  const typed = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc
      .tuple(
        fc.nat(),
        fc.constantFrom(' weigh ', ': ', '='),
        fc.double({ min: 0, max: 1e9, noNaN: true }),
        fc.constantFrom('', ' mg', ' g', ' kg', ' lb'),
      )
      .map((parts) => parts.join('')),
  )
  fc.assert(
    fc.property(typed, (text) => {
      const reading = readSample(text)
      if (reading.kind === 'sample')
        expect(weightStatistics([reading.sample]).hundredSeedWeight).toBeGreaterThan(0)
    }),
    { numRuns: 2_000 },
  )
})
