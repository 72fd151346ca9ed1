import { describe, expect, it } from 'vitest'
import { usualDay } from '../../../db/domain/climate/usual-day.ts'

const days = (count: number, figureOf: (day: number) => number) =>
  Array.from({ length: count }, (_, number) => ({ number, figure: figureOf(number) }))

describe('the usual day of a place', () => {
  it.each([
    ['in the middle', 40],
    ['at the beginning', 0],
    ['at the end', 75],
  ])('leaves a failed week %s of 82 days out', (_, failed) => {
    expect(usualDay(days(82, (day) => (day >= failed && day < failed + 7 ? 30 : 1)))).toBe(1)
  })

  it('keeps summer and winter: a year of them comes to nearly its mean', () => {
    const pace = (day: number) => Math.exp(1.2 * Math.sin((2 * Math.PI * day) / 365))
    const year = days(730, pace)
    const mean = year.reduce((sum, { figure }) => sum + figure, 0) / year.length
    expect(usualDay(year) / mean).toBeGreaterThan(0.98)
    expect(usualDay(year) / mean).toBeLessThan(1.02)
  })

  it('goes by the days that were measured, however far apart', () => {
    const far = [
      { number: 0, figure: 2 },
      { number: 400, figure: 4 },
    ]
    expect(usualDay(far)).toBe(3)
    expect(usualDay(far.slice(0, 1))).toBe(2)
    expect(usualDay([])).toBe(0)
  })

  it('takes what most of a month was for the ordinary', () => {
    expect(usualDay(days(31, (day) => (day < 20 ? 5 : 1)))).toBeGreaterThan(3)
  })
})
