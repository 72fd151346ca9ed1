import { expect, test } from 'vitest'
import {
  type BenchStep,
  countOf,
  countsTyped,
  emptyBench,
  isBlankBench,
  NOTHING_TYPED,
  stepBench,
} from '../../renderer/screens/germination/bench-draft.ts'

const typed = (testId: number, cell: string): BenchStep => ({
  kind: 'typed',
  testId,
  change: { cells: { 'normal.0': cell } },
})

test('keeps the counts of several tests apart, and one is let go without the others', () => {
  const draft = [typed(4, '21'), typed(9, '7')].reduce(stepBench, emptyBench())
  expect([countOf(draft, 4).cells['normal.0'], countOf(draft, 9).cells['normal.0']]).toEqual(['21', '7'])
  const after = stepBench(draft, { kind: 'discard', testId: 4 })
  expect(countOf(after, 4)).toEqual(NOTHING_TYPED)
  expect(countOf(after, 9).cells['normal.0']).toBe('7')
})

test('a change of the day leaves the cells, and a day alone is nothing to keep', () => {
  const day: BenchStep = { kind: 'typed', testId: 4, change: { on: '2026-03-14' } }
  expect(isBlankBench(stepBench(emptyBench(), day))).toBe(true)
  const draft = [typed(4, '21'), day].reduce(stepBench, emptyBench())
  expect(countOf(draft, 4)).toEqual({ on: '2026-03-14', cells: { 'normal.0': '21' } })
  expect(countsTyped(draft)).toBe(1)
})

test('a cell that was emptied again is nothing to keep', () => {
  expect(isBlankBench([typed(4, '2'), typed(4, ' ')].reduce(stepBench, emptyBench()))).toBe(true)
})
