import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import {
  type GrowOut,
  growOutState,
  harvestSeason,
  isCarriedInto,
  notesToCome,
  toldGrowOut,
  toldNote,
  whyNotNoted,
} from '../../../db/domain/season-plan/grow-out.ts'
import type { IsolationMethod } from '../../../db/domain/season-plan/isolation-method.ts'
import { clashesOf } from '../../../db/domain/season-plan/plan.ts'
import { withRoots } from '../../../db/domain/season-plan/standing-roots.ts'
import type { Message } from '../../../db/messages/message.ts'
import { inEnglish } from '../../builders/in-english.ts'
import { aCandidate, aSite, at } from '../../builders/season-plans.ts'

const noted = (kind: GrowOut['notes'][number]['kind'], on: string) => ({
  kind,
  on: isoDate(on),
  plants: null,
  note: kind === 'failed' ? 'hail' : '',
})
const english = (told: Message | string) => inEnglish<Told>(told)
const noteInWords = (note: GrowOut['notes'][number]) => english(toldNote(note))
const growOutInWords = (garden: string, of: GrowOut) => english(toldGrowOut(garden, of))
const whyNot = (...of: Parameters<typeof whyNotNoted>) => {
  const why = whyNotNoted(...of)
  return why === null ? null : english(why)
}
const grown = (more: Partial<GrowOut> = {}): GrowOut => ({
  season: 2026,
  biennial: false,
  seedOut: true,
  broughtBack: false,
  notes: [],
  ...more,
})

describe('how a grow-out stands', () => {
  const on = (day: string, more: Partial<GrowOut> = {}) => growOutState(grown(more), isoDate(day))
  test('from planned to brought back', () => {
    expect(on('2026-03-01', { seedOut: false })).toBe('planned')
    expect(on('2026-03-01')).toBe('seed-out')
    expect(on('2026-06-01', { notes: [noted('sown', '2026-05-01')] })).toBe('growing')
    expect(on('2026-06-01', { notes: [noted('failed', '2026-05-20')] })).toBe('failed')
    expect(on('2026-10-01', { notes: [noted('failed', '2026-05-20')], broughtBack: true })).toBe(
      'brought-back',
    )
  })

  test('what takes two seasons is waited for a year longer', () => {
    expect(on('2027-01-01')).toBe('not-heard-of')
    expect(on('2027-01-01', { biennial: true })).toBe('seed-out')
    expect(on('2028-01-01', { biennial: true })).toBe('not-heard-of')
  })

  test('roots are stored of what takes two seasons only, and nothing fails that brought seed', () => {
    expect(notesToCome(grown({ biennial: true }))).toContain('roots-stored')
    expect(notesToCome(grown())).not.toContain('roots-stored')
    expect(notesToCome(grown({ broughtBack: true }))).not.toContain('failed')
    const roots = { ...noted('roots-stored', '2026-10-20'), plants: 24 }
    expect(whyNot(grown({ biennial: true, notes: [noted('sown', '2026-05-01')] }), roots)).toBeNull()
  })
})

describe('a note', () => {
  const beet = (...notes: GrowOut['notes']) => grown({ biennial: true, notes })
  const sown = noted('sown', '2026-05-01')

  test('in words says when, of how many plants or roots, and what was seen', () => {
    expect(noteInWords(sown)).toBe('sown 1 May 2026')
    expect(noteInWords({ ...noted('emerged', '2026-05-09'), plants: 1 })).toBe('came up 9 May 2026, 1 plant')
    const emerged = { ...noted('emerged', '2026-05-09'), plants: 24, note: 'patchy' }
    expect(noteInWords(emerged)).toBe('came up 9 May 2026, 24 plants (patchy)')
    expect(noteInWords({ ...noted('roots-stored', '2026-10-20'), plants: 1 })).toBe(
      'roots stored 20 Oct 2026, 1 root',
    )
    expect(noteInWords({ ...noted('planted-out', '2027-04-20'), plants: 9 })).toBe(
      'roots planted again 20 Apr 2027, 9 roots',
    )
    expect(growOutInWords('Mill field', grown())).toBe('at Mill field')
    expect(growOutInWords('Mill field', grown({ notes: [sown, noted('failed', '2026-07-03')] }))).toBe(
      'at Mill field: sown 1 May 2026 and failed 3 Jul 2026 (hail)',
    )
  })

  test('is refused in a sentence where it cannot be', () => {
    const failed = noted('failed', '2026-07-03')
    expect(whyNot(grown({ notes: [failed] }), sown)).toBe('It was noted as failed on 3 Jul 2026.')
    expect(whyNot(beet(sown), noted('sown', '2026-05-05'))).toBe('It is noted already: sown 1 May 2026.')
    for (const kind of ['roots-stored', 'planted-out'] as const)
      expect(whyNot(grown(), noted(kind, '2026-10-20'))).toBe(
        'It flowers in its first season: no roots are stored.',
      )
    expect(whyNot(grown(), { ...failed, note: '' })).toBe('Say in a few words why it failed.')
    expect(whyNot(grown({ notes: [noted('saved-from', '2026-09-01')] }), failed)).toBeNull()
    expect(whyNot(grown(), noted('saved-from', '2026-09-01'))).toBe(
      'Type how many plants the seed was saved from: the next generation comes from them.',
    )
    expect(whyNot(grown(), { ...noted('saved-from', '2026-09-01'), plants: 12 })).toBeNull()
  })

  test('comes not before what goes before it, nor after what comes after, and may be of the same day', () => {
    const clash = 'That day does not fit: came up 9 May 2026. Check the day, or undo that note.'
    const emerged = noted('emerged', '2026-05-09')
    const flowered = (on: string) => whyNot(beet(emerged), noted('flowered', on))
    expect([flowered('2026-05-08'), flowered('2026-05-09'), flowered('2026-05-10')]).toEqual([
      clash,
      null,
      null,
    ])
    const sownOn = (on: string) => whyNot(beet(emerged), noted('sown', on))
    expect([sownOn('2026-05-10'), sownOn('2026-05-09'), sownOn('2026-05-08')]).toEqual([clash, null, null])
  })

  test('that is to come follows in order, until it failed', () => {
    expect(notesToCome(beet(sown, noted('flowered', '2027-06-01')))).toEqual([
      'emerged',
      'roots-stored',
      'planted-out',
      'saved-from',
      'failed',
    ])
    expect(notesToCome(grown({ notes: [noted('failed', '2026-07-03')] }))).toEqual([])
    expect([harvestSeason(grown()), harvestSeason(beet())]).toEqual([2026, 2027])
  })
})

describe('roots of last season', () => {
  test('stand in the next season only where it was begun and is not over', () => {
    const beet = grown({ biennial: true })
    expect([2026, 2027, 2028].map((season) => isCarriedInto(season, beet))).toEqual([false, true, false])
    expect(isCarriedInto(2027, grown({ biennial: true, seedOut: false }))).toBe(false)
    expect(isCarriedInto(2027, { ...beet, notes: [noted('failed', '2026-08-01')] })).toBe(false)
    expect(isCarriedInto(2027, grown())).toBe(false)
  })

  const cabbage = aCandidate(1, { variety: 'Old Drum', group: 'Brassica oleracea', isolation: 200, area: 8 })
  const sites = (way: IsolationMethod) =>
    withRoots([aSite(1, 0, { mostVarieties: 2 }), aSite(2, 150)], [{ candidate: cabbage, siteId: 1, way }])
  const sentences = (
    candidate: ReturnType<typeof aCandidate>,
    siteId: number,
    way: IsolationMethod = 'open',
  ) =>
    clashesOf({ candidates: [candidate], sites: sites(way) }, [at(candidate.accessionId, siteId)]).map(
      ({ sentence }) => english(sentence),
    )

  test('take their bed and their place among the varieties again', () => {
    expect(sentences(aCandidate(2, { area: 13 }), 1)).toEqual([
      'Variety 2 takes 13 m² of bed, and Garden 1 has 20 m² of bed, 8 m² of it under roots of last season.',
    ])
    const two = [aCandidate(2), aCandidate(3)]
    const problem = { candidates: two, sites: sites('open') }
    expect(clashesOf(problem, [at(2, 1), at(3, 1)]).map(({ sentence }) => english(sentence))).toEqual([
      'Garden 1 takes at most 2 varieties, and this is 2 beside 1 from last season.',
    ])
  })

  test('cross with what flowers this season, not with what flowers in the next, nor under cover', () => {
    const broccoli = aCandidate(2, { group: 'Brassica oleracea', isolation: 100 })
    expect(sentences(broccoli, 2)).toEqual([
      'Old Drum of last season flowers 150 m from Variety 2 at Garden 2, and they need about 200 m. Cover one of them, or grow it elsewhere.',
    ])
    expect(sentences({ ...broccoli, flowersNextSeason: true }, 2)).toEqual([])
    expect(sentences(broccoli, 2, 'covered')).toEqual([])
  })
})
