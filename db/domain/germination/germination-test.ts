import { addDays, daysBetween } from '../dates/day-arithmetic.ts'
import type { IsoDate } from '../dates/iso-date.ts'
import type { ReplicateShare } from './homogeneity.ts'
import type { DayCount } from './speed.ts'

/**
 * What becomes of a seed in a test: normal and abnormal seedling, hard (took no water up), fresh (took water up, sound,
 * did not germinate: dormant) and dead. The categories of 7 CFR 201.56 and of the international rules (from memory).
 */
export const CATEGORIES = ['normal', 'abnormal', 'hard', 'fresh', 'dead'] as const
export type Category = (typeof CATEGORIES)[number]

/** Seeds of one replicate by category. */
export type Tally = Readonly<Record<Category, number>>

/** Seeds that were taken out of a replicate at one count, not a running total. */
export interface Count {
  readonly on: IsoDate
  readonly tally: Tally
}

export interface TestReplicate {
  readonly sown: number
  readonly counts: readonly Count[]
}

/** Which seed that did not germinate the keeper counts as alive. */
export interface CountingChoice {
  readonly hard: boolean
  readonly fresh: boolean
}

/** What a test comes to. */
export interface TestResult {
  readonly sown: number
  /** Seeds counted as alive, by the keeper's choice. */
  readonly germinated: number
  readonly tally: Tally
  /** Seeds that nobody sorted: in a home test, those that simply did not sprout. */
  readonly unsorted: number
  readonly replicates: readonly ReplicateShare[]
}

export const NOTHING_COUNTED: Tally = { normal: 0, abnormal: 0, hard: 0, fresh: 0, dead: 0 }

/** Seeds of a tally in all. */
export function tallied(tally: Tally): number {
  return CATEGORIES.reduce((sum, category) => sum + tally[category], 0)
}

/** Several tallies added up. */
export function sumOf(tallies: readonly Tally[]): Tally {
  return tallies.reduce(
    (sum, tally) => ({
      normal: sum.normal + tally.normal,
      abnormal: sum.abnormal + tally.abnormal,
      hard: sum.hard + tally.hard,
      fresh: sum.fresh + tally.fresh,
      dead: sum.dead + tally.dead,
    }),
    NOTHING_COUNTED,
  )
}

/** Seeds of a tally that are counted as alive. Abnormal seedlings are not: they do not make plants. */
export function aliveOf(tally: Tally, choice: CountingChoice): number {
  return tally.normal + (choice.hard ? tally.hard : 0) + (choice.fresh ? tally.fresh : 0)
}

/** What a test comes to, over all its replicates. Throws RangeError where more was counted than sown. */
export function testResult(replicates: readonly TestReplicate[], choice: CountingChoice): TestResult {
  const tallies = replicates.map(({ sown, counts }) => {
    const tally = sumOf(counts.map((count) => count.tally))
    if (tallied(tally) > sown) throw new RangeError(`${tallied(tally)} counted of ${sown} sown`)
    return tally
  })
  const sown = replicates.reduce((sum, replicate) => sum + replicate.sown, 0)
  const tally = sumOf(tallies)
  return {
    sown,
    germinated: aliveOf(tally, choice),
    tally,
    unsorted: sown - tallied(tally),
    replicates: replicates.map((replicate, index) => ({
      sown: replicate.sown,
      germinated: aliveOf(tallies[index] ?? NOTHING_COUNTED, choice),
    })),
  }
}

/** Normal seedlings by day since the test began, for the curve and the speed. Hard and dormant seed has no day. */
export function seedlingsByDay(replicates: readonly TestReplicate[], startedOn: IsoDate): DayCount[] {
  return replicates.flatMap(({ counts }) =>
    counts.map(({ on, tally }) => ({ day: daysBetween(startedOn, on), germinated: tally.normal })),
  )
}

/** When a test under way should be counted next. */
export interface CountDue {
  readonly on: IsoDate
  readonly which: 'first' | 'final'
  readonly when: 'late' | 'today' | 'later'
}

/**
 * The next count of a test: the first on its day, else the final one.
 *
 * `firstDay` and `finalDay` are days since the start; null: no first count is wanted. A first count made a day or more
 * early does not stand for the one that is due, unless by the three days that 7 CFR 201.58 allows (seen).
 */
export function countDue(
  test: {
    readonly startedOn: IsoDate
    readonly firstDay: number | null
    readonly finalDay: number
    readonly lastCountOn: IsoDate | null
  },
  today: IsoDate,
): CountDue {
  const first = test.firstDay === null ? null : addDays(test.startedOn, test.firstDay)
  const firstDone = first === null || (test.lastCountOn !== null && test.lastCountOn >= addDays(first, -3))
  const on = firstDone ? addDays(test.startedOn, test.finalDay) : first
  const when = on < today ? 'late' : on === today ? 'today' : 'later'
  return { on, which: firstDone ? 'final' : 'first', when }
}
