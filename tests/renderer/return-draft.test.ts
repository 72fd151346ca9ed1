import { expect, test } from 'vitest'
import type { VisitOut } from '../../db/contract/withdrawal-operations.ts'
import { grownFrom } from '../../renderer/screens/returns/return-draft.ts'

const lot = { lotId: 4, lotNumber: 'HL26-0002-A', variety: 'Quay Red' }

const visit = (growOut: VisitOut['lots'][number]['growOut']): VisitOut => ({
  withdrawalId: 7,
  on: '2026-03-14',
  purpose: 'grow-out',
  lots: [{ ...lot, crop: 'Beet', words: '40 clusters', growOut }],
  promise: null,
  back: [],
})

test('what comes back of a grow-out has its plants and its garden filled in', () => {
  const growOut = { growOutId: 3, site: 'Mill field', plants: 22 }
  expect(grownFrom(lot, [visit(growOut)])).toMatchObject({ grownAt: 'Mill field', plants: '22' })
  expect(grownFrom(lot, [visit({ ...growOut, plants: null })])).toMatchObject({ plants: '' })
})

test('what comes back of another visit leaves what was typed of plants and garden', () => {
  expect(Object.keys(grownFrom(lot, [visit(null)]))).toEqual(['text', 'parent', 'meets'])
})
