import { expect, test } from 'vitest'
import { Told } from '../../db/contract/told.ts'
import type { VisitOut } from '../../db/contract/withdrawal-operations.ts'
import {
  answersOf,
  emptyReturn,
  grownFrom,
  nextReturn,
  withPerson,
  withSaved,
} from '../../renderer/screens/returns/return-draft.ts'

const lot = { lotId: 4, lotNumber: 'HL26-0002-A', variety: 'Quay Red' }

const visit = (growOut: VisitOut['lots'][number]['growOut']): VisitOut => ({
  withdrawalId: 7,
  on: '2026-03-14',
  purpose: 'grow-out',
  lots: [{ ...lot, crop: 'Beet', words: Told.parse('40 clusters'), growOut }],
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

test('the place and the day stay for the next person, and nothing else does', () => {
  const first = { ...emptyReturn('visit-key-1'), placeId: 12, receivedOn: '2026-01-02' }
  const brought = withSaved(withPerson(first, { is: 'new', text: 'Odile Marsh' }), 7, 'visit-key-2')
  expect(brought).toMatchObject({ saved: 1, person: { is: 'known', personId: 7, text: 'Odile Marsh' } })
  expect(nextReturn(brought, 'visit-key-3')).toEqual({ ...first, key: 'visit-key-3' })
})

test('what one person promised is not kept by another', () => {
  const parent = {
    lotId: 4,
    lotNumber: 'HL26-0004-A',
    variety: 'Quillhaven Brown',
    withdrawalId: 9,
    promise: 'a cup',
  }
  const draft = { ...emptyReturn('visit-key-1'), line: { ...emptyReturn('visit-key-1').line, parent } }
  const other = withPerson(draft, { is: 'known', personId: 8 })
  expect(other.line.parent).toEqual({ ...parent, withdrawalId: null, promise: '' })
})

test('an answer that was not given says so, and how it was kept apart goes with what it is about only', () => {
  const { line } = emptyReturn('visit-key-1')
  expect(answersOf(line)).toEqual({ plantsGrown: null, floweredNear: 'not-known', nearNote: '', odd: '' })
  const apart = { ...line, plants: '12', near: 'kept-apart', nearNote: 'fleece' } as const
  expect(answersOf(apart)).toMatchObject({ plantsGrown: 12, nearNote: 'fleece' })
  expect(answersOf({ ...apart, near: 'nothing' })).toMatchObject({ nearNote: '' })
})
