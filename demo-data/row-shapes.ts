import { z } from 'zod'
import { Caution, Day, LotRole, WithdrawalPurpose } from '../db/contract/fields.ts'
import { WaitingStep } from '../db/contract/intake-operations.ts'
import { LabelSheet, PrintKind } from '../db/contract/print-operations.ts'
import { PlaceLine } from '../db/contract/storage-operations.ts'
import { Override } from '../db/contract/withdrawal-operations.ts'
import { PLACE_AIMS } from '../db/domain/climate/limits.ts'
import { INSPECTIONS } from '../db/domain/rounds/inspection.ts'
import {
  ACCESSION_POLICIES,
  BREEDING_STATUSES,
  FLOWERED_NEAR,
  RECALL_OUTCOMES,
  SHARED_WITH,
} from '../db/domain/shared/closed-sets.ts'

/** Names a row, so that other rows can point at it. */
const Name = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'Name a row in small letters and digits with hyphens between')
const Text = z.string().trim()
const Nothing = z.literal('').transform(() => null)
const Whole = z.string().regex(/^\d+$/, 'Write a whole number').transform(Number)
const Decimal = z
  .string()
  .regex(/^\d+(\.\d+)?$/, 'Write a number such as 0.7')
  .transform(Number)
const YesOrNo = z.enum(['yes', 'no']).transform((word) => word === 'yes')

/** Several values in one cell, a space between. */
function several<S extends z.ZodType>(of: S) {
  return z.preprocess((cell) => String(cell).split(/\s+/).filter(Boolean), z.array(of))
}

export const PersonRow = z.strictObject({
  person: Name,
  name: Text,
  town: Text,
  credit_as: Text,
  email: Text,
  phone: Text,
  address: Text,
  may_write: YesOrNo,
  note: Text,
})

export const PlaceRow = z.strictObject({
  place: Name,
  inside: Nothing.or(Name),
  name: Text,
  kind: PlaceLine.shape.kind,
})

export const VarietyRow = z.strictObject({
  variety: Name,
  crop: Name,
  name: Text,
  also_called: z.string().transform((cell) =>
    cell
      .split('|')
      .map((name) => name.trim())
      .filter(Boolean),
  ),
  story: Text,
})

/** A figure of the keeper's own, for a crop or for the accession of a lot. */
export const FigureRow = z
  .strictObject({
    on: Day,
    crop: Nothing.or(Name),
    lot: Nothing.or(Name),
    plants: Nothing.or(Whole),
    regrowings: Nothing.or(Whole),
    threshold: Nothing.or(Decimal),
    reason: Text,
  })
  .refine(({ crop, lot }) => (crop === null) !== (lot === null), 'Fill in either a crop or a lot')

export const GiftRow = z.strictObject({
  lot: Name,
  on: Day,
  donor: Nothing.or(Name),
  variety: Name,
  harvest: Text,
  amount: Text,
  sample: Text,
  role: LotRole.exclude(['duplicate-elsewhere']),
  place: Nothing.or(Name),
  grown_at: Text,
  story: Text,
  terms: Text,
  limits: several(z.enum([...SHARED_WITH, 'not-sold'])).transform((words) =>
    words.length === 0
      ? null
      : {
          share: SHARED_WITH.find((share) => words.includes(share)) ?? 'anyone',
          mayBeSold: !words.includes('not-sold'),
        },
  ),
  cautions: several(Caution),
  caution_note: Text,
})

/** A gift that is not taken in: it waits for something, or was declined with the reason. */
export const OfferRow = z.strictObject({
  gift: Name,
  on: Day,
  donor: Nothing.or(Name),
  variety: Name,
  harvest: Text,
  amount: Text,
  grown_at: Text,
  story: Text,
  waits_for: several(WaitingStep),
  due: Nothing.or(Day),
  note: Text,
  declined: Text,
})

export const VisitRow = z.strictObject({
  visit: Name,
  on: Day,
  person: Nothing.or(Name),
  purpose: WithdrawalPurpose,
  promised: Text,
  promised_by: Nothing.or(Day),
  note: Text,
  despite: several(Override),
  reason: Text,
})

export const VisitLineRow = z.strictObject({ visit: Name, lot: Name, amount: Text, note: Text })

export const ReturnRow = z.strictObject({
  lot: Name,
  on: Day,
  person: Name,
  parent: Name,
  visit: Nothing.or(Name),
  harvest: Text,
  amount: Text,
  sample: Text,
  plants: Nothing.or(Whole),
  place: Nothing.or(Name),
  grown_at: Text,
  note: Text,
  /** Whether the keeper looked at it at once where it had to be checked. */
  checked: YesOrNo,
  /** What of its kind flowered near; empty: not known. */
  near: z
    .literal('')
    .transform(() => 'not-known' as const)
    .or(z.enum(FLOWERED_NEAR)),
})

export const SplitRow = z.strictObject({
  lot: Name,
  on: Day,
  from: Name,
  amount: Text,
  role: LotRole,
  place: Nothing.or(Name),
  held_by: Text,
  note: Text,
})

export const DuplicateRow = z.strictObject({
  lot: Name,
  on: Day,
  contact: Text,
  agreement: Text,
  agreement_ends: Nothing.or(Day),
  conditions: Text,
  next_look: Nothing.or(Day),
})

export const InstitutionRow = z.strictObject({
  visit: Name,
  on: Day,
  asked_on: Nothing.or(Day),
  intended_use: Text,
  agreement: Text,
  plant_health: Text,
  sent_on: Nothing.or(Day),
  reported_on: Nothing.or(Day),
  report: Text,
})

export const WeightRow = z.strictObject({
  lot: Name,
  on: Day,
  seeds_each: Whole,
  grams: several(Decimal),
  note: Text,
})

export const GerminationRow = z.strictObject({
  lot: Name,
  on: Day,
  tested: Whole,
  sprouted: Whole,
  from_stock: YesOrNo,
  note: Text,
})

/** A test laid out on the bench; its counts and its end stand in files of their own. */
export const BenchTestRow = z.strictObject({
  test: Name,
  lot: Name,
  on: Day,
  replicates: several(Whole),
  medium: Text,
  temperature: Text,
  first_day: Nothing.or(Whole),
  final_day: Whole,
  note: Text,
})

/** What was taken out of each replicate on a day. */
export const BenchCountRow = z.strictObject({
  test: Name,
  on: Day,
  normal: several(Whole),
  abnormal: several(Whole),
  hard: several(Whole),
  fresh: several(Whole),
  dead: several(Whole),
})

/** How a test ended; the note is the reason where it was given up. */
export const BenchEndRow = z.strictObject({
  test: Name,
  on: Day,
  how: z.enum(['finished', 'cancelled']),
  hard: YesOrNo,
  fresh: YesOrNo,
  seeds_back: YesOrNo,
  note: Text,
})

/** Everyday care. A join pours the later lots into the first. */
export const CareRow = z.strictObject({
  on: Day,
  what: z.enum(['move', 'merge', 'stocktake', 'discard', 'quarantine', 'release']),
  lots: several(Name).refine((lots) => lots.length > 0, 'Name a lot'),
  place: Nothing.or(Name),
  amount: Text,
  words: Text,
})

/** One lot of a stocktake; rows of one day and reason are one entry. */
export const StocktakeRow = z.strictObject({ on: Day, reason: Text, lot: Name, found: Text })

/** How the accession of a lot was bred, and whether it is kept. */
export const KeepingRow = z.strictObject({
  on: Day,
  lot: Name,
  breeding: z.enum(BREEDING_STATUSES),
  policy: z.enum(ACCESSION_POLICIES),
  reason: Text,
})

/** A recall of a lot with others of its trace, and what came of it as a whole. */
export const RecallRow = z.strictObject({
  on: Day,
  lot: Name,
  with: several(Name),
  reason: Text,
  advice: Text,
  outcome: z.enum(RECALL_OUTCOMES),
  note: Text,
})

/** A promise that is no longer waited for. */
export const WaiverRow = z.strictObject({ on: Day, visit: Name, reason: Text })

/** A garden where a grower raises seed, placed in metres on the town's sketch; each crop of `near` flowers as far off as `near_m` says in its place. */
export const GardenRow = z.strictObject({
  on: Day,
  name: Text,
  grower: Nothing.or(Name),
  area_m2: Whole,
  most: Whole,
  frost_free_days: Nothing.or(Whole),
  takes: several(Name),
  east_m: z.coerce.number(),
  north_m: z.coerce.number(),
  near: several(Name),
  near_m: several(Whole),
  note: Text,
})

/** The season's list as it stood on a day; `lots` name the accessions that are to be grown. */
export const SeasonListRow = z.strictObject({ on: Day, lots: several(Name), note: Text })

/** All of one kind that waits in the print tray comes out of the printer. Labels begin at a place of their sheet. */
export const PrintingRow = z.strictObject({
  on: Day,
  kind: PrintKind,
  sheet: Nothing.or(LabelSheet),
  start_at: Whole,
})

/** An entry that was a mistake: `entry` is the request key it was written under, such as visit-v012. */
export const TakenBackRow = z.strictObject({ on: Day, entry: Name, reason: Text })

/** A trace of a place written as the figures it is made from: degrees C and percent of relative humidity. */
export const ClimateRow = z.strictObject({
  on: Day,
  place: Name,
  aim: z.enum(PLACE_AIMS),
  from: Day,
  days: Whole,
  every_minutes: Whole,
  celsius: z.coerce.number(),
  swing: Decimal,
  season_swing: Decimal,
  humidity: Nothing.or(Whole),
  thaw_hours: Nothing.or(Whole),
  thaw_rise: Nothing.or(Whole),
  failed_from: Nothing.or(Day),
  failed_days: Nothing.or(Whole),
  failed_celsius: Nothing.or(z.coerce.number()),
})

/** One look at one place on a round; nothing found: all is well. */
export const RoundRow = z.strictObject({
  on: Day,
  place: Name,
  walked_by: Text,
  look: z.enum(INSPECTIONS).exclude(['reading']),
  found: Text,
})
