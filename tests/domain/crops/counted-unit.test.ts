import { expect, test } from 'vitest'
import { countedUnit } from '../../../db/domain/crops/counted-unit.ts'
import crops from '../../../db/reference/crops.json' with { type: 'json' }

test.each([
  ['beet', 'cluster', 'clusters'],
  ['chard', 'cluster', 'clusters'],
  ['coriander', 'fruit', 'fruits'],
  ['bean', 'seed', 'seeds'],
  ['no such crop', 'seed', 'seeds'],
])('of %s one counts a %s, many %s', (cropId, one, many) => {
  expect(countedUnit(cropId)).toEqual({ one, many })
})

test('the crops whose unit is not one seed are in the crop table', () => {
  const others = crops.map(({ id }) => id).filter((id) => countedUnit(id).one !== 'seed')
  expect(others.toSorted()).toEqual(['beet', 'chard', 'coriander'])
})
