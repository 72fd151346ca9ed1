import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BREAK_CLASSES, BREAK_SPANS } from '../../../db/domain/moisture/break-check.ts'
import { planDrying } from '../../../db/domain/moisture/drying.ts'
import {
  equilibriumMoisture,
  nearestEquilibrium,
  OILY_FROM,
} from '../../../db/domain/moisture/equilibrium.ts'
import { FREEZES_SAFELY_TO, freezingAdvice } from '../../../db/domain/moisture/fit-for-freezing.ts'
import { dryFromWet, ovenMoisture, wetFromDry } from '../../../db/domain/moisture/moisture-basis.ts'
import { inEnglish } from '../../builders/in-english.ts'

const moisture = fc.integer({ min: 1, max: 600 }).map((tenths) => tenths / 10)
const grams = fc.double({ min: 0.01, max: 100_000, noNaN: true })

describe('drying', () => {
  test('keeps the dry matter and loses only water', () => {
    fc.assert(
      fc.property(grams, moisture, moisture, (mass, from, to) => {
        const plan = planDrying({ grams: mass, from, to })
        if (from <= to) return plan === null
        if (plan === null) return false
        const dryBefore = mass * (100 - from)
        const dryAfter = plan.stopAt * (100 - to)
        return Math.abs(dryBefore - dryAfter) < 1e-6 * dryBefore && plan.water > 0 && plan.stopAt < mass
      }),
    )
  })

  test('wants ten times the water in gel', () => {
    expect(planDrying({ grams: 500, from: 15, to: 7 })?.gel).toBeCloseTo(430.1, 1)
  })

  test.each([0, -1, Number.NaN])('is not planned for a mass of %s', (mass) => {
    expect(() => planDrying({ grams: mass, from: 12, to: 7 })).toThrow(RangeError)
  })

  test.each([-1, 100, Number.NaN])('is not planned from a moisture of %s', (from) => {
    expect(() => planDrying({ grams: 10, from, to: 5 })).toThrow(RangeError)
  })
})

describe('moisture on its two bases', () => {
  test('goes there and back', () => {
    fc.assert(fc.property(moisture, (wet) => Math.abs(wetFromDry(dryFromWet(wet)) - wet) < 1e-9))
  })

  test('100 % of the fresh weight and less than nothing are no moistures', () => {
    expect(() => dryFromWet(100)).toThrow(RangeError)
    expect(() => wetFromDry(-0.1)).toThrow(RangeError)
    expect(() => wetFromDry(Number.POSITIVE_INFINITY)).toThrow(RangeError)
  })
})

describe('the oven', () => {
  test.each([
    { fresh: 50, dry: 50, dish: 50, field: 'fresh' },
    { fresh: 55, dry: 50, dish: 50, field: 'dry' },
    { fresh: 55, dry: 56, dish: 50, field: 'dry' },
  ])('of $fresh, $dry and dish $dish is refused at $field', ({ field, ...masses }) => {
    expect(ovenMoisture(masses)).toMatchObject({ kind: 'refused', field })
  })

  test('works without a dish', () => {
    expect(ovenMoisture({ fresh: 10, dry: 9, dish: 0 })).toEqual({ kind: 'moisture', percent: 10 })
  })
})

describe('seed at rest with its air', () => {
  const air = { humidity: 0.3, temperature: 20, oil: 0.02 }

  test.each([
    { humidity: 0.09, field: 'humidity', because: /dry enough/ },
    { humidity: 0.71, field: 'humidity', because: /too moist/ },
    { temperature: -1, field: 'temperature', because: /0 to 40/ },
    { temperature: 41, field: 'temperature', because: /0 to 40/ },
    { temperature: 14, oil: 0.4, field: 'temperature', because: /15 to 25/ },
    { temperature: 26, oil: OILY_FROM, field: 'temperature', because: /15 to 25/ },
    { humidity: Number.NaN, field: 'humidity', because: /./ },
  ])('is not computed for $humidity $temperature $oil', ({ field, because, ...more }) => {
    const answer = equilibriumMoisture({ ...air, ...more })
    expect(inEnglish(answer)).toMatchObject({
      kind: 'outside',
      field,
      because: expect.stringMatching(because),
    })
  })

  test('is damper in damper air, drier in warmer air and with more oil', () => {
    const of = (more: Partial<typeof air>) => nearestEquilibrium({ ...air, ...more }).wetPercent
    expect(of({ humidity: 0.5 })).toBeGreaterThan(of({}))
    expect(of({ temperature: 30 })).toBeLessThan(of({}))
    expect(of({ oil: 0.3 })).toBeLessThan(of({}))
  })

  test('outside the range is taken at its edge, and said', () => {
    const edge = nearestEquilibrium({ humidity: 0.7, temperature: 0, oil: 0.02 })
    expect(edge.beyondRange).toBe(false)
    expect(nearestEquilibrium({ humidity: 0.95, temperature: -18, oil: 0.02 })).toEqual({
      ...edge,
      beyondRange: true,
    })
    const inside = equilibriumMoisture(air)
    expect(nearestEquilibrium(air)).toMatchObject({
      beyondRange: false,
      wetPercent: inside.kind === 'moisture' ? inside.wetPercent : null,
    })
  })
})

test('the break check leaves no gap between its classes', () => {
  const spans = BREAK_CLASSES.map((name) => BREAK_SPANS[name])
  for (const [index, { low }] of spans.entries()) {
    if (index > 0) expect(low).toBe(spans[index - 1]?.high)
  }
})

test.each([
  [null, 'not-known'],
  [FREEZES_SAFELY_TO, 'dry-enough'],
  [FREEZES_SAFELY_TO + 0.1, 'too-moist'],
])('of seed that holds at most %s percent the advice is %s', (highest, advice) => {
  expect(freezingAdvice(highest)).toBe(advice)
})
