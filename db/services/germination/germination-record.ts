import type { TestLine, TestRecord } from '../../contract/germination-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import { countedUnit } from '../../domain/crops/counted-unit.ts'
import { daysBetween } from '../../domain/dates/day-arithmetic.ts'
import { type IsoDate, isoDate } from '../../domain/dates/iso-date.ts'
import { clopperPearsonInterval } from '../../domain/germination/clopper-pearson.ts'
import {
  type CountDue,
  type CountingChoice,
  countDue,
  seedlingsByDay,
  sumOf,
  type TestReplicate,
  tallied,
  testResult,
} from '../../domain/germination/germination-test.ts'
import { choiceTold, resultTold, speedTold, toleranceTold } from '../../domain/germination/result-told.ts'
import { cumulativeCurve, germinationSpeed } from '../../domain/germination/speed.ts'
import { plannableThreshold } from '../../domain/germination/staged-plan.ts'
import { probabilityAtLeast } from '../../domain/germination/threshold-verdict.ts'
import { judgeTolerance } from '../../domain/germination/tolerance.ts'
import { wilsonInterval } from '../../domain/germination/wilson.ts'
import { type Message, message } from '../../messages/message.ts'
import {
  type CountRow,
  countsOf,
  type TestRow,
  testRow,
  testRows,
  testTotal,
} from '../../queries/germination-tests.ts'
import type { Reading, Reads } from '../book/context.ts'
import { thresholdOf } from '../book/living-stock.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { testCautions } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { type LotOnDayOf, lotsOnTheDay } from '../forecast/chance-above.ts'
import { stageOf } from './staged-tests.ts'
import { replicatesOf, resultOfTest, tallyOf } from './test-counts.ts'

/** A bench of more tests than this is no bench. */
const MOST_ON_BENCH = 100_000

/** A test that stands, or a refusal. */
export function testOrRefuse(reading: Reading, testId: number): TestRow {
  return (
    testRow(reading.sqlite, testId) ??
    refuse('not-found', message('germination.not-there'), { field: 'testId' })
  )
}

export const getTest: Reads<'germination.get'> = (reading, input) => {
  return recordOf(reading, testOrRefuse(reading, input.testId), input.choice)
}

/** A test with its counts and what they come to, counted as it was finished unless another choice is given. */
export function recordOf(reading: Reading, row: TestRow, asked?: CountingChoice): Untold<TestRecord> {
  const replicates = replicatesOf(reading, row.testId)
  const choice = asked ?? { hard: row.hardAlive === 1, fresh: row.freshAlive === 1 }
  const startedOn = row.startedOn === null ? null : isoDate(row.startedOn)
  const counts = countsByDay(countsOf(reading.sqlite, row.testId), startedOn)
  const byDay = startedOn === null ? [] : seedlingsByDay(replicates, startedOn)
  return {
    ...lineFacts(reading, row),
    unit: countedUnit(row.countedUnit),
    medium: row.medium,
    temperature: row.temperature,
    firstDay: row.firstDay,
    finalDay: row.finalDay,
    fromStock: row.movementId !== null,
    note: row.note,
    cautions: testCautions(reading, row.lotId),
    replicates: replicates.map((replicate) => ({
      sown: replicate.sown,
      tally: sumOf(replicate.counts.map(({ tally }) => tally)),
    })),
    counts,
    curve: [...cumulativeCurve(byDay)],
    choice,
    result:
      counts.length === 0
        ? null
        : {
            ...resultOf(reading, row, replicates, choice, lotsOnTheDay(reading, [row.lotId])(row.lotId)),
            ...soFar(row, replicates, asked),
          },
    ...stageOf(reading, row, plannableThreshold(thresholdOfLot(reading, row.lotId))),
    finished:
      row.testedOn === null || row.resultEntryId === null
        ? null
        : { on: row.testedOn, note: row.resultNote ?? '', entryId: row.resultEntryId },
    cancelled:
      row.cancelledOn === null
        ? null
        : { on: row.cancelledOn, reason: row.cancelReason ?? '', seedsBack: row.seedsBack === 1 },
  }
}

function thresholdOfLot(reading: Reading, lotId: number): number {
  return thresholdOf(lotOrRefuse(reading, lotId, 'testId'), settingsOf(reading))
}

/** While seeds still lie there nothing is said of the lot, unless what an end now would say is asked for. */
function soFar(
  row: TestRow,
  replicates: readonly TestReplicate[],
  asked: CountingChoice | undefined,
): { readonly words?: Message } {
  const tally = sumOf(replicates.flatMap(({ counts }) => counts.map((count) => count.tally)))
  const left = row.sown - tallied(tally)
  if (asked !== undefined || left === 0 || stateOf(row) !== 'under-way') return {}
  return { words: message('germination.so-far', { sprouted: tally.normal, sown: row.sown, left }) }
}

function countsByDay(rows: readonly CountRow[], startedOn: IsoDate | null): TestRecord['counts'] {
  return [...Map.groupBy(rows, (row) => row.on)].flatMap(([on, ofDay]) =>
    ofDay.slice(0, 1).map(({ entryId }) => ({
      on,
      day: startedOn === null ? null : daysBetween(startedOn, isoDate(on)),
      entryId,
      replicates: ofDay.map(tallyOf),
    })),
  )
}

function resultOf(
  reading: Reading,
  row: TestRow,
  replicates: readonly TestReplicate[],
  choice: CountingChoice,
  lotOnDayOf: LotOnDayOf,
): NonNullable<Untold<TestRecord>['result']> {
  const { germinated, sown, tally, unsorted, replicates: shares } = testResult(replicates, choice)
  const threshold = thresholdOfLot(reading, row.lotId)
  const on = isoDate(row.testedOn ?? reading.today)
  const lot = lotOnDayOf({ on, tested: sown, sprouted: germinated })
  const tolerance = judgeTolerance(shares)
  const speed =
    row.startedOn === null ? null : germinationSpeed(seedlingsByDay(replicates, isoDate(row.startedOn)))
  return {
    germinated,
    tested: sown,
    tally,
    unsorted,
    wilson: [...wilsonInterval(germinated, sown)],
    exact: [...clopperPearsonInterval(germinated, sown)],
    threshold,
    chanceAbove: lot.chanceAbove ?? probabilityAtLeast(threshold, germinated, sown),
    chanceFrom: lot.chanceAbove === null ? 'test' : 'forecast',
    words: resultTold(germinated, sown, threshold, lot, { tally, choice }),
    choiceWords: choiceTold(tally, choice),
    tolerance: { kind: tolerance.kind, words: toleranceTold(tolerance) },
    speed: speed === null ? null : { ...speed, words: speedTold(speed) },
  }
}

export const listTests: Reads<'germination.list'> = (reading, input) => {
  const onBench = testRows(reading.sqlite, { state: 'under-way' }, { offset: 0, limit: MOST_ON_BENCH })
  const toCount = onBench.filter((row) => dueOf(reading, row)?.when !== 'later').length
  if (input.state !== 'under-way') {
    const rows = testRows(reading.sqlite, input, input)
    const total = testTotal(reading.sqlite, input)
    const ended = rows.filter((row) => stateOf(row) === 'finished').map((row) => row.lotId)
    const onTheDay = lotsOnTheDay(reading, ended)
    return { tests: rows.map((row) => testLine(reading, row, onTheDay(row.lotId))), total, toCount }
  }
  const asked = onBench.filter((row) => input.lotId === undefined || row.lotId === input.lotId)
  const total = onBench.length < MOST_ON_BENCH ? asked.length : testTotal(reading.sqlite, input)
  const tests = asked
    .map((row) => ({ ...lineFacts(reading, row), replicates: row.replicates, words: '' }))
    .toSorted((one, other) => dayDue(one).localeCompare(dayDue(other)))
    .slice(input.offset, input.offset + input.limit)
  return { tests, total, toCount }
}

function dayDue({ due }: Pick<TestLine, 'due'>): string {
  return due?.on ?? ''
}

function testLine(reading: Reading, row: TestRow, lotOnDayOf: LotOnDayOf): Untold<TestLine> {
  const words = wordsOfEnd(reading, row, lotOnDayOf)
  return { ...lineFacts(reading, row), replicates: row.replicates, words }
}

function lineFacts(reading: Reading, row: TestRow) {
  return {
    testId: row.testId,
    lotId: row.lotId,
    lotNumber: row.lotNumber,
    variety: row.variety,
    crop: row.crop,
    state: stateOf(row),
    startedOn: row.startedOn,
    sown: row.sown,
    normal: row.normal,
    due: dueOf(reading, row),
  }
}

function stateOf(row: TestRow): TestLine['state'] {
  if (row.cancelledOn !== null) return 'cancelled'
  return row.testedOn === null ? 'under-way' : 'finished'
}

function dueOf(reading: Reading, row: TestRow): CountDue | null {
  if (stateOf(row) !== 'under-way' || row.startedOn === null || row.finalDay === null) return null
  const lastCountOn = row.lastCountOn === null ? null : isoDate(row.lastCountOn)
  const facts = { startedOn: isoDate(row.startedOn), firstDay: row.firstDay, finalDay: row.finalDay }
  return countDue({ ...facts, lastCountOn }, reading.today)
}

function wordsOfEnd(reading: Reading, row: TestRow, lotOnDayOf: LotOnDayOf): Message | string {
  if (row.cancelReason !== null) return row.cancelReason
  if (row.testedOn === null) return ''
  const choice = { hard: row.hardAlive === 1, fresh: row.freshAlive === 1 }
  const threshold = thresholdOfLot(reading, row.lotId)
  const test = { testId: row.testId, on: isoDate(row.testedOn) }
  return resultOfTest(reading, test, threshold, choice, lotOnDayOf)
}
