import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { SHARED_WITH, WITHDRAWAL_PURPOSES } from '../../../db/domain/shared/closed-sets.ts'
import {
  type GiftLimits,
  isWebAddress,
  limitsInShort,
  limitsOnGiving,
  limitsTold,
  mayBeOffered,
  NO_LIMITS,
} from '../../../db/domain/terms/gift-limits.ts'
import { inEnglish } from '../../builders/in-english.ts'

const TODAY = '2026-03-14'

const anyLimits: fc.Arbitrary<GiftLimits> = fc.record({
  share: fc.constantFrom(...SHARED_WITH),
  publishStory: fc.boolean(),
  publishName: fc.boolean(),
  mayBeSold: fc.boolean(),
  agreement: fc.constantFrom('', 'Weir Valley elders, letter of 3 May'),
  agreementEnds: fc.constantFrom(null, '2026-03-13', TODAY, '2028-05-31'),
  communityLabel: fc.constantFrom('', 'Come and talk first.'),
  communityLink: fc.constantFrom('', 'https://weir-valley.example/label'),
})
const anyPurpose = fc.constantFrom(...WITHDRAWAL_PURPOSES)

const told = (limits: Partial<GiftLimits>) =>
  inEnglish<string[]>(limitsTold({ ...NO_LIMITS, ...limits }, TODAY) as never)

describe('the terms of a gift', () => {
  it('ask nothing and say nothing where nobody set a limit', () => {
    for (const purpose of WITHDRAWAL_PURPOSES)
      expect(limitsOnGiving(NO_LIMITS, purpose, TODAY)).toEqual({ isRefused: false, cautions: [] })
    expect(told({})).toEqual([])
  })

  it('let seed go without a word only where anyone may have it and no agreement is over', () => {
    fc.assert(
      fc.property(anyLimits, anyPurpose, (limits, purpose) => {
        const { isRefused, cautions } = limitsOnGiving(limits, purpose, TODAY)
        const isOver = limits.agreementEnds !== null && limits.agreementEnds < TODAY
        expect(isRefused || cautions.length > 0).toBe(limits.share !== 'anyone' || isOver)
        expect(cautions.includes('agreement-ended')).toBe(isOver)
      }),
    )
  })

  it('refuse what nobody may have, unless the seed stays the library’s own', () => {
    const refused = WITHDRAWAL_PURPOSES.filter(
      (purpose) => limitsOnGiving({ ...NO_LIMITS, share: 'nobody' }, purpose, TODAY).isRefused,
    )
    expect(refused).toEqual(['to-grow', 'to-return', 'other'])
  })

  it('are on the smallest label wherever they limit who may have it or whether it is sold', () => {
    fc.assert(
      fc.property(anyLimits, (limits) => {
        const lines = limitsInShort(limits)
        expect(lines.length).toBe(Number(limits.share !== 'anyone') + Number(!limits.mayBeSold))
        expect(mayBeOffered(limits)).toBe(limits.share === 'anyone' || limits.share === 'ask-first')
      }),
    )
  })

  it('are told shortest first, with an agreement’s end and a label as the community wrote it', () => {
    expect(
      told({
        share: 'ask-first',
        mayBeSold: false,
        publishStory: false,
        publishName: false,
        agreement: 'letter of 3 May',
        agreementEnds: '2026-03-13',
        communityLabel: 'Come and talk first.',
        communityLink: 'https://weir-valley.example/label',
      }),
    ).toEqual([
      'Ask the library before you pass it on.',
      'Not for sale.',
      'Its story is not published.',
      'The donor’s name is not published.',
      'The agreement ended on 13 Mar 2026: letter of 3 May',
      'Label issued by the community: Come and talk first. (https://weir-valley.example/label)',
    ])
    expect(told({ agreementEnds: TODAY, communityLink: 'https://weir-valley.example/label' })).toEqual([
      'By agreement until 14 Mar 2026: no name was noted',
      'Label issued by the community: https://weir-valley.example/label',
    ])
    expect(told({ agreement: 'letter of 3 May', communityLabel: 'Come and talk first.' })).toEqual([
      'By agreement: letter of 3 May',
      'Label issued by the community: Come and talk first.',
    ])
  })

  it.each([
    ['https://weir-valley.example/label', true],
    ['HTTP://weir-valley.example', true],
    ['weir-valley.example', false],
    ['https://', false],
    ['https:// weir', false],
    ['javascript:alert(1)', false],
    ['file:///etc/hosts', false],
    ['https://a b', false],
  ])('an address: %s', (text, isOne) => {
    expect(isWebAddress(text)).toBe(isOne)
  })
})
