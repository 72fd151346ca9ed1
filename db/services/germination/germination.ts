import { eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { seedCount } from '../../domain/amounts/seed-count.ts'
import { type IsoDate, isoDate } from '../../domain/dates/iso-date.ts'
import {
  type CountingChoice,
  countDue,
  tallied,
  testResult,
} from '../../domain/germination/germination-test.ts'
import { takeOut } from '../../domain/ledger/movement.ts'
import { type Message, message } from '../../messages/message.ts'
import { countsOf, sownIn, type TestRow } from '../../queries/germination-tests.ts'
import { movementsOf } from '../../queries/ledger.ts'
import { type LotRow, lotsOfAccessions } from '../../queries/lot-rows.ts'
import { latestMeasurement } from '../../queries/measurements.ts'
import {
  germinationCancel,
  germinationCount,
  germinationReplicate,
  germinationResult,
  germinationTest,
} from '../../schema/germination-tables.ts'
import { lot } from '../../schema/stock-tables.ts'
import { balanceOf, heldIn, weightInForce } from '../book/amounts.ts'
import type { Reading, Writes, Writing } from '../book/context.ts'
import { livingStockOf, thresholdOf } from '../book/living-stock.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { refusePieces } from '../book/pieces.ts'
import { reverseMovement } from '../book/reverse-movement.ts'
import { settingsOf } from '../book/settings.ts'
import { refuseTooMuch } from '../book/too-much.ts'
import { writeMovement } from '../book/write-movement.ts'
import { lotsOnTheDay } from '../forecast/chance-above.ts'
import { updateForecasts } from '../forecast/save-forecasts.ts'
import { recordOf, testOrRefuse } from './germination-record.ts'
import { refuseAStrayStage } from './staged-tests.ts'
import { replicatesOf, resultOfTest } from './test-counts.ts'

/** A test entered in one go says only what sprouted. */
const NOTHING_MORE: CountingChoice = { hard: false, fresh: false }

export const beginTest: Writes<'germination.start'> = (writing, input) => {
  if (input.firstDay !== null && input.firstDay >= input.finalDay) {
    refuse('days-out-of-order', message('germination.days-swapped'), {
      field: 'firstDay',
      todo: message('germination.days-swapped-todo'),
    })
  }
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  if (input.followsTestId !== null) refuseAStrayStage(writing, row.lotId, input.followsTestId)
  const testId = layOut(writing, row, {
    ...input,
    followsId: input.followsTestId,
    startedOn: input.on,
    takenOn: input.on,
    field: 'replicates',
  })
  const sown = sumOf(input.replicates)
  const due = countDue({ ...input, startedOn: isoDate(input.on), lastCountOn: null }, writing.today)
  const left = heldIn(lotOrRefuse(writing, input.lotId, 'lotId'))
  const said = message('germination.said-began', {
    sown: { seeds: sown, unit: row.countedUnit },
    lot: row.lotNumber,
  })
  return { testId, due, left, said, undoable: true }
}

export const countTest: Writes<'germination.record-count'> = (writing, input) => {
  const { sqlite, entryId } = writing
  const test = testOnBench(writing, input.testId, input.on)
  if (test.startedOn !== null) refuseUnlessLater(test.startedOn, input.on, 'on')
  const sown = sownIn(sqlite, test.testId)
  if (input.replicates.length !== sown.length) {
    refuse('count-unfit', message('germination.replicates-unfit', { replicates: sown.length }), {
      field: 'replicates',
    })
  }
  const before = countsOf(sqlite, test.testId)
  for (const [index, laidOut] of sown.entries()) {
    const elsewhere = before.filter((row) => row.ordinal === index + 1 && row.on !== input.on)
    const now = input.replicates[index]
    const counted = sumOf(elsewhere.map(tallied)) + (now === undefined ? 0 : tallied(now))
    if (counted > laidOut) {
      refuse(
        'count-unfit',
        message('germination.too-many-counted', { replicate: index + 1, counted, sown: laidOut }),
        {
          field: `replicates.${index}`,
          todo: message('germination.too-many-counted-todo'),
        },
      )
    }
  }
  for (const [index, tally] of input.replicates.entries()) {
    const place = { testId: test.testId, onDate: input.on, entryId, ordinal: index + 1 }
    writing.db
      .insert(germinationCount)
      .values({ ...place, ...tally })
      .run()
  }
  const corrects = before.some((row) => row.on === input.on)
  const normal = sumOf(input.replicates.map((tally) => tally.normal))
  const said = message('germination.said-counted', {
    lot: test.lotNumber,
    sprouted: normal,
    on: { day: input.on },
    again: corrects ? 'yes' : 'no',
  })
  return { test: recordOf(writing, testOrRefuse(writing, test.testId)), said, undoable: true }
}

export const finishTest: Writes<'germination.finish'> = (writing, input) => {
  const test = testOnBench(writing, input.testId, input.on)
  if (test.lastCountOn === null) {
    refuse('not-counted-yet', message('germination.not-counted'), {
      field: 'testId',
      todo: message('germination.not-counted-todo'),
    })
  }
  if (input.on < test.lastCountOn) {
    refuse('days-out-of-order', message('germination.counted-later', { on: { day: test.lastCountOn } }), {
      field: 'on',
      todo: message('germination.that-day-or-later'),
    })
  }
  putResult(writing, test, input.on, input.choice, input.note)
  const row = lotOrRefuse(writing, test.lotId, 'testId')
  const words = wordsOf(writing, test.testId, isoDate(input.on), row, input.choice)
  return {
    words,
    test: recordOf(writing, testOrRefuse(writing, test.testId)),
    stock: stockOf(writing, row),
    said: message('germination.said-result', { lot: row.lotNumber, result: words }),
    undoable: true,
  }
}

export const cancelTest: Writes<'germination.cancel'> = (writing, input) => {
  const test = testOnBench(writing, input.testId, input.on)
  const { on, reason, seedsBack } = input
  if (seedsBack) putSeedsBack(writing, test, reason)
  writing.db
    .insert(germinationCancel)
    .values({ testId: test.testId, onDate: on, reason, seedsBack, entryId: writing.entryId })
    .run()
  return {
    left: heldIn(lotOrRefuse(writing, test.lotId, 'testId')),
    said: message('germination.said-gave-up', { lot: test.lotNumber, back: seedsBack ? 'yes' : 'no' }),
    // A reversal is not reversed again: seed that went back is taken out by a new test.
    undoable: !seedsBack,
  }
}

/** Seed that took water up would spoil in the packet, so nothing that was counted goes back. */
function putSeedsBack(writing: Writing, test: TestRow, reason: string): void {
  if (test.lastCountOn !== null) {
    refuse('seed-was-wet', message('germination.was-wet'), {
      field: 'seedsBack',
      todo: message('germination.without-seeds-back'),
    })
  }
  if (test.movementId === null) {
    refuse('seed-not-from-stock', message('germination.not-from-stock'), {
      field: 'seedsBack',
      todo: message('germination.without-seeds-back'),
    })
  }
  const line = movementsOf(writing.sqlite, test.entryId).find(
    ({ movementId }) => movementId === test.movementId,
  )
  if (line === undefined) throw new Error(`The ledger lacks the movement of test ${test.testId}`)
  reverseMovement(writing, line, reason, 'seedsBack')
}

export const recordGermination: Writes<'germination.record'> = (writing, input) => {
  const { tested, sprouted, on, startedOn } = input
  if (startedOn !== null) refuseUnlessLater(startedOn, on, 'startedOn')
  if (sprouted > tested) {
    refuse('count-unfit', message('germination.more-than-laid-out', { sprouted, tested }), {
      field: 'sprouted',
    })
  }
  const row = lotOrRefuse(writing, input.lotId, 'lotId')
  const testId = layOut(writing, row, {
    replicates: [tested],
    medium: '',
    temperature: '',
    firstDay: null,
    finalDay: null,
    followsId: null,
    fromStock: input.fromStock,
    note: input.note,
    startedOn,
    takenOn: on,
    field: 'tested',
  })
  writing.db
    .insert(germinationCount)
    .values({
      testId,
      onDate: on,
      entryId: writing.entryId,
      ordinal: 1,
      normal: sprouted,
      abnormal: 0,
      hard: 0,
      fresh: 0,
      dead: 0,
    })
    .run()
  putResult(writing, testOrRefuse(writing, testId), on, NOTHING_MORE, input.note)
  const words = wordsOf(writing, testId, isoDate(on), row, NOTHING_MORE)
  const said = message('germination.said-result', { lot: row.lotNumber, result: words })
  return { testId, words, stock: stockOf(writing, row), said, undoable: true }
}

interface LaidOut {
  readonly replicates: readonly number[]
  readonly medium: string
  readonly temperature: string
  readonly firstDay: number | null
  readonly finalDay: number | null
  readonly followsId: number | null
  readonly fromStock: boolean
  readonly note: string
  readonly startedOn: string | null
  readonly takenOn: string
  /** The input field that names the seeds, for a refusal. */
  readonly field: string
}

/** Writes a test with its replicates and takes its seeds from the stock. */
function layOut(writing: Writing, row: LotRow, of: LaidOut): number {
  const { db, entryId } = writing
  refusePieces(row, 'lotId')
  const { replicates, fromStock, takenOn, field, ...facts } = of
  const movementId = fromStock ? takeSeeds(writing, row, sumOf(replicates), takenOn, field) : null
  const { id: testId } = db
    .insert(germinationTest)
    .values({ ...facts, lotId: row.lotId, movementId, entryId })
    .returning({ id: germinationTest.id })
    .get()
  for (const [index, sown] of replicates.entries()) {
    db.insert(germinationReplicate)
      .values({ testId, ordinal: index + 1, sown })
      .run()
  }
  return testId
}

function takeSeeds(writing: Writing, row: LotRow, seeds: number, on: string, field: string): number {
  const { weight } = weightInForce(row)
  const amount = { kind: 'count', count: seedCount(seeds), estimated: false } as const
  const out = takeOut(balanceOf(row), amount, weight)
  if (out.kind === 'not-enough') refuseTooMuch(row, out, field, settingsOf(writing))
  const line = {
    lotId: row.lotId,
    kind: 'test',
    on,
    change: out.change,
    measured: out.measured,
    weight,
  } as const
  return writeMovement(writing, line)
}

function putResult(writing: Writing, test: TestRow, on: string, choice: CountingChoice, note: string): void {
  const result = testResult(replicatesOf(writing, test.testId), choice)
  writing.db
    .insert(germinationResult)
    .values({
      lotId: test.lotId,
      testId: test.testId,
      testedOn: on,
      tested: result.sown,
      sprouted: result.germinated,
      hardAlive: choice.hard,
      freshAlive: choice.fresh,
      note,
      entryId: writing.entryId,
    })
    .run()
  putLatestResultInForce(writing, test.lotId)
}

/** A test that can still be counted, finished or given up on a day, or a refusal. */
function testOnBench(writing: Writing, testId: number, on: string): TestRow {
  const test = testOrRefuse(writing, testId)
  if (test.testedOn !== null) {
    refuse('test-over', message('germination.finished-already', { on: { day: test.testedOn } }), {
      field: 'testId',
      todo: message('germination.finished-already-todo'),
    })
  }
  if (test.cancelledOn !== null) {
    refuse('test-over', message('germination.given-up-already', { on: { day: test.cancelledOn } }), {
      field: 'testId',
    })
  }
  if (test.startedOn !== null && on < test.startedOn) {
    refuse('days-out-of-order', message('germination.began-later', { on: { day: test.startedOn } }), {
      field: 'on',
      todo: message('germination.that-day-or-later'),
    })
  }
  return test
}

/** No seed sprouts on the day it is laid out, so that one of two equal days is wrong. */
function refuseUnlessLater(startedOn: string, on: string, field: string): void {
  if (on > startedOn) return
  refuse('days-out-of-order', message('germination.not-on-first-day', { on: { day: startedOn } }), {
    field,
    todo: message('germination.check-days'),
  })
}

function wordsOf(
  writing: Reading,
  testId: number,
  on: IsoDate,
  row: LotRow,
  choice: CountingChoice,
): Message {
  const threshold = thresholdOf(row, settingsOf(writing))
  const lotOnDayOf = lotsOnTheDay(writing, [row.lotId])(row.lotId)
  return resultOfTest(writing, { testId, on }, threshold, choice, lotOnDayOf)
}

function stockOf(writing: Reading, row: LotRow): Result<'germination.record'>['stock'] {
  return livingStockOf(lotsOfAccessions(writing.sqlite, [row.accessionId]), settingsOf(writing))
}

function sumOf(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0)
}

/** Points a lot at its latest result by date that was not taken back, and forecasts it anew. */
export function putLatestResultInForce(writing: Writing, lotId: number): void {
  const germinationId = latestMeasurement(writing.sqlite, 'germination_result', lotId)
  writing.db.update(lot).set({ germinationId }).where(eq(lot.id, lotId)).run()
  updateForecasts(writing)
}
