import { describe, expect, it } from 'vitest'
import { readAmount } from '../../../db/domain/amounts/read-amount.ts'
import { COUNTED_UNITS } from '../../../db/domain/crops/counted-unit.ts'
import { isPiece, keptUntil } from '../../../db/domain/crops/pieces.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { judgeNeed } from '../../../db/domain/needs/need.ts'
import { message } from '../../../db/messages/message.ts'
import { needFacts } from '../../builders/domain-values.ts'
import { inEnglish } from '../../builders/in-english.ts'

const PIECES = COUNTED_UNITS.filter(isPiece)

it('are cloves, bulbs and tubers', () => {
  expect(PIECES).toEqual(['clove', 'bulb', 'tuber'])
})

it('keep so many months, and eight where nobody knows', () => {
  const harvested = isoDate('2025-10-01')
  expect(keptUntil(harvested, 6)).toBe('2026-04-02')
  expect(keptUntil(harvested, null)).toBe(keptUntil(harvested, 8))
})

it('are due every year, however many there are, and at rescue where they are too few for one planting', () => {
  for (const unit of PIECES)
    for (const [about, state] of [
      [9, 'rescue'],
      [10, 'regrow'],
      [40_000, 'regrow'],
    ] as const) {
      const living = { about, low: about, high: about, total: about }
      const need = judgeNeed(needFacts({ living, unit, policy: { regrowings: 1, plants: 10, emergence: 1 } }))
      expect([need.state, need.keep]).toEqual([state, 10])
    }
})

describe('amounts of them', () => {
  it.each([
    ['60 cloves', 60],
    ['60 dientes', 60],
    ['3 bulbs', 3],
    ['un bulbo', null],
    ['3 bulbos', 3],
    ['12 tubers', 12],
    ['12 tubérculos', 12],
    ['5 pieces', 5],
  ])('%s', (typed, count) => {
    const read = readAmount(typed, { packetSeeds: null })
    expect(read.kind === 'amount' && read.amount.kind === 'count' ? read.amount.count : null).toBe(count)
  })

  it('are told by their own word in the singular and the plural', () => {
    for (const unit of PIECES)
      expect([1, 3].map((count) => inEnglish(message('amount.seeds', { count, unit })))).toEqual([
        `1 ${unit}`,
        `3 ${unit}s`,
      ])
  })

  it.each(['3 cuttings', '3 esquejes', '2 plants', '1 púa'])('%s is not in this book', (typed) => {
    const read = readAmount(typed, { packetSeeds: null })
    expect(read.kind === 'unreadable' && inEnglish(read.because)).toMatch(/this book has only seed, cloves/)
  })
})
