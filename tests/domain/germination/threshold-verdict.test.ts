import fc from 'fast-check'
import { expect, test } from 'vitest'
import { probabilityAtLeast, thresholdVerdict } from '../../../db/domain/germination/threshold-verdict.ts'
import { wilsonInterval } from '../../../db/domain/germination/wilson.ts'

const part = fc.double({ min: 0, max: 1, noNaN: true })

test.each([null, 0, 1])(
  'a test is never called sure of a threshold that its interval leaves open, beside a forecast of %s',
  (ofLot) => {
    const contradictions: string[] = []
    for (const tested of [1, 2, 5, 10, 20, 25, 30, 50, 100, 200, 400]) {
      for (let sprouted = 0; sprouted <= tested; sprouted++) {
        const [low, high] = wilsonInterval(sprouted, tested).map((part) => Math.round(100 * part)) as [
          number,
          number,
        ]
        for (const percent of [50, 60, 65, 70, 75, 80, 85, 90]) {
          const verdict = thresholdVerdict(probabilityAtLeast(percent / 100, sprouted, tested), tested, ofLot)
          if ((verdict === 'above' && low < percent) || (verdict === 'below' && high > percent))
            contradictions.push(`${sprouted} of ${tested}: ${low} to ${high} %, ${verdict} ${percent} %`)
        }
      }
    }
    expect(contradictions).toEqual([])
  },
)

test('one or two seeds are never sure of anything, whatever is forecast', () => {
  for (const tested of [1, 2])
    for (const sprouted of [0, tested])
      for (const ofLot of [null, 0, 0.5, 1]) {
        const verdict = thresholdVerdict(probabilityAtLeast(0.85, sprouted, tested), tested, ofLot)
        expect(['likely-above', 'open', 'likely-below']).toContain(verdict)
      }
})

test('where there is a forecast, the verdict lies on its side and is no surer than it', () => {
  const surest = {
    above: [0.975, 1],
    'likely-above': [0.7, 1],
    open: [0.3, 0.7],
    'likely-below': [0, 0.3],
    below: [0, 0.025],
  }
  fc.assert(
    fc.property(
      fc.nat(400),
      fc.integer({ min: 1, max: 400 }),
      part,
      part,
      (hits, tested, threshold, ofLot) => {
        const sprouted = Math.min(hits, tested)
        const [least, most] =
          surest[thresholdVerdict(probabilityAtLeast(threshold, sprouted, tested), tested, ofLot)]
        expect(ofLot).toBeGreaterThanOrEqual((least ?? 0) - 1e-12)
        expect(ofLot).toBeLessThanOrEqual((most ?? 1) + 1e-12)
      },
    ),
    { numRuns: 300 },
  )
})
