import { z } from 'zod'
import { reads, writes } from './operation.ts'

const BackupLine = z.object({
  file: z.string(),
  where: z.enum(['own-folder', 'second-folder']),
  why: z.string().describe('what it was made for, in words'),
  at: z.string().describe('when it was made'),
  bytes: z.int(),
})
export type BackupLine = z.infer<typeof BackupLine>

const Said = z.object({ count: z.int(), latest: z.array(z.object({ at: z.string(), said: z.string() })) })

export const BackupComparison = z.object({
  file: z.string(),
  sameLibrary: z.boolean().describe('whether it is an earlier state of the open collection, not another one'),
  libraryName: z.string(),
  lastWrittenAt: z.string(),
  counts: z.array(z.object({ what: z.string(), open: z.int(), backup: z.int() })),
  onlyOpen: Said.describe('entries of the open collection that the backup does not have'),
  onlyBackup: Said.describe('entries of the backup that the open collection does not have'),
  lots: z
    .array(z.object({ number: z.string(), open: z.string(), backup: z.string() }))
    .describe('lots that hold something else, fifty at most'),
  lotsDiffering: z.int(),
})
export type BackupComparison = z.infer<typeof BackupComparison>

export const backupOperations = {
  'backup.list': reads(
    'Lists the backups of the collection, newest first, and where and how much is kept. Answers for a damaged file too.',
    z.strictObject({}),
    z.object({
      folder: z.string(),
      secondFolder: z.string().describe('empty: nowhere else'),
      secondThere: z.boolean(),
      limitMb: z.int().nullable().describe('null where the collection cannot be opened'),
      backups: z.array(BackupLine),
      lastGood: z
        .string()
        .nullable()
        .describe('for a collection that cannot be opened: the newest whole backup'),
      trouble: z.string().nullable().describe('why the last automatic backup failed'),
      underWay: z
        .object({
          doing: z.enum(['copying', 'checking']),
          copied: z.number().min(0).max(1).describe('how much of the file is copied'),
        })
        .nullable()
        .describe('how far the backup is that is being made'),
    }),
  ),
  'backup.compare': reads(
    'Opens a backup, checks all of it, and says what differs from the open collection.',
    z.strictObject({ file: z.string().trim().min(1).max(1_000) }),
    BackupComparison,
  ),
  'backup.change-rule': writes(
    'Changes the second folder that backups are copied to, and how much they may take in each folder.',
    {
      secondFolder: z.string().trim().max(1_000).optional().describe('empty: nowhere else'),
      limitMb: z.int().min(10).max(1_000_000).optional().describe('megabytes'),
    },
    {},
  ),
  'backup.restore': writes(
    'Restores a backup into a new file and opens that; the file that was open stays as it is.',
    { file: z.string().trim().min(1).max(1_000) },
    { file: z.string().describe('the new file') },
  ),
} as const
