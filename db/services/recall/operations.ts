import type { Handlers } from '../book/context.ts'
import { getRecall, listRecalls } from './recalls.ts'
import { previewRecall, recordOutcome, recordRecall } from './record-recall.ts'
import { traceLot } from './trace.ts'

/** The operations that this room answers. */
export const recallOperations = {
  'lot.trace': traceLot,
  'recall.preview': previewRecall,
  'recall.list': listRecalls,
  'recall.get': getRecall,
  'recall.record': recordRecall,
  'recall.record-outcome': recordOutcome,
} satisfies Partial<Handlers>
