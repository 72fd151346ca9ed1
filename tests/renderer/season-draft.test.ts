import { expect, test } from 'vitest'
import type { Told } from '../../db/contract/told.ts'
import {
  emptySeason,
  isBlankSeason,
  type PlannedChoice,
  type SeasonDraft,
  type SeasonStep,
  seasonInWords,
  stepSeason,
} from '../../renderer/shared/season-draft/season-draft.ts'
import { inEnglish } from '../builders/in-english.ts'

const inWords = (draft: SeasonDraft) => inEnglish<Told>(seasonInWords(draft))
const season = (...steps: readonly SeasonStep[]) => steps.reduce(stepSeason, emptySeason())
const tick = (accessionId: number): SeasonStep => ({ kind: 'ticked', accessionId })
const saved: readonly PlannedChoice[] = [
  { accessionId: 4, siteId: 1, way: 'open' },
  { accessionId: 9, siteId: 2, way: 'open' },
]

test('a tick is taken back by the next on the same accession, and then nothing is to be kept', () => {
  expect(season(tick(4), tick(9), tick(4)).chosen).toEqual([9])
  expect(isBlankSeason(season(tick(4)))).toBe(false)
  expect(isBlankSeason(season(tick(4), tick(4)))).toBe(true)
})

test('saving the list lets the ticks and the note go and leaves the plan on the table', () => {
  const draft = season(
    tick(4),
    { kind: 'noted', note: 'promised to Zoe' },
    { kind: 'planned', choices: saved },
    { kind: 'list-saved' },
  )
  expect(draft).toMatchObject({ chosen: [], note: '', choices: saved })
  expect(isBlankSeason(draft)).toBe(false)
  expect(isBlankSeason(stepSeason(draft, { kind: 'plan-saved' }))).toBe(true)
})

test('a move alters the saved plan where none is on the table, and then the one on the table', () => {
  const moved = season({ kind: 'altered', accessionId: 9, part: { siteId: 1 }, saved })
  expect(moved.choices).toEqual([saved[0], { ...saved[1], siteId: 1 }])
  const out = stepSeason(moved, { kind: 'altered', accessionId: 4, part: null, saved })
  expect(out.choices).toEqual([{ ...saved[1], siteId: 1 }])
})

test('says what an unfinished season holds', () => {
  expect(inWords(season(tick(4), { kind: 'planned', choices: saved }))).toBe(
    '1 ticked to be grown, a plan of 2, not saved',
  )
  expect(inWords(season({ kind: 'locked', accessionId: 4 }))).toBe('what was noted for a season')
})
