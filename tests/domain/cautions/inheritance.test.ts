import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  CAUTION_RULES,
  type CautionEnd,
  type CautionHistory,
  type CautionSet,
  cautionsInForce,
  type Descent,
} from '../../../db/domain/cautions/inheritance.ts'
import { CAUTION_KINDS, type CautionKind } from '../../../db/domain/shared/closed-sets.ts'

const [FIRST, SECOND] = [1, 2]
const set = (lotId: number, caution: CautionKind, entryId: number): CautionSet => ({
  lotId,
  caution,
  note: '',
  onDate: '2026-03-14',
  entryId,
})
const end = (lotId: number, caution: CautionKind, entryId: number): CautionEnd => ({
  lotId,
  caution,
  entryId,
})
const step = (by: Descent['by'], entryId: number): Descent => ({
  lotId: SECOND,
  parentLotId: FIRST,
  by,
  entryId,
})
const holds = (history: Partial<CautionHistory>, lotId: number) =>
  cautionsInForce({ descent: [], sets: [], ends: [], ...history }, lotId).length > 0

// What each caution is for what comes of a lot and for what is done with it. Common practice, no source.
describe.each([
  ['treated', 'has-it', 'has-it', 'has-not', 'has-not', 'with-care', 'with-care'],
  ['pests-seen', 'has-it', 'has-it', 'asked', 'asked', 'with-care', 'with-care'],
  ['regulated', 'has-it', 'has-it', 'has-it', 'has-it', 'as-any', 'with-care'],
  ['toxic', 'has-it', 'has-it', 'has-it', 'has-it', 'with-care', 'with-care'],
  ['protected-variety', 'has-it', 'has-it', 'has-it', 'has-it', 'as-any', 'as-any'],
  ['possible-cross', 'has-it', 'has-it', 'until-checked', 'until-checked', 'as-any', 'as-any'],
] as const)('%s', (caution, split, merge, back, harvest, test, discard) => {
  it('has the rules of its kind', () => {
    expect(CAUTION_RULES[caution]).toEqual({ split, merge, return: back, harvest, test, discard })
  })

  it.each(['split', 'merge', 'return', 'harvest'] as const)('goes along by %s as its rule says', (by) => {
    const inherits = ['has-it', 'until-checked'].includes(CAUTION_RULES[caution][by])
    const sets = [set(FIRST, caution, 1)]
    expect(holds({ sets, descent: [step(by, 2)] }, SECOND)).toBe(inherits)
    expect(holds({ sets, descent: [step(by, 2)], ends: [end(SECOND, caution, 3)] }, SECOND)).toBe(false)
    expect(holds({ sets, descent: [step(by, 3)], ends: [end(FIRST, caution, 2)] }, SECOND)).toBe(false)
  })

  it('ends for a part that was split off before only where it is of the plant', () => {
    const history = {
      sets: [set(FIRST, caution, 1)],
      descent: [step('split', 2)],
      ends: [end(FIRST, caution, 3)],
    }
    expect(holds(history, FIRST)).toBe(false)
    expect(holds(history, SECOND)).toBe(caution === 'treated' || caution === 'pests-seen')
  })

  it('said again after its end, it holds again', () => {
    const ends = [end(FIRST, caution, 2)]
    expect(holds({ sets: [set(FIRST, caution, 1), set(FIRST, caution, 3)], ends }, FIRST)).toBe(true)
  })

  it('comes round to an end where a part that was split off is poured back', () => {
    const back: Descent = { lotId: FIRST, parentLotId: SECOND, by: 'merge', entryId: 3 }
    const history = { sets: [set(FIRST, caution, 1)], descent: [step('split', 2), back] }
    expect(holds(history, FIRST)).toBe(true)
    expect(holds(history, SECOND)).toBe(true)
    const ended = { ...history, ends: [end(FIRST, caution, 4)] }
    expect(holds(ended, FIRST)).toBe(false)
  })

  it('comes again with seed that is poured in after it ended', () => {
    const history = {
      sets: [set(FIRST, caution, 1), set(SECOND, caution, 2)],
      ends: [end(SECOND, caution, 3)],
    }
    expect(holds(history, SECOND)).toBe(false)
    expect(holds({ ...history, descent: [step('merge', 4)] }, SECOND)).toBe(true)
  })
})

it('is nobody’s business who else has a caution: lots that share no seed change nothing', () => {
  const kinds = fc.constantFrom(...CAUTION_KINDS)
  fc.assert(
    fc.property(kinds, kinds, fc.nat(9), (mine, theirs, entryId) => {
      const sets = [set(FIRST, mine, 1), set(3, theirs, entryId)]
      expect(cautionsInForce({ descent: [], sets, ends: [end(3, mine, 10)] }, FIRST)).toEqual([sets[0]])
    }),
  )
})
