import type { DueTest, TestPlan } from '../../contract/germination-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { countedUnit } from '../../domain/crops/counted-unit.ts'
import { addDays } from '../../domain/dates/day-arithmetic.ts'
import { type IsoDate, isoDate } from '../../domain/dates/iso-date.ts'
import { testConditions, USUAL_FINAL_DAY } from '../../domain/germination/conditions.ts'
import { nextTestDates, type TestDate } from '../../domain/germination/next-test.ts'
import { plannableThreshold, stagedOutcome, stagedPlan } from '../../domain/germination/staged-plan.ts'
import { MOST_SPENT, suggestedLayout } from '../../domain/germination/suggested-layout.ts'
import {
  PROBABLY,
  type TestSize,
  type TestSizes,
  testOfSize,
  testSizes,
} from '../../domain/germination/test-size.ts'
import { type RegrowPolicy, regrowThreshold } from '../../domain/viability/regrow-threshold.ts'
import { type Message, message } from '../../messages/message.ts'
import { sourceInWords } from '../../migrations/crop-table.ts'
import { lotsUnderTest, type MonitoredRow, monitoredLots } from '../../queries/germination-tests.ts'
import { prepared } from '../../queries/prepared.ts'
import { AccessionCache } from '../book/accession-cache.ts'
import { heldIn } from '../book/amounts.ts'
import type { Reading, Reads } from '../book/context.ts'
import { cropOrRefuse } from '../book/crop-rows.ts'
import { assumedTold, lifeOf, thresholdOf } from '../book/living-stock.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { refusePieces } from '../book/pieces.ts'
import { testCautions } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { openStages } from './staged-tests.ts'

interface TableCells {
  readonly germ_temp_c: string | null
  readonly germ_substrata: string | null
  readonly germ_first_count_day: number | null
  readonly germ_final_count_day: number | null
  readonly germ_hard_seed_possible: boolean | null
  readonly germ_notes: string | null
  readonly sources: {
    readonly germination: { readonly source: string; readonly confidence: string } | null
    /** Where the last day has a source of its own. */
    readonly germ_final_count_day?: { readonly source: string; readonly confidence: string }
  }
}

export const planTest: Reads<'germination.plan'> = (reading, input) => {
  const row = lotOrRefuse(reading, input.lotId, 'lotId')
  refusePieces(row, 'lotId')
  const available = row.balanceCount
  const life = lifeOf(row)
  const threshold = input.threshold ?? plannableThreshold(thresholdOf(row, settingsOf(reading)))
  const expected = input.expected ?? life.viability
  const sizes = testSizes(available, threshold, expected)
  const layout = suggestedLayout(available, sizes.smallest?.seeds ?? null)
  const suggested = testOfSize(
    layout.reduce((sum, seeds) => sum + seeds, 0),
    threshold,
    expected,
  )
  return {
    lotId: row.lotId,
    lotNumber: row.lotNumber,
    variety: row.variety,
    crop: row.crop,
    unit: countedUnit(row.countedUnit),
    available,
    cautions: testCautions(reading, row.lotId),
    conditions: conditionsOf(reading, row.cropId),
    layout: [...layout],
    threshold,
    expected,
    expectedNote: expectedNote(input.expected !== undefined, life.basis, expected),
    smallest: sizes.smallest,
    sizes: [...sizes.shown],
    words: adviceTold(sizes, suggested, available, threshold, expected),
    follows: openStages(reading, row.lotId, threshold),
    staged: stagedOf(threshold, input.groupSize ?? groupFor(available), available),
  }
}

function conditionsOf(reading: Reading, cropId: string): Untold<TestPlan['conditions']> {
  const cells = JSON.parse(cropOrRefuse(reading, cropId, 'lotId').reference) as TableCells
  const { temperature, media } = testConditions(cells.germ_temp_c, cells.germ_substrata)
  const sourced = cells.sources.germination
  return {
    temperature,
    media: [...media],
    firstDay: cells.germ_first_count_day,
    finalDay: cells.germ_final_count_day ?? USUAL_FINAL_DAY,
    finalDayNote: finalDayNote(cells),
    notes: cells.germ_notes ?? '',
    hardSeedPossible: cells.germ_hard_seed_possible === true,
    source:
      sourced === null ? message('germination.common-practice-no-source') : sourceInWords(sourced.source),
    confidence:
      sourced === null ? message('germination.common-practice') : confidenceTold(sourced.confidence),
  }
}

/** How far the crop table trusts a source, in a word; what it says in its own words stays. */
function confidenceTold(confidence: string): Message | string {
  if (confidence === 'seen') return message('germination.confidence-seen')
  return confidence === 'memory' ? message('germination.confidence-from-memory') : confidence
}

/** What a keeper must know of the last day; '' where it comes with the other conditions from their source. */
function finalDayNote({ germ_final_count_day: day, sources }: TableCells): Message | '' {
  if (day === null) return message('germination.usual-day')
  const own = sources.germ_final_count_day
  return own === undefined ? '' : message('germination.own-day', { source: sourceInWords(own.source) })
}

function expectedNote(
  typed: boolean,
  basis: ReturnType<typeof lifeOf>['basis'],
  expected: number,
): Message | string {
  if (typed) return message('germination.expected-as-said')
  if (basis === 'tested') return message('germination.expected-by-tests')
  return assumedTold(expected, basis)
}

function adviceTold(
  { smallest, shown }: TestSizes,
  suggested: TestSize,
  available: number,
  threshold: number,
  expected: number,
): Message {
  if (available === 0) return message('germination.advice-empty')
  const asked = { threshold: { part: threshold }, expected: { part: expected } }
  if (smallest === null) {
    const best = shown.toSorted((one, other) => one.decides - other.decides).at(-1)
    return message('germination.advice-none', {
      ...asked,
      probably: { part: PROBABLY },
      best: best?.seeds ?? 0,
      decides: { part: best?.decides ?? 0 },
    })
  }
  const { seeds, decides } = smallest
  const advice = {
    ...asked,
    seeds,
    available,
    cost: { part: seeds / available },
    times: outOfHundred(decides),
  }
  if (seeds <= available * MOST_SPENT) return message('germination.advice', advice)
  const dear = { ...advice, most: { part: MOST_SPENT } }
  return suggested.seeds >= seeds
    ? message('germination.advice-dear', dear)
    : message('germination.advice-fewer', {
        ...dear,
        fewer: suggested.seeds,
        fewerTimes: outOfHundred(suggested.decides),
      })
}

function outOfHundred(chance: number): number {
  return Math.round(100 * chance)
}

/** Seeds of a stage: forty as in the published plan where the lot bears three of them, fewer for a small lot. */
function groupFor(available: number): number {
  if (available >= 120) return 40
  return available >= 60 ? 20 : 10
}

function stagedOf(threshold: number, groupSize: number, available: number): Untold<TestPlan['staged']> {
  const plan = stagedPlan(threshold, groupSize, available)
  const clearlyBelow = Math.max(0, threshold - 0.15)
  const halfWay = threshold + (1 - threshold) / 3
  const clearlyAbove = threshold + (2 * (1 - threshold)) / 3
  return {
    groupSize,
    published: plan.published,
    stages: plan.stages.map((stage) => ({
      ...stage,
      confidence: message(`germination.confidence-${stage.confidence}`),
    })),
    outcomes: [clearlyBelow, threshold, halfWay, clearlyAbove].map((alive) => ({
      ...stagedOutcome(plan, alive),
    })),
  }
}

/** By when the lots of an accession should be tested next. */
type DueDays = readonly { readonly lotId: number; readonly accessionId: number; readonly on: IsoDate }[]

/** The days of every accession's lots, recomputed only where something was written that touches them. */
export const dueDays = new AccessionCache(dueDaysOf)

function dueDaysOf(reading: Reading, accessionIds: readonly number[]): ReadonlyMap<number, DueDays> {
  const oil = oilByCrop(reading)
  const policy = settingsOf(reading)
  const days = monitoredLots(reading.sqlite, accessionIds).map((row) => ({
    lotId: row.lotId,
    accessionId: row.accessionId,
    on: nextTestOf(row, oil.get(row.cropId) ?? null, policy).on,
  }))
  return Map.groupBy(days, ({ accessionId }) => accessionId)
}

export const listDueTests: Reads<'germination.list-due'> = (reading, input) => {
  const until = addDays(reading.today, input.withinDays)
  const due = [...dueDays.all(reading).values()]
    .flatMap((days) => days.filter(({ on }) => on <= until))
    .sort((one, other) => (one.on < other.on ? -1 : one.on > other.on ? 1 : one.lotId - other.lotId))
  const page = due.slice(input.offset, input.offset + input.limit)
  const accessionIds = [...new Set(page.map(({ accessionId }) => accessionId))]
  const rows = new Map(monitoredLots(reading.sqlite, accessionIds).map((row) => [row.lotId, row]))
  const oil = oilByCrop(reading)
  const policy = settingsOf(reading)
  const underTest = lotsUnderTest(
    reading.sqlite,
    page.map(({ lotId }) => lotId),
  )
  return {
    lots: page.map(({ lotId }) => {
      const row = rows.get(lotId)
      if (row === undefined) throw new Error(`Lot ${lotId} is due and not monitored`)
      return dueLine(
        reading,
        lotId,
        nextTestOf(row, oil.get(row.cropId) ?? null, policy),
        underTest.has(lotId),
      )
    }),
    total: due.length,
    late: due.filter(({ on }) => on <= reading.today).length,
  }
}

/** When a lot should be tested next: by the published rules or the forecast, whichever is sooner. */
function nextTestOf(row: MonitoredRow, oilPercent: number | null, policy: RegrowPolicy): TestDate {
  const { testedOn, tested, sprouted } = row
  const [soonest] = nextTestDates({
    receivedOn: isoDate(row.receivedOn),
    lastTest:
      testedOn === null || tested === null || sprouted === null
        ? null
        : { on: isoDate(testedOn), share: sprouted / tested },
    frozen: row.frozen === 1,
    oilPercent,
    forecastCrossing: crossingAhead(row),
    threshold: regrowThreshold(row.ownThreshold, policy),
  })
  const because = message('germination.why-split', { why: soonest.because })
  return tested !== null && row.ofParent === 1 ? { ...soonest, because } : soonest
}

/** The forecast crossing of a lot's threshold, unless its last test was later and has seen it already. */
function crossingAhead({ crossesOn, testedOn }: MonitoredRow): IsoDate | null {
  if (crossesOn === null || (testedOn !== null && crossesOn <= testedOn)) return null
  return isoDate(crossesOn)
}

/** The oil of each crop in per cent of dry weight, the middle of the table's span. */
function oilByCrop(reading: Reading): ReadonlyMap<string, number> {
  const rows = prepared(
    reading.sqlite,
    `SELECT id, (json_extract(reference, '$.oil_pct[0]') + json_extract(reference, '$.oil_pct[1]')) / 2.0 AS oil
     FROM crop WHERE json_extract(reference, '$.oil_pct[0]') IS NOT NULL`,
  ).all() as { id: string; oil: number }[]
  return new Map(rows.map(({ id, oil }) => [id, oil]))
}

function dueLine(reading: Reading, lotId: number, date: TestDate, underTest: boolean): Untold<DueTest> {
  const row = lotOrRefuse(reading, lotId, 'lotId')
  return {
    lotId,
    lotNumber: row.lotNumber,
    variety: row.variety,
    crop: row.crop,
    place: row.place ?? '',
    quantity: heldIn(row),
    on: date.on,
    late: date.on <= reading.today,
    because: date.because,
    source: date.source,
    confidence: message(`germination.confidence-${date.confidence}`),
    underTest,
  }
}
