import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LotRelation } from '../../../db/domain/shared/closed-sets.ts'
import { type Kinship, type SeedStep, traceOf } from '../../../db/domain/trace/trace.ts'

/** What happens to seed: a lot comes in, or one of those there is split, poured into another, or grown. */
interface Happening {
  readonly by: LotRelation | 'intake'
  readonly of: number
  readonly into: number
}

const happenings = fc.array(
  fc.record({
    by: fc.constantFrom('intake', 'split', 'merged', 'grown', 'split', 'merged'),
    of: fc.nat(9),
    into: fc.nat(9),
  }) as fc.Arbitrary<Happening>,
  { maxLength: 14 },
)

const share = (some: Set<number>, others: Set<number>) => [...some].some((id) => others.has(id))

/** The steps that happenings make, and what each lot holds by the end, told by the lots that came in as one. */
function played(story: readonly Happening[]) {
  const holds: Set<number>[] = [new Set([0])]
  const descends: Set<number>[] = [new Set([0])]
  const steps: SeedStep[] = []
  const has = (sets: Set<number>[], id: number) => sets[id] ?? new Set()
  for (const [index, { by, of, into }] of story.entries()) {
    const fromLotId = of % holds.length
    const toLotId = by === 'merged' ? into % holds.length : holds.length
    if (fromLotId === toLotId) continue
    if (by === 'intake' || by === 'grown') holds[toLotId] = new Set([toLotId])
    if (by === 'intake') descends[toLotId] = new Set([toLotId])
    else {
      if (by !== 'grown') holds[toLotId] = new Set([...has(holds, toLotId), ...has(holds, fromLotId)])
      const own = by === 'grown' ? new Set([toLotId]) : has(descends, toLotId)
      descends[toLotId] = new Set([...own, ...has(descends, fromLotId)])
      steps.push({ fromLotId, toLotId, by, entryId: index + 1, leftBy: index + 1 })
    }
  }
  return { steps, holds, descends }
}

const kinOf = (steps: readonly SeedStep[], lotId: number, ...kin: readonly Kinship[]) =>
  new Set(
    traceOf(steps, lotId)
      .filter((lot) => kin.includes(lot.kin))
      .map((lot) => lot.lotId),
  )
const step = (by: LotRelation, fromLotId: number, toLotId: number, entryId: number, leftBy = entryId) => ({
  ...{ by, fromLotId, toLotId, entryId, leftBy },
})

describe('the trace of a lot', () => {
  it('is that of what each lot holds, however seed was split, poured together and grown', () => {
    fc.assert(
      fc.property(happenings, fc.nat(9), (story, asked) => {
        const { steps, holds, descends } = played(story)
        const lotId = asked % holds.length
        const own = holds[lotId] ?? new Set()
        const sharing = holds.flatMap((held, id) => (share(held, own) ? [id] : []))
        expect(kinOf(steps, lotId, 'itself', 'same-seed')).toEqual(new Set(sharing))
        const later = descends.flatMap((held, id) => (share(held, own) ? [id] : []))
        expect(kinOf(steps, lotId, 'itself', 'same-seed', 'offspring')).toEqual(new Set(later))
      }),
    )
  })

  it('has each lot once, itself first', () => {
    fc.assert(
      fc.property(happenings, fc.nat(9), (story, asked) => {
        const { steps, holds } = played(story)
        const ids = traceOf(steps, asked % holds.length).map((lot) => lot.lotId)
        expect(ids[0]).toBe(asked % holds.length)
        expect(new Set(ids).size).toBe(ids.length)
      }),
    )
  })

  it('is the same from either side of shared seed', () => {
    fc.assert(
      fc.property(happenings, (story) => {
        const { steps, holds } = played(story)
        for (const [one] of holds.entries())
          for (const other of kinOf(steps, one, 'same-seed'))
            expect(kinOf(steps, other, 'same-seed')).toContain(one)
      }),
    )
  })

  it('never loses a lot when more is poured together', () => {
    fc.assert(
      fc.property(happenings, fc.nat(9), fc.nat(9), fc.nat(9), (story, asked, of, into) => {
        const before = played(story)
        const after = played([...story, { by: 'merged', of, into }])
        const lotId = asked % before.holds.length
        const affected = (steps: readonly SeedStep[]) =>
          kinOf(steps, lotId, 'itself', 'same-seed', 'offspring')
        expect([...affected(after.steps)]).toEqual(expect.arrayContaining([...affected(before.steps)]))
      }),
    )
  })

  it('leaves out what was split off before the other seed was poured in', () => {
    const [jar, part, poured, later] = [1, 2, 3, 4]
    const steps = [step('split', jar, part, 1), step('merged', poured, jar, 2), step('split', jar, later, 3)]
    expect(traceOf(steps, poured)).toEqual([
      { lotId: poured, kin: 'itself', since: 0 },
      { lotId: jar, kin: 'same-seed', since: 2 },
      { lotId: later, kin: 'same-seed', since: 3 },
    ])
    expect(kinOf(steps, jar, 'same-seed')).toEqual(new Set([part, poured, later]))
  })

  it('follows a harvest by when what was sown went out, not by when it came back', () => {
    const [jar, poured, early, late] = [1, 2, 3, 4]
    const steps = [
      step('merged', poured, jar, 5),
      step('grown', jar, early, 7, 4),
      step('grown', jar, late, 8, 6),
    ]
    expect(kinOf(steps, poured, 'offspring')).toEqual(new Set([late]))
    expect(kinOf(steps, early, 'came-from')).toEqual(new Set([jar]))
    expect(kinOf(steps, late, 'came-from')).toEqual(new Set([jar, poured]))
  })
})
