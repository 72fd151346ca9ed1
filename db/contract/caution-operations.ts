import { z } from 'zod'
import { Caution, Day, Id, Line, LotName } from './fields.ts'
import { writes } from './operation.ts'
import { Told } from './told.ts'

/** A caution that holds for a lot: since when, who said it and of which lot. */
export const SeedCaution = z.object({
  caution: Caution,
  note: z.string(),
  text: Told,
  since: z.string(),
  by: z.string().describe('who said it, by name as of now; empty: not said'),
  from: z.object(LotName).nullable().describe('the lot that it was said of; null: of this one'),
  whenDiscarded: Told.describe('what to mind where it is thrown away; empty: nothing'),
})

const OfLots = { lotIds: z.array(Id).min(1).max(500), caution: Caution, on: Day }

export const cautionOperations = {
  'lot.set-caution': writes(
    'Says of lots what they have to be careful about; it holds until it is ended, in quarantine or not.',
    { ...OfLots, note: z.string().trim().max(500).default('').describe('such as the name of a treatment') },
    {},
  ),
  'lot.end-caution': writes(
    'Ends a caution of lots, with the reason: it was checked, or it was never so.',
    { ...OfLots, reason: Line },
    {},
  ),
}
