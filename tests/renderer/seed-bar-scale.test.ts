import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { seedBarParts } from '../../renderer/shared/seed-bar/seed-bar-scale.ts'

describe('the seed bar', () => {
  it('puts the notch at the same place whatever must be kept', () => {
    const few = seedBarParts({ living: 10, total: 20, keep: 45 })
    const many = seedBarParts({ living: 10_000, total: 20_000, keep: 4_500 })
    expect(few.notch).toBe(many.notch)
  })

  it('ends the living part at the notch where exactly enough is living', () => {
    const parts = seedBarParts({ living: 225, total: 300, keep: 225 })
    expect(parts.living).toBeCloseTo(parts.notch, 10)
    expect(parts.total).toBeCloseTo((300 / 225) * parts.notch, 10)
    expect(parts.goesOn).toBe(false)
  })

  it('says when there is more than fits', () => {
    expect(seedBarParts({ living: 500, total: 600, keep: 225 }).goesOn).toBe(true)
    expect(seedBarParts({ living: 100, total: 100, elsewhere: 500, keep: 225 }).goesOn).toBe(true)
  })

  it('shows no notch where nothing must be kept', () => {
    expect(seedBarParts({ living: 5, total: 10, keep: 0 })).toMatchObject({ notch: 0, living: 0.5, total: 1 })
  })

  it('keeps its parts in order and inside the bar', () => {
    const seeds = fc.nat(1_000_000)
    fc.assert(
      fc.property(seeds, seeds, seeds, seeds, (living, dead, elsewhere, keep) => {
        const parts = seedBarParts({ living, total: living + dead, elsewhere, keep })
        expect(parts.living).toBeGreaterThanOrEqual(0)
        expect(parts.elsewhere).toBeGreaterThanOrEqual(parts.living)
        expect(parts.total).toBeGreaterThanOrEqual(parts.elsewhere)
        expect(parts.total).toBeLessThanOrEqual(1)
      }),
    )
  })
})
