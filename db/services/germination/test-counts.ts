import { type IsoDate, isoDate } from '../../domain/dates/iso-date.ts'
import {
  type CountingChoice,
  type Tally,
  type TestReplicate,
  testResult,
} from '../../domain/germination/germination-test.ts'
import { resultTold } from '../../domain/germination/result-told.ts'
import type { Message } from '../../messages/message.ts'
import { type CountRow, countsOf, sownIn } from '../../queries/germination-tests.ts'
import type { Reading } from '../book/context.ts'
import type { LotOnDayOf } from '../forecast/chance-above.ts'

/** The replicates of a test with their counts in force. */
export function replicatesOf(reading: Reading, testId: number): TestReplicate[] {
  const counts = countsOf(reading.sqlite, testId)
  return sownIn(reading.sqlite, testId).map((sown, index) => ({
    sown,
    counts: counts
      .filter((row) => row.ordinal === index + 1)
      .map((row) => ({ on: isoDate(row.on), tally: tallyOf(row) })),
  }))
}

/** The categories of a count alone. */
export function tallyOf({ normal, abnormal, hard, fresh, dead }: CountRow): Tally {
  return { normal, abnormal, hard, fresh, dead }
}

/** The result of a test of a day in a sentence, as it was counted, with the verdict that the forecast of its lot bears out. */
export function resultOfTest(
  reading: Reading,
  test: { readonly testId: number; readonly on: IsoDate },
  threshold: number,
  choice: CountingChoice,
  lotOnDayOf: LotOnDayOf,
): Message {
  const { germinated, sown, tally } = testResult(replicatesOf(reading, test.testId), choice)
  const lot = lotOnDayOf({ on: test.on, tested: sown, sprouted: germinated })
  return resultTold(germinated, sown, threshold, lot, { tally, choice })
}
