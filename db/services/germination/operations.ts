import type { Handlers } from '../book/context.ts'
import { beginTest, cancelTest, countTest, finishTest, recordGermination } from './germination.ts'
import { listDueTests, planTest } from './germination-advice.ts'
import { getTest, listTests } from './germination-record.ts'

/** The operations that this room answers. */
export const germinationOperations = {
  'germination.plan': planTest,
  'germination.list': listTests,
  'germination.get': getTest,
  'germination.list-due': listDueTests,
  'germination.record': recordGermination,
  'germination.start': beginTest,
  'germination.record-count': countTest,
  'germination.finish': finishTest,
  'germination.cancel': cancelTest,
} satisfies Partial<Handlers>
