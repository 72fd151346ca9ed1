import { z } from 'zod'
import { ACCESSION_POLICIES, BREEDING_STATUSES } from '../domain/shared/closed-sets.ts'
import { Day, Id, LivingStock } from './fields.ts'
import { writes } from './operation.ts'
import { Told } from './told.ts'

/** How an accession was bred and whether it is kept, as a card shows it. */
export const KeepingShown = z.object({
  breeding: z.enum(BREEDING_STATUSES),
  policy: z.enum(ACCESSION_POLICIES),
  words: Told.describe('in a line; empty: nothing was said'),
  on: z.string().describe('the day on which that was decided; empty: never'),
  reason: z.string(),
})

export const keepingOperations = {
  'accession.decide-keeping': writes(
    'Says how an accession was bred and whether the library keeps and regrows it, only passes it on, or has closed it.',
    {
      accessionId: Id,
      breeding: z.enum(BREEDING_STATUSES),
      policy: z.enum(ACCESSION_POLICIES),
      on: Day,
      reason: z.string().trim().max(500).default('').describe('why; must be told where it is closed'),
    },
    { stock: LivingStock },
  ),
}
