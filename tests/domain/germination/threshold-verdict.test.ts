import { expect, test } from 'vitest'
import { probabilityAtLeast, thresholdVerdict } from '../../../db/domain/germination/threshold-verdict.ts'
import { wilsonInterval } from '../../../db/domain/germination/wilson.ts'

test('a test is never called sure of a threshold that its interval, as shown, leaves open', () => {
  const contradictions: string[] = []
  for (const tested of [10, 20, 25, 30, 50, 100, 200, 400]) {
    for (let sprouted = 0; sprouted <= tested; sprouted++) {
      const [low, high] = wilsonInterval(sprouted, tested).map((part) => Math.round(100 * part)) as [
        number,
        number,
      ]
      for (const percent of [50, 60, 65, 70, 75, 80, 85, 90]) {
        const verdict = thresholdVerdict(probabilityAtLeast(percent / 100, sprouted, tested))
        if ((verdict === 'above' && low < percent) || (verdict === 'below' && high > percent))
          contradictions.push(`${sprouted} of ${tested}: ${low} to ${high} %, ${verdict} ${percent} %`)
      }
    }
  }
  expect(contradictions).toEqual([])
})
