import fc from 'fast-check'
import { expect, test } from 'vitest'
import { massInWords, massShown } from '../../../db/domain/amounts/in-words.ts'
import { milligrams } from '../../../db/domain/amounts/mass.ts'
import { anyManner, anyMass } from '../../builders/domain-values.ts'

const GB = { locale: 'en-GB', massUnits: 'metric' } as const

test.each([
  [2_405_760, 'about 2.406 kg'],
  [90_128, 'about 90.13 g'],
  [615_608, 'about 615.6 g'],
  [12_500, '12.5 g'],
  [340, '340 mg'],
  [2_500_000, '2.5 kg'],
])('%i mg is told as %s', (mg, words) => {
  expect(massShown(milligrams(mg), GB)).toBe(words)
})

test('no more than four figures are told, and ‘about’ only where some are left out', () => {
  fc.assert(
    fc.property(anyMass, anyManner, (mass, manner) => {
      const shown = massShown(mass, manner)
      const figures = shown.replace(/\D/g, '').replace(/^0+/, '')
      expect(figures.replace(/0+$/, '').length).toBeLessThanOrEqual(4)
      expect(shown.startsWith('about ')).toBe(shown !== massInWords(mass, manner))
    }),
    { numRuns: 200 },
  )
})
