import type { Handlers } from '../book/context.ts'
import { listEntries, undoEntry } from './entries.ts'

/** The operations that this room answers. */
export const entryLogOperations = {
  'entry.list': listEntries,
  'entry.undo': undoEntry,
} satisfies Partial<Handlers>
