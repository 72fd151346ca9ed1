import type { TestPlan, TestRecord } from '../../contract/germination-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import { daysBetween } from '../../domain/dates/day-arithmetic.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { STAGES_WITHIN_DAYS, stagedDecision } from '../../domain/germination/staged-plan.ts'
import { stagedTold } from '../../domain/germination/staged-told.ts'
import { message } from '../../messages/message.ts'
import { followerOf, type TestRow, testRow, testRows } from '../../queries/germination-tests.ts'
import type { Reading } from '../book/context.ts'

/** The stages of a test up to itself, the first of them first. */
function stagesUpTo(reading: Reading, row: TestRow): TestRow[] {
  const before = row.followsId === null ? undefined : testRow(reading.sqlite, row.followsId)
  return before === undefined ? [row] : [...stagesUpTo(reading, before), row]
}

/** What the stages that are over come to; null where none is. */
function addedUp(stages: readonly TestRow[], threshold: number) {
  const over = stages.filter(({ testedOn }) => testedOn !== null)
  const [first] = over
  if (first === undefined) return null
  const sum = {
    stages: over.length,
    tested: over.reduce((seeds, { sown }) => seeds + sown, 0),
    germinated: over.reduce((seeds, { sprouted }) => seeds + (sprouted ?? 0), 0),
  }
  const decision = stagedDecision(threshold, first.sown, sum.tested, sum.germinated)
  return {
    ...sum,
    decision: decision.kind,
    words: stagedTold(sum, decision, threshold),
    groupSize: first.sown,
  }
}

/** A test as a stage: the sum of those that are over, and what follows. */
export function stageOf(
  reading: Reading,
  row: TestRow,
  threshold: number,
): Pick<Untold<TestRecord>, 'staged' | 'followedBy'> {
  const stages = stagesUpTo(reading, row)
  const sum = stages.length < 2 ? null : addedUp(stages, threshold)
  const { groupSize: _, ...staged } = sum ?? { groupSize: 0 }
  return { staged: 'words' in staged ? staged : null, followedBy: followerOf(reading.sqlite, row.testId) }
}

/** The latest test of a lot that a next stage may follow. */
export function openStages(reading: Reading, lotId: number, threshold: number): Untold<TestPlan>['follows'] {
  const [row] = testRows(reading.sqlite, { state: 'finished', lotId }, { offset: 0, limit: 1 })
  if (row === undefined || row.testedOn === null || followerOf(reading.sqlite, row.testId) !== null)
    return null
  if (daysBetween(isoDate(row.testedOn), reading.today) > STAGES_WITHIN_DAYS) return null
  const sum = addedUp(stagesUpTo(reading, row), threshold)
  return sum?.decision === 'go-on' ? { ...sum, testId: row.testId, on: row.testedOn } : null
}

/** Refuses a stage that does not follow a finished test of its own lot. */
export function refuseAStrayStage(reading: Reading, lotId: number, followsTestId: number): void {
  const field = 'followsTestId'
  const before = testRow(reading.sqlite, followsTestId)
  if (before === undefined || before.lotId !== lotId)
    refuse('stage-unfit', message('germination.stage-of-another'), { field })
  if (before.testedOn === null) {
    refuse('stage-unfit', message('germination.stage-not-over'), {
      field,
      todo: message('germination.stage-not-over-todo'),
    })
  }
  if (followerOf(reading.sqlite, followsTestId) !== null)
    refuse('stage-unfit', message('germination.stage-followed'), { field })
}
