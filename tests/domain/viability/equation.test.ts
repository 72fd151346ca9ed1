import { expect, test } from 'vitest'
import {
  lowestMoisture,
  paceOf,
  ruleOfThumbGain,
  sigmaDays,
  turningPoint,
  WORKING,
} from '../../../db/domain/viability/equation.ts'
import { normalQuantile } from '../../../db/domain/viability/normal.ts'
import { constantsOf } from '../../builders/crop-table.ts'

const bean = constantsOf('bean')
const maize = constantsOf('maize')
if (bean === null || maize === null) throw new Error('Bean and maize have constants')

test('seed drier than the lower limit lasts no longer than at the limit, and it is said', () => {
  const limit = lowestMoisture(maize, 0.045)
  const atLimit = paceOf(maize, { moisture: limit, celsius: 5 }, 0.045)
  const drier = paceOf(maize, { moisture: limit - 2, celsius: 5 }, 0.045)
  expect(drier).toEqual({ ...atLimit, remarks: ['drier-than-helps'] })
})

test('bean in the freezer is computed at the turning point of its set, never colder', () => {
  const frozen = paceOf(bean, { moisture: 12, celsius: -18 }, null)
  expect(frozen).toEqual({
    kind: 'pace',
    sigmaDays: sigmaDays(bean, { moisture: 12, celsius: turningPoint(bean) }),
    remarks: ['colder-than-known', 'colder-than-fitted', 'frozen-unfitted'],
  })
})

test('nothing is computed colder than the coldest that was studied', () => {
  expect(paceOf(maize, { moisture: 6, celsius: -80 }, null)).toMatchObject({
    sigmaDays: sigmaDays(maize, { moisture: 6, celsius: WORKING.coldest }),
  })
})

test('outside what was fitted it says so, and where nothing is known it refuses', () => {
  expect(paceOf(bean, { moisture: 8, celsius: 22 }, null)).toMatchObject({ remarks: ['drier-than-fitted'] })
  expect(paceOf(bean, { moisture: 25, celsius: 61 }, null)).toMatchObject({
    remarks: ['moister-than-fitted', 'warmer-than-fitted'],
  })
  expect(paceOf(bean, { moisture: 25.1, celsius: 20 }, null)).toMatchObject({ kind: 'refused' })
  expect(paceOf(bean, { moisture: 12, celsius: 91 }, null)).toMatchObject({ kind: 'refused' })
})

test('beyond the ranges of the rules of thumb nothing more is gained', () => {
  const room = { moisture: 8, celsius: 20 }
  const gain = ruleOfThumbGain({ moisture: 5, celsius: 0 }, room)
  expect(gain).toBe(2 ** (4 + 3))
  expect(ruleOfThumbGain({ moisture: 3, celsius: -18 }, room)).toBe(gain)
})

test.each([0, 1, -0.1, Number.NaN])('there is no quantile of %s', (part) => {
  expect(() => normalQuantile(part)).toThrow(RangeError)
})
