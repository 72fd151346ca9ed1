import { expect, test } from 'vitest'
import { COUNTED_UNITS, countedUnit } from '../../../db/domain/crops/counted-unit.ts'
import { readCropTable } from '../../../db/migrations/crop-table.ts'

test('one is counted, or many', () => {
  expect(COUNTED_UNITS.map(countedUnit)).toEqual([
    { one: 'seed', many: 'seeds' },
    { one: 'cluster', many: 'clusters' },
    { one: 'fruit', many: 'fruits' },
    { one: 'clove', many: 'cloves' },
    { one: 'bulb', many: 'bulbs' },
    { one: 'tuber', many: 'tubers' },
  ])
})

test('beet and chard are counted in clusters, coriander in fruits, what is planted in pieces, every other crop of the table in seeds', () => {
  const others = readCropTable().filter(({ countedUnit: unit }) => unit !== 'seed')
  expect(Object.fromEntries(others.map(({ id, countedUnit: unit }) => [id, unit]))).toEqual({
    beet: 'cluster',
    chard: 'cluster',
    coriander: 'fruit',
    garlic: 'clove',
    shallot: 'bulb',
    potato: 'tuber',
  })
})
