import fc from 'fast-check'
import { expect, test } from 'vitest'
import { massToFigures } from '../../../db/domain/amounts/in-words.ts'
import { milligrams } from '../../../db/domain/amounts/mass.ts'
import { anyManner, anyMass } from '../../builders/domain-values.ts'

const GB = { locale: 'en-GB', massUnits: 'metric' } as const

test.each([
  [2_405_760, '2.406 kg'],
  [90_128, '90.13 g'],
  [615_608, '615.6 g'],
  [12_500, '12.5 g'],
  [340, '340 mg'],
  [2_500_000, '2.5 kg'],
])('%i mg to four figures is %s', (mg, words) => {
  expect(massToFigures(milligrams(mg), 4, GB)).toBe(words)
})

test('no more than four figures are told where four are asked for', () => {
  fc.assert(
    fc.property(anyMass, anyManner, (mass, manner) => {
      const figures = massToFigures(mass, 4, manner).replace(/\D/g, '').replace(/^0+/, '')
      expect(figures.replace(/0+$/, '').length).toBeLessThanOrEqual(4)
    }),
    { numRuns: 200 },
  )
})
