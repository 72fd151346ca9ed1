import { z } from 'zod'
import { SHARED_WITH } from '../domain/shared/closed-sets.ts'
import { isWebAddress } from '../domain/terms/gift-limits.ts'
import { Day, Id } from './fields.ts'
import { writes } from './operation.ts'
import { says, Told } from './told.ts'

const GiverWords = z.string().trim().max(500, says('fits.under-500'))

/** What the giver of seed wants done and not done with it; all of it can be left out. */
export const GiftLimits = z.strictObject({
  share: z.enum(SHARED_WITH).default('anyone').describe('who may have seed of it'),
  publishStory: z
    .boolean()
    .default(true)
    .describe('whether its story and the donor’s words may be published'),
  publishName: z.boolean().default(true).describe('whether the donor may be named, if they wish to be'),
  mayBeSold: z.boolean().default(true),
  agreement: GiverWords.default('').describe('the authority or agreement that this rests on'),
  agreementEnds: Day.nullable().default(null).describe('the last day of the agreement'),
  communityLabel: GiverWords.default('').describe(
    'the text of a label that a community issued, as they wrote it',
  ),
  communityLink: GiverWords.refine((text) => text === '' || isWebAddress(text), says('fits.web-address'))
    .default('')
    .describe('the address of that label'),
})
export type GiftLimits = z.infer<typeof GiftLimits>

export const termsOperations = {
  'accession.change-terms': writes(
    'Sets who may have seed of a gift and what may be told of it, for all lots of the accession.',
    { accessionId: Id, limits: GiftLimits },
    { limitsTold: z.array(Told).describe('what holds now, a line each; none: no limits') },
  ),
}
