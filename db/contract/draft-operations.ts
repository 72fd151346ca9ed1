import { z } from 'zod'
import { keeps, reads } from './operation.ts'

const DraftId = z
  .string()
  .regex(/^[A-Za-z0-9_-]{8,64}$/, 'A draft is named by 8 to 64 letters, digits, hyphens or underscores.')

/** The one list of the screens that keep drafts. */
const DraftKind = z.enum([
  'take-in',
  'hand-out',
  'take-back',
  'stocktake',
  'paper-sheet',
  'round',
  'bench',
  'season',
])

export const draftOperations = {
  'draft.save': keeps(
    'Keeps what is typed on an unfinished screen, so that a crash loses nothing; an empty text drops it.',
    z.strictObject({ draftId: DraftId, kind: DraftKind, text: z.string().max(500_000) }),
    z.object({ keptAt: z.string() }),
  ),
  'draft.list': reads(
    'Lists the unfinished screens of a kind, newest first.',
    z.strictObject({ kind: DraftKind }),
    z.object({
      drafts: z.array(
        z.object({
          draftId: z.string(),
          text: z.string(),
          keptAt: z.string(),
          earlierRun: z
            .boolean()
            .describe('kept before the collection was opened this time: nobody else is at it'),
        }),
      ),
    }),
  ),
} as const
