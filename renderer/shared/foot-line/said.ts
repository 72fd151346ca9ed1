import { createTold } from '../client/told.ts'

/** What just happened, in one sentence; with its entry where it can be taken back. */
export interface Said {
  readonly said: string
  readonly entryId?: number
  readonly undoable?: boolean
}

/** Says what just happened on the foot line. A receipt of a write can be passed as it is. */
export const { tell: say, useTold: useSaid } = createTold<Said | null>(null)
