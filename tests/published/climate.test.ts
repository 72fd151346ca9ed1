import { expect, test } from 'vitest'
import { heatAndDampness, limitsOf } from '../../db/domain/climate/limits.ts'
import { fahrenheit, fromFahrenheit } from '../../db/domain/climate/reading.ts'

const at = '2026-03-14T10:00'
const inFahrenheit = (degrees: number) => fromFahrenheit(degrees)

/** Two storage guides (seedquest.com, easyseeds.nl, both seen): 50 F with 50 % is just at 100; 43 F with 50 % is 93. */
test.each([
  { f: 50, percent: 50, sum: 100 },
  { f: 43, percent: 50, sum: 93 },
])('published: $f F and $percent % make $sum', ({ f, percent, sum }) => {
  const reading = { at, temperatureCc: inFahrenheit(f), humidityPm: percent * 10 }
  expect(heatAndDampness(reading)).toBeCloseTo(sum, 1)
})

/** The fixed points of the scale: ice melts at 32 F, water boils at 212 F, both scales meet at -40. */
test.each([
  [0, 32],
  [10_000, 212],
  [-4_000, -40],
])('definition: %s hundredths of a degree C are %s F', (cc, f) => {
  expect(fahrenheit(cc)).toBeCloseTo(f, 9)
  expect(fromFahrenheit(f)).toBe(cc)
})

/** FAO Genebank Standards 2014, seen as taught by the Open University: 4.2.3 -18 ± 3 C, 4.2.4 5 to 10 C. */
test('published: the limits of long-term and medium-term places', () => {
  const own = { highestCc: null, highestPm: null }
  expect(limitsOf('long-term', own).highestCc).toBe(-1_500)
  expect(limitsOf('medium-term', own).highestCc).toBe(1_000)
})
