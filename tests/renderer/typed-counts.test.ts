import { expect, test } from 'vitest'
import { DRAWING, sproutScale, sproutsTold } from '../../renderer/screens/germination/sprouts.ts'
import {
  cellsOf,
  cellsShown,
  readCells,
  stillThere,
} from '../../renderer/screens/germination/typed-counts.ts'
import { saidInEnglish } from '../builders/in-english.ts'

const NONE = { normal: 0, abnormal: 0, hard: 0, fresh: 0, dead: 0 }

test('an empty cell is none, and a cell that is no whole number is named', () => {
  expect(readCells({ 'normal.0': '17', 'dead.1': ' 3 ' }, 2)).toEqual({
    tallies: [
      { ...NONE, normal: 17 },
      { ...NONE, dead: 3 },
    ],
  })
  expect(readCells({ 'hard.1': '2.5' }, 2)).toEqual({ unreadable: 'hard.1' })
})

test('a count put back into its cells reads as it was', () => {
  const tallies = [
    { ...NONE, normal: 17, hard: 2 },
    { ...NONE, fresh: 1 },
  ]
  expect(readCells(cellsOf(tallies), 2)).toEqual({ tallies })
})

test('a day that was counted shows its count until something is typed', () => {
  const counts = [{ on: '2026-03-05', day: 1, entryId: 1, replicates: [{ ...NONE, normal: 8 }] }]
  expect(cellsShown({}, counts, '2026-03-05')).toEqual({ 'normal.0': '8' })
  expect(cellsShown({}, counts, '2026-03-06')).toEqual({})
  expect(cellsShown({ 'normal.0': '' }, counts, '2026-03-05')).toEqual({ 'normal.0': '' })
})

test('what is still there leaves out the count of the day that is being typed', () => {
  const count = (on: string, normal: number) => ({
    on,
    day: 1,
    entryId: 1,
    replicates: [{ ...NONE, normal }],
  })
  const counted = {
    replicates: [{ sown: 20, tally: NONE }],
    counts: [count('2026-03-05', 8), count('2026-03-09', 5)],
  }
  expect(stillThere(counted, '2026-03-10')).toEqual([7])
  expect(stillThere(counted, '2026-03-09')).toEqual([12])
})

test('sprouts stand at their day, as tall as the part that had come up, and are read in words', () => {
  const test = {
    curve: [
      { day: 5, germinated: 246 },
      { day: 8, germinated: 341 },
    ],
    finalDay: 10,
    sown: 400,
  }
  const { days, sprouts, steps } = sproutScale(test)
  const { left, right, top, bottom } = DRAWING
  expect(days).toBe(10)
  expect(sprouts.map(({ x, y }) => [(x - left) / (right - left), (bottom - y) / (bottom - top)])).toEqual([
    [expect.closeTo(0.5, 10), expect.closeTo(0.615, 10)],
    [expect.closeTo(0.8, 10), expect.closeTo(0.8525, 10)],
  ])
  expect(steps).toBe('M44,174L294,174L294,78.06L444,78.06L444,41.01')
  expect(sproutsTold(test).map(saidInEnglish)).toEqual([
    'By day 5, 246 of 400 had sprouted (62 %)',
    'by day 8, 341 (85 %)',
  ])
  expect(sproutsTold({ ...test, curve: [] })).toEqual([])
})
