import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import type { Amount } from '../../../db/domain/amounts/amount.ts'
import { massInWords, massToType } from '../../../db/domain/amounts/in-words.ts'
import { type AmountChoice, type AmountReading, readAmount } from '../../../db/domain/amounts/read-amount.ts'
import { anyManner, anyMass, counted, guessed, weighed } from '../../builders/domain-values.ts'
import { inEnglish } from '../../builders/in-english.ts'

/** What is answered, as somebody who reads English is told it. */
function told(answer: AmountReading & { readonly choices?: readonly AmountChoice[] }): unknown {
  const { choices, ...rest } = answer
  const offered = choices === undefined ? {} : { choices: choices.map((choice) => choice.told) }
  return inEnglish<unknown>({ ...rest, ...offered } as never)
}

const OF_25 = { packetSeeds: 25 }
const UNKNOWN = { packetSeeds: null }

describe('amounts that read one way', () => {
  test.each<[string, Amount]>([
    ['12g', weighed(12_000)],
    ['12 g', weighed(12_000)],
    ['12,5 g', weighed(12_500)],
    ['12.5 Grams', weighed(12_500)],
    ['  340mg ', weighed(340)],
    ['12 500 mg', weighed(12_500)],
    ["1'200 g", weighed(1_200_000)],
    ['0.234 g', weighed(234)],
    ['1.2340 g', weighed(1_234)],
    ['2 gr.', weighed(2_000)],
    ['1/2 oz', weighed(14_175)],
    ['1½ oz', weighed(42_524)],
    ['½oz', weighed(14_175)],
    ['2 lb 3 oz', weighed(992_233)],
    ['1lb, 1/2 oz', weighed(467_767)],
    ['2 pounds and 3 ounces', weighed(992_233)],
    ['1 kg 250 g', weighed(1_250_000)],
    ['2 lbs', weighed(907_185)],
    ['1.5 kg', weighed(1_500_000)],
    ['1,230 kg', weighed(1_230_000)],
    ['１２ｇ', weighed(12_000)],
    ['1 mg', weighed(1)],
    ['100 kg', weighed(100_000_000)],
    ['30 seeds', counted(30)],
    ['30 SEEDS', counted(30)],
    ['1 bean', counted(1)],
    ['40 clusters', counted(40)],
    ['12 fruits', counted(12)],
    ['1.234 seeds', counted(1_234)],
    ['1,000 seeds', counted(1_000)],
    ['1.234 seeds', counted(1_234)],
    ['1,000 seeds', counted(1_000)],
    ['100 000 000 seeds', counted(100_000_000)],
    ['about 200', guessed(200)],
    ['about 1,200', guessed(1_200)],
    ['~200 seeds', guessed(200)],
    ['ca. 200', guessed(200)],
    ['c.200 seeds', guessed(200)],
    ['≈ 50', guessed(50)],
    ['roughly 50 beans', guessed(50)],
    ['30 semillas', counted(30)],
    ['unas 200', guessed(200)],
  ])('%s', (typed, amount) => {
    expect(readAmount(typed, OF_25)).toEqual({ kind: 'amount', amount })
  })
})

describe('packets', () => {
  test.each<[string, number, number, Amount]>([
    ['3 packets of 25', 3, 25, counted(75)],
    ['3 pkts x 25 seeds', 3, 25, counted(75)],
    ['1 packet of 20 beans', 1, 20, counted(20)],
    ['4 envelopes of 10 each', 4, 10, counted(40)],
    ['2 packets @ 1,000', 2, 1_000, counted(2_000)],
    ['about 3 packets of 25', 3, 25, guessed(75)],
    ['3 packets of about 25', 3, 25, guessed(75)],
    ['３ packets of ２５', 3, 25, counted(75)],
    ['3 sobres de 25 semillas', 3, 25, counted(75)],
  ])('%s', (typed, packets, each, amount) => {
    expect(readAmount(typed, UNKNOWN)).toEqual({ kind: 'amount', amount, packets: { packets, each } })
  })

  test.each([
    '3 packets of 2.5',
    '1.5 packets',
    '1/2 packet',
    '2 packets of 5 g',
    '0 packets of 25',
    '3 packets of 0',
  ])('%s asks for whole numbers', (typed) => {
    expect(told(readAmount(typed, OF_25))).toMatchObject({
      kind: 'unreadable',
      because: expect.stringContaining('3 packets of 25'),
    })
  })

  test('packets without a size ask for it, and offer the usual size where it is known', () => {
    expect(told(readAmount('1 packet', OF_25))).toEqual({
      kind: 'ask',
      question: 'How many seeds are in each packet?',
      choices: ['1 packet of 25'],
    })
    expect(told(readAmount('about 2 packs', OF_25))).toEqual({
      kind: 'ask',
      question: 'How many seeds are in each of the 2 packets?',
      choices: ['about 2 packets of 25'],
    })
    expect(readAmount('2 packets', UNKNOWN)).toMatchObject({ kind: 'ask', choices: [] })
    expect(readAmount('100000000 packets', UNKNOWN)).toMatchObject({ kind: 'ask', choices: [] })
  })
})

describe('what can be meant two ways asks', () => {
  test.each<[string, string, string[]]>([
    ['1.234 g', 'Is ‘1.234’ 1234 or 1.234?', ['1234 g', '1.2340 g']],
    ['1,230 oz', 'Is ‘1,230’ 1230 or 1.23?', ['1230 oz', '1.23 oz']],
    ['12,500 mg', 'Is ‘12,500’ 12500 or 12.5?', ['12500 mg', '12.5 mg']],
    ['1,234', 'Is ‘1,234’ 1234 or 1.234?', ['1234 seeds', '1234 g', '1.2340 g']],
    ['1,000', 'Is ‘1,000’ 1000 or 1?', ['1000 seeds', '1000 g', '1 g']],
    ['200', '‘200’ of what?', ['200 g', '200 seeds']],
    ['12.5', '‘12.5’ of what?', ['12.5 g']],
    ['9/8', '‘9/8’ of what?', ['9/8 g']],
    ['12 500', '‘12 500’ of what?', ['12 500 g', '12 500 seeds']],
    ['about 12 g', 'Did you weigh that? Type a guess as a number of seeds: about 200.', ['12 g']],
    ['about 1,234 g', 'Is ‘1,234’ 1234 or 1.234?', ['1234 g', '1.2340 g']],
    ['about 1,234 kg', 'Is ‘1,234’ 1234 or 1.234?', ['1.2340 kg']],
  ])('%s', (typed, question, choices) => {
    expect(told(readAmount(typed, OF_25))).toEqual({ kind: 'ask', question, choices })
  })
})

describe('the decimal mark of the library', () => {
  test.each([
    ['3.141 g', '.', 3_141],
    ['3,141 g', ',', 3_141],
    ['1.250 kg', '.', 1_250_000],
  ] as const)('settles %s where it is %s', (typed, decimalMark, mass) => {
    expect(readAmount(typed, { packetSeeds: null, decimalMark })).toMatchObject({
      amount: { kind: 'mass', mass },
    })
  })

  test.each([
    ['3,141 g', '.'],
    ['3.141 g', ','],
    ['3.141', '.'],
  ] as const)('leaves %s a question where it is %s', (typed, decimalMark) => {
    expect(readAmount(typed, { packetSeeds: null, decimalMark }).kind).toBe('ask')
  })
})

describe('what cannot be read says what to do', () => {
  test.each([
    ['', 'Type how much there is'],
    ['   ', 'Type how much there is'],
    ['-3 g', 'cannot be below zero'],
    ['−3 g', 'cannot be below zero'],
    ['–3 seeds', 'cannot be below zero'],
    ['0', 'Zero is not an amount'],
    ['0 g', 'Zero is not an amount'],
    ['0 seeds', 'Zero is not an amount'],
    ['about 0', 'Zero is not an amount'],
    ['0.3 mg', 'less than a milligram'],
    ['2.5 seeds', 'whole numbers'],
    ['about 1/2', 'whole numbers'],
    ['101 kg', 'More than 100 kg'],
    [`${'9'.repeat(30)} g`, 'More than 100 kg'],
    ['100000001 seeds', 'look like a mistake'],
    ['100000000 packets', 'look like a mistake'],
    ['9'.repeat(30), 'More than 100 kg'],
    ['5 stone', 'The app does not know the unit ‘stone’'],
    ['1.2.3 g', '‘1.2.3’ is not a number'],
    ['1/0 oz', '‘1/0’ is not a number'],
    ['NaN', 'is not an amount'],
    ['Infinity g', 'is not an amount'],
    ['1e3 g', 'is not an amount'],
    ['🌱 30', '‘🌱 30’ is not an amount'],
    ['10² seeds', 'is not an amount'],
    ['packet of 25', 'is not an amount'],
    ['3 boxes of 25', 'is not an amount'],
    ['100-150 seeds', 'is not an amount'],
    ['a handful', '‘a handful’ is not an amount'],
  ])('%s', (typed, because) => {
    expect(told(readAmount(typed, OF_25))).toEqual({
      kind: 'unreadable',
      because: expect.stringContaining(because),
    })
  })
})

/** Texts that look like amounts, right and wrong ones. */
const likely = fc
  .tuple(
    fc.constantFrom('', '', '', 'about ', '~', 'ca. ', '-'),
    fc.oneof(
      fc.nat(20_000).map(String),
      fc
        .tuple(fc.nat(2_000), fc.constantFrom('.', ',', ' ', "'", '/'), fc.stringMatching(/^\d{1,4}$/))
        .map((p) => p.join('')),
      fc.constantFrom('½', '1½', '9/8', '100000001', '9'.repeat(22), '1,234,567', '1.234.567,8', '0'),
    ),
    fc.constantFrom('', ' ', '  '),
    fc.constantFrom(
      '',
      'g',
      'mg',
      'kg',
      'oz',
      'lb',
      'seeds',
      'beans',
      'packets',
      'packets of 25',
      'packets of',
      'stone',
      'g.',
    ),
  )
  .map((parts) => parts.join(''))

test('every choice that is offered reads one way, and the choices differ', () => {
  fc.assert(
    fc.property(likely, fc.constantFrom(null, 1, 25, 5_000), (typed, packetSeeds) => {
      const reading = readAmount(typed, { packetSeeds })
      if (reading.kind !== 'ask') return
      const readings = reading.choices.map(({ typed }) => readAmount(typed, { packetSeeds }))
      expect(readings.map(({ kind }) => kind)).toEqual(readings.map(() => 'amount'))
      expect(new Set(readings.map((choice) => JSON.stringify(choice))).size).toBe(readings.length)
      if (packetSeeds !== null) expect(reading.choices.length).toBeGreaterThan(0)
    }),
    { numRuns: 5_000 },
  )
})

test('whatever is typed is read, asked about or refused with a sentence, and never thrown at', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), likely), (typed) => {
      const reading = readAmount(typed, OF_25)
      if (reading.kind === 'amount') {
        const { amount } = reading
        const value = amount.kind === 'mass' ? amount.mass : amount.count
        expect(Number.isSafeInteger(value) && value > 0).toBe(true)
      } else {
        const sentence = inEnglish<Told>(reading.kind === 'ask' ? reading.question : reading.because)
        expect(sentence).toMatch(/[.?]$/)
        expect(sentence).not.toMatch(/error|undefined|NaN(?!')/i)
      }
    }),
    { numRuns: 5_000 },
  )
})

test('a mass written to be typed reads back as exactly it, however the library writes', () => {
  fc.assert(
    fc.property(anyMass, anyManner, (mass, manner) => {
      expect(readAmount(massInWords(mass, manner), UNKNOWN).kind).not.toBe('unreadable')
      expect(readAmount(massToType(mass, manner), UNKNOWN)).toEqual({ kind: 'amount', amount: weighed(mass) })
    }),
    { numRuns: 2_000 },
  )
})

test('the decimal mark does not matter, nor the width of the digits', () => {
  const mark = fc.constantFrom('.', ',')
  fc.assert(
    fc.property(
      fc.nat(999),
      fc.stringMatching(/^\d{1,4}$/),
      mark,
      fc.constantFrom('mg', 'g', 'oz'),
      (a, b, m, unit) => {
        const typed = `${a}${m}${b} ${unit}`
        const wide = typed.replace(/[0-9]/g, (digit) => String.fromCharCode(digit.charCodeAt(0) + 0xfee0))
        const other = `${a}${m === '.' ? ',' : '.'}${b} ${unit}`
        const comparable = (text: string) => {
          const reading = readAmount(text, UNKNOWN)
          return reading.kind === 'ask'
            ? reading.choices
            : reading.kind === 'amount'
              ? reading.amount
              : reading.kind
        }
        expect(comparable(wide)).toEqual(comparable(typed))
        expect(comparable(other)).toEqual(comparable(typed))
      },
    ),
  )
})
