import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { driftTo, type GenerationLot } from '../../../db/domain/needs/generations.ts'
import { message } from '../../../db/messages/message.ts'
import { inEnglish } from '../../builders/in-english.ts'

const lot = (
  lotId: number,
  generation: number,
  plants: number | null,
  ...parentLotIds: readonly number[]
): GenerationLot => ({ lotId, lotNumber: `QH-${lotId}`, generation, plants, parentLotIds })

const told = (...of: Parameters<typeof driftTo>) => inEnglish<readonly Told[]>(driftTo(...of).told).join(' ')

const lineOf = (lotId: number, lots: readonly GenerationLot[]) =>
  driftTo(lotId, lots, 20).line.map((each) => each.lotId)

describe('the generations that led to a lot', () => {
  test('are told from the first grown here to the latest', () => {
    const lots = [lot(1, 0, null), lot(2, 1, 40, 1), lot(3, 2, 10, 2)]
    const { line, effective } = driftTo(3, lots, 20)
    expect(line.map(({ lotId }) => lotId)).toEqual([2, 3])
    expect(effective).toBe(16)
    expect(told(3, lots, 20)).toBe(
      'Over 2 generations of 40 and 10 plants it behaves like 16 plants in each: 2 / (1/40 + 1/10). ' +
        'About 94\u00a0% of its variation is left, if its plants cross freely. ' +
        'That is fewer than the 20 wanted: grow more plants next time.',
    )
  })

  test('go the narrowest way where seed of several lots was sown; what was not noted is taken for wide', () => {
    const lots = [lot(2, 1, 40), lot(3, 1, 12), lot(4, 1, null), lot(5, 2, 30, 2, 4, 3)]
    expect(lineOf(5, lots)).toEqual([3, 5])
    expect(lineOf(5, [lot(2, 1, 12), lot(3, 1, 40), lot(5, 2, 30, 2, 3)])).toEqual([2, 5])
  })

  test('count a lot that was only split or joined once, by the plants that were noted', () => {
    expect(lineOf(3, [lot(1, 0, null), lot(2, 1, 25, 1), lot(3, 1, null, 2)])).toEqual([2])
    expect(lineOf(3, [lot(1, 0, null), lot(2, 1, 25, 1), lot(3, 1, 30, 2)])).toEqual([3])
  })

  test('end where a parent is not in the book, and at a lot that would be its own ancestor', () => {
    expect(lineOf(3, [lot(3, 2, 30, 99)])).toEqual([3])
    expect(lineOf(3, [lot(2, 1, 30, 3), lot(3, 2, 30, 2)])).toEqual([2, 3])
    expect(lineOf(9, [lot(1, 1, 5)])).toEqual([])
  })
})

describe('what is said', () => {
  test('of a lot that came in from elsewhere', () => {
    expect(driftTo(1, [lot(1, 0, 5)], 20)).toEqual({
      line: [],
      effective: null,
      told: [message('needs.not-grown')],
    })
  })

  test('where nobody noted the plants', () => {
    const lots = [lot(1, 0, null), lot(2, 1, null, 1)]
    const { effective, line } = driftTo(2, lots, 20)
    expect([effective, line.length]).toEqual([null, 1])
    expect(told(2, lots, 20)).toMatch(/^Nobody noted how many plants .* at Take back\.$/)
  })

  test('of one generation, with a figure after the point below ten and no warning where it is enough', () => {
    expect(told(2, [lot(2, 1, 20)], 20)).toBe(
      'Over one generation of 20 plants it behaves like 20 plants in each: 1 / (1/20). ' +
        'About 98\u00a0% of its variation is left, if its plants cross freely.',
    )
    expect(told(3, [lot(2, 1, 4), lot(3, 2, 30, 2)], 5)).toContain('behaves like 7.1 plants in each')
  })

  test('of generations that were not noted', () => {
    const lots = [lot(1, 1, null), lot(2, 2, 30, 1), lot(3, 3, null, 2)]
    expect(told(2, lots, 20)).toContain('One generation is not noted.')
    expect(told(3, lots, 20)).toContain('2 generations are not noted.')
    expect(driftTo(3, lots, 20).effective).toBe(30)
  })
})
