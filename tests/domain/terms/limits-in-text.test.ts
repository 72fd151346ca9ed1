import fc from 'fast-check'
import { expect, it } from 'vitest'
import { SHARED_WITH } from '../../../db/domain/shared/closed-sets.ts'
import { limitsTold, NO_LIMITS } from '../../../db/domain/terms/gift-limits.ts'
import { limitsInText } from '../../../db/domain/terms/limits-in-text.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

it('reads back what is told of any limits, whatever stands around it, and nothing out of other words', () => {
  fc.assert(
    fc.property(
      fc.record({
        share: fc.constantFrom(...SHARED_WITH),
        publishStory: fc.boolean(),
        publishName: fc.boolean(),
        mayBeSold: fc.boolean(),
      }),
      fc.constantFrom('', 'My aunt said: sow them early. '),
      (some, before) => {
        const limits = { ...NO_LIMITS, ...some }
        const told = limitsTold(limits, '2026-03-14').map(saidInEnglish)
        const read = limitsInText(before + told.join(' '), [saidInEnglish])
        expect(read ?? NO_LIMITS).toEqual(limits)
        expect(read === null).toBe(told.length === 0)
      },
    ),
  )
})
