import type { CallInput } from '../../../db/contract/contract.ts'
import type { Caution } from '../../../db/contract/fields.ts'
import type { WaitingStep } from '../../../db/contract/intake-operations.ts'
import type { BreedingStatus } from '../../../db/domain/shared/closed-sets.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import {
  LIMIT_STEPS,
  type LimitStep,
  limitsOf,
  type TypedLimits,
} from '../../shared/limits-form/typed-limits.ts'
import { onlyProblems, type RefusalSteps, type UntoldProblems } from '../../shared/table-form/refusals.ts'
import { seedProblems } from '../../shared/table-form/typed-seed.ts'

/** One gift as it is typed. Everything may be half done. */
export interface GiftLine {
  readonly id: string
  /** The variety's name as typed or picked. */
  readonly variety: string
  readonly varietyIs: 'open' | 'known' | 'new'
  readonly varietyId: number | null
  /** The synonym by which a known variety was found, or ''. */
  readonly matched: string
  readonly cropId: string | null
  readonly crop: string
  /** Whether the crop is not in the table and is added with the visit. */
  readonly newCrop: boolean
  readonly harvest: string
  readonly amount: string
  readonly sample: string
  readonly grownAt: string
  /** Missing in work that an earlier version kept. */
  readonly donorWords?: string
  readonly story: string
  readonly terms: string
  /** Whether the giver set limits, and which; kept where the box is unticked. Missing in work of an earlier version. */
  readonly limited?: boolean
  readonly limits?: TypedLimits
  readonly cautions: readonly Caution[]
  readonly cautionNote: string
  /** Missing in work that an earlier version kept. */
  readonly breeding?: BreedingStatus
  /** '': as is usual for how it was bred. */
  readonly policy?: 'keep' | 'pass-on' | ''
  readonly role: 'working' | 'reserve' | 'reference'
  readonly decision: 'take-in' | 'later' | 'decline'
  /** What a gift kept for later waits for; '' where nothing is named. */
  readonly waitsFor: WaitingStep | ''
  /** Why it is declined. */
  readonly reason: string
  /** Whether 'more about it' is open. */
  readonly more: boolean
}

const FIELDS = [
  'harvest',
  'amount',
  'sample',
  'grownAt',
  'donorWords',
  'story',
  'terms',
  'cautionNote',
] as const
export type GiftStep = (typeof FIELDS)[number] | LimitStep | 'variety' | 'crop' | 'reason'

type Gift = CallInput<'intake.record'>['gifts'][number]

/** A line to begin with. The season of the last gift stays, since a donor's seed is mostly of one year. */
export function emptyGift(id: string, harvest = ''): GiftLine {
  return {
    id,
    variety: '',
    varietyIs: 'open',
    varietyId: null,
    matched: '',
    cropId: null,
    crop: '',
    newCrop: false,
    harvest,
    amount: '',
    sample: '',
    grownAt: '',
    donorWords: '',
    story: '',
    terms: '',
    cautions: [],
    cautionNote: '',
    role: 'working',
    decision: 'take-in',
    waitsFor: '',
    reason: '',
    more: false,
  }
}

/** Whether nothing was typed of a gift; a season that stayed from the last one does not count. */
export function isUntouched(line: GiftLine): boolean {
  const { variety, crop, amount, sample, grownAt, donorWords = '', story, terms, reason } = line
  const typed = [variety, crop, amount, sample, grownAt, donorWords, story, terms, reason]
  return typed.every((text) => text.trim() === '') && line.cautions.length === 0 && line.limited !== true
}

/** What a gift still lacks before it can be put on the visit's list. */
export function giftProblems(line: GiftLine, thisYear: number, t: Texts['text']): UntoldProblems<GiftStep> {
  const { amount, ...seed } = seedProblems(line, thisYear)
  // A gift that gets no number yet may stay unweighed.
  const unweighed = line.decision !== 'take-in' && line.amount.trim() === ''
  const unsaid = line.decision === 'decline' && line.reason.trim() === ''
  return onlyProblems({
    ...whichProblems(line, t),
    ...seed,
    amount: unweighed ? undefined : amount,
    reason: unsaid ? t('take-in.reason-problem') : undefined,
  })
}

function whichProblems(
  { variety, varietyIs, cropId, newCrop }: GiftLine,
  t: Texts['text'],
): UntoldProblems<GiftStep> {
  const typed = variety.trim()
  if (typed === '') return { variety: t('take-in.which-variety') }
  if (varietyIs === 'open') return { variety: t('take-in.choose-variety', { typed }) }
  if (cropId === null && !newCrop) return { crop: t('take-in.choose-crop') }
  return {}
}

/** The gift as the collection takes it. Only for a line without problems. Throws RangeError where no variety is named. */
export function giftOf(line: GiftLine, placeId: number | null): Gift {
  return {
    variety: varietyOf(line),
    harvest: line.harvest,
    amount: line.amount,
    sample: line.sample,
    grownAt: line.grownAt,
    donorWords: line.donorWords ?? '',
    story: line.story,
    terms: line.terms,
    limits: line.limited === true && line.limits !== undefined ? limitsOf(line.limits) : null,
    cautions: [...line.cautions],
    cautionNote: line.cautions.length === 0 ? '' : line.cautionNote,
    breeding: line.breeding ?? 'unknown',
    policy: line.policy || null,
    role: line.role,
    placeId,
    decision: decisionOf(line),
  }
}

function decisionOf({ decision, waitsFor, reason }: GiftLine): NonNullable<Gift['decision']> {
  if (decision === 'decline') return { kind: 'decline', reason }
  if (decision === 'later') return { kind: 'later', waitsFor: waitsFor === '' ? [] : [{ step: waitsFor }] }
  return { kind: 'take-in' }
}

function varietyOf(line: GiftLine): Gift['variety'] {
  if (line.varietyIs === 'known' && line.varietyId !== null) return { varietyId: line.varietyId }
  if (line.varietyIs === 'new' && line.cropId !== null) {
    return { newVariety: { cropId: line.cropId, name: line.variety } }
  }
  if (line.varietyIs === 'new' && line.newCrop) {
    return { newVariety: { newCrop: { name: line.crop }, name: line.variety } }
  }
  throw new RangeError('A gift needs a variety')
}

const OF_CROP = /^variety\.newVariety\.(?:cropId$|newCrop\b)/

export const GIFT_REFUSALS: RefusalSteps<GiftStep> = {
  person: 'donor',
  line: (within) => {
    if (OF_CROP.test(within)) return 'crop'
    if (within.startsWith('cautions')) return 'cautionNote'
    if (within.startsWith('decision')) return 'reason'
    if (within.startsWith('limits.'))
      return LIMIT_STEPS.find((step) => within === `limits.${step}`) ?? 'terms'
    return FIELDS.find((field) => field === within) ?? 'variety'
  },
}
