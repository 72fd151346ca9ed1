import { describe, expect, it } from 'vitest'
import {
  isKept,
  isOffered,
  keepingTold,
  sampstatOf,
  usualPolicy,
} from '../../../db/domain/keeping/keeping.ts'
import { judgeNeed } from '../../../db/domain/needs/need.ts'
import { ACCESSION_POLICIES, BREEDING_STATUSES } from '../../../db/domain/shared/closed-sets.ts'
import { DESCRIPTORS } from '../../../db/exchange/mcpd-table.ts'
import { needFacts } from '../../builders/domain-values.ts'
import { inEnglish } from '../../builders/in-english.ts'

it('proposes to pass on what does not come true, and to keep all else', () => {
  expect(BREEDING_STATUSES.filter((status) => !isKept(usualPolicy(status)))).toEqual([
    'first-generation-hybrid',
  ])
})

it('offers what is passed on, and nothing of what is closed', () => {
  expect(ACCESSION_POLICIES.filter(isOffered)).toEqual(['keep', 'pass-on'])
})

it('has no need of what is not kept, however little there is', () => {
  for (const policy of ['pass-on', 'closed'] as const)
    for (const about of [0, 3, 4_000]) {
      const living = { about, low: about, high: about, total: about }
      const need = judgeNeed(needFacts({ living, keeping: { breeding: 'unknown', policy } }))
      expect([need.state, need.keep]).toEqual(['not-kept', 0])
    }
})

it('says in a line what was decided, and nothing where nothing was', () => {
  expect(keepingTold({ breeding: 'unknown', policy: 'keep' })).toBe('')
  const told = keepingTold({ breeding: 'first-generation-hybrid', policy: 'pass-on' })
  expect(inEnglish(told)).toBe('first-generation hybrid; only passed on')
})

const CODES = DESCRIPTORS.find(({ code }) => code === 'SAMPSTAT')?.codes?.map(({ code }) => code)

describe('SAMPSTAT', () => {
  it('is a code of the standard, whatever is said', () => {
    for (const status of BREEDING_STATUSES) {
      const code = sampstatOf(status, '')
      if (code !== '') expect(CODES).toContain(code)
    }
  })

  it.each([
    ['unknown', '500', '500'],
    ['open-pollinated', '', ''],
    ['open-pollinated', '300', '300'],
    ['landrace', '', '300'],
    ['landrace', '500', '300'],
    ['breeders-population', '415', '415'],
    ['breeders-population', '300', '400'],
    ['first-generation-hybrid', '400', '412'],
  ] as const)('of %s that came as "%s" is "%s"', (status, came, code) => {
    expect(sampstatOf(status, came)).toBe(code)
  })
})
