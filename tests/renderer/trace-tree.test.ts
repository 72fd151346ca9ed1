import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BOX, lotByKey, placeLots } from '../../renderer/screens/trace/trace-tree.ts'

type Step = Parameters<typeof placeLots>[1][number]

/** Lots of which each but the first was made of an earlier one, or came by itself, with some poured together at the end. */
const families = fc
  .record({
    made: fc.array(fc.record({ of: fc.nat(20), by: fc.constantFrom('split', 'grown', null) }), {
      maxLength: 12,
    }),
    merged: fc.array(fc.tuple(fc.nat(20), fc.nat(20)), { maxLength: 5 }),
  })
  .map(({ made, merged }) => {
    const lotIds = [1, ...made.map((_, index) => index + 2)]
    const one = (nth: number) => 1 + (nth % lotIds.length)
    const steps: Step[] = [
      ...made.flatMap(({ of, by }, index) =>
        by === null ? [] : [{ fromLotId: 1 + (of % (index + 1)), toLotId: index + 2, by }],
      ),
      ...merged.flatMap(([from, to]) =>
        one(from) === one(to) ? [] : [{ fromLotId: one(from), toLotId: one(to), by: 'merged' as const }],
      ),
    ]
    return { lotIds, steps }
  })

describe('the picture of a trace', () => {
  it('has each lot once, in a box that touches no other, and draws every step', () => {
    fc.assert(
      fc.property(families, ({ lotIds, steps }) => {
        const { placed, drawn, width, height } = placeLots(lotIds, steps)
        expect(placed.map(({ lotId }) => lotId).toSorted((a, b) => a - b)).toEqual(lotIds)
        expect(drawn.map(({ isBranch, ...step }) => step)).toEqual(steps)
        for (const [index, { x, y }] of placed.entries()) {
          expect(Math.min(x, y, width - x - BOX.width, height - y - BOX.height)).toBeGreaterThanOrEqual(0)
          for (const other of placed.slice(index + 1))
            expect(Math.abs(other.x - x) >= BOX.width || Math.abs(other.y - y) >= BOX.height).toBe(true)
        }
        for (const { fromLotId, toLotId } of drawn.filter(({ isBranch }) => !isBranch))
          for (const { x } of placed.filter(({ lotId }) => lotId === fromLotId || lotId === toLotId))
            expect(x + BOX.width + BOX.swing).toBeLessThanOrEqual(width)
      }),
      { numRuns: 60 },
    )
  })

  it('leads by arrows to every lot, and back along its branch', () => {
    fc.assert(
      fc.property(families, ({ lotIds, steps }) => {
        const { placed } = placeLots(lotIds, steps)
        const key = (lotId: number, name: string) => lotByKey(placed, lotId, name, 'ltr')
        const first = key(1, 'Home') ?? 0
        const passed = [first]
        for (let next = key(first, 'ArrowDown'); next !== undefined; next = key(next, 'ArrowDown'))
          passed.push(next)
        expect(passed).toHaveLength(lotIds.length)
        expect(passed.at(-1)).toBe(key(1, 'End'))
        for (const { lotId, parentId } of placed) {
          expect(key(lotId, 'ArrowLeft')).toBe(parentId ?? undefined)
          expect(lotByKey(placed, lotId, 'ArrowRight', 'rtl')).toBe(key(lotId, 'ArrowLeft'))
        }
      }),
      { numRuns: 60 },
    )
  })
})
