import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type ComesBack,
  cropCrosses,
  mayHaveCrossed,
  oddCheck,
  questionsOf,
  whyToCheck,
} from '../../../db/domain/intake/check-return.ts'
import { CHECK_OUTCOMES, FLOWERED_NEAR, YES_NO_NOT_KNOWN } from '../../../db/domain/shared/closed-sets.ts'

const SYSTEMS = ['selfer', 'mixed', 'outcrosser', 'outcrosser (mostly dioecious)', null] as const

const anyReturn: fc.Arbitrary<ComesBack> = fc.record({
  matingSystem: fc.constantFrom(...SYSTEMS),
  plants: fc.option(fc.integer({ min: 1, max: 200 })),
  plantsWanted: fc.integer({ min: 1, max: 200 }),
  floweredNear: fc.constantFrom(...FLOWERED_NEAR),
  odd: fc.constantFrom('', 'two white seeds'),
})
const GOOD = {
  matingSystem: 'selfer',
  plants: 12,
  plantsWanted: 10,
  floweredNear: 'not-known',
  odd: '',
} as const

const reasons = (change: Partial<ComesBack>, always = false) =>
  whyToCheck({ ...GOOD, ...change }, always).map(({ id }) => id)

describe('what comes back', () => {
  it('is offered at once where it sets seed by itself, from enough plants, and nothing was odd', () => {
    expect(reasons({})).toEqual([])
    expect(reasons({ plants: 10 })).toEqual([])
    expect(reasons({ plants: null })).toEqual([])
  })

  it('waits for each of the reasons, and told once', () => {
    expect(reasons({ matingSystem: 'mixed', floweredNear: 'kept-apart' })).toEqual([
      'quarantine-reason.crosses-kept-apart',
    ])
    expect(reasons({ matingSystem: null })).toEqual(['quarantine-reason.crosses-not-known'])
    expect(reasons({ plants: 9 })).toEqual(['quarantine-reason.few-plants'])
    expect(reasons({ odd: 'mouldy' })).toEqual(['quarantine-reason.odd'])
    expect(reasons({ floweredNear: 'others' })).toEqual(['quarantine-reason.others-near'])
    expect(reasons({ matingSystem: 'outcrosser', floweredNear: 'others' })).toEqual([
      'quarantine-reason.others-near',
    ])
  })

  it('waits by the keeper’s rule whatever it is, and then with a reason', () => {
    fc.assert(fc.property(anyReturn, (back) => whyToCheck(back, true).length > 0))
    expect(reasons({}, true)).toEqual(['quarantine-reason.every-return'])
    expect(reasons({ plants: 2 }, true)).toEqual(['quarantine-reason.few-plants'])
  })

  it('never counts as a possible cross without waiting', () => {
    fc.assert(fc.property(anyReturn, (back) => !mayHaveCrossed(back) || whyToCheck(back, false).length > 0))
  })

  it('is a possible cross where others flowered near, or nobody knows and its crop crosses', () => {
    for (const matingSystem of SYSTEMS) {
      const crosses = cropCrosses(matingSystem)
      const told = FLOWERED_NEAR.map((floweredNear) =>
        mayHaveCrossed({ ...GOOD, matingSystem, floweredNear }),
      )
      expect(told).toEqual([false, false, true, crosses])
    }
  })

  it('is asked three questions at most, and what flowered near only where that matters', () => {
    for (const matingSystem of SYSTEMS) {
      const asked = questionsOf(matingSystem)
      expect(asked.length).toBeLessThanOrEqual(3)
      expect(asked.includes('near')).toBe(cropCrosses(matingSystem))
      expect(asked).toContain('odd')
    }
  })
})

it('asks about a check only where seed goes on that was found wanting', () => {
  const found = fc.constantFrom(...YES_NO_NOT_KNOWN)
  const check = fc.record({
    dry: found,
    clean: found,
    trueToType: found,
    outcome: fc.constantFrom(...CHECK_OUTCOMES),
  })
  fc.assert(
    fc.property(check, ({ dry, clean, trueToType, outcome }) => {
      const wanting =
        outcome !== 'wait' && (dry === 'no' || clean === 'no' || (outcome === 'keep' && trueToType === 'no'))
      expect(oddCheck({ dry, clean, trueToType, outcome }) !== null).toBe(wanting)
    }),
  )
})
