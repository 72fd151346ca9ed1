import type { CallInput } from '../../../db/contract/contract.ts'
import type { Caution } from '../../../db/contract/fields.ts'
import type { WaitingStep } from '../../../db/contract/intake-operations.ts'
import { readHarvestYear } from '../../../db/domain/dates/harvest-year.ts'
import { readSample } from '../../../db/domain/weights/read-sample.ts'
import { amountProblem } from '../../shared/format/manner.ts'

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
  readonly cautions: readonly Caution[]
  readonly cautionNote: string
  readonly role: 'working' | 'reserve' | 'reference'
  readonly decision: 'take-in' | 'later' | 'decline'
  /** What a gift kept for later waits for; '' where nothing is named. */
  readonly waitsFor: WaitingStep | ''
  /** Why it is declined. */
  readonly reason: string
  /** Whether 'more about it' is open. */
  readonly more: boolean
}

export type GiftField =
  | 'variety'
  | 'crop'
  | 'harvest'
  | 'amount'
  | 'sample'
  | 'grownAt'
  | 'donorWords'
  | 'story'
  | 'terms'
  | 'cautionNote'
  | 'reason'
export type GiftProblems = Partial<Record<GiftField, string>>

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
  return typed.every((text) => text.trim() === '') && line.cautions.length === 0
}

/** What a gift still lacks before it can be put on the visit's list, by field, in the order of the fields. */
export function giftProblems(line: GiftLine, thisYear: number): GiftProblems {
  const harvest = readHarvestYear(line.harvest, thisYear)
  return {
    ...whichProblems(line),
    ...(harvest.kind === 'unreadable' ? { harvest: harvest.because } : {}),
    ...amountProblems(line),
    ...sampleProblems(line),
    ...(line.decision === 'decline' && line.reason.trim() === '' ? { reason: SAY_WHY } : {}),
  }
}

const SAY_WHY = 'Say in a few words why it is declined. The donor may ask one day.'

function whichProblems(line: GiftLine): GiftProblems {
  if (line.variety.trim() === '')
    return { variety: 'Which variety is it? Unknown is an answer too: type what they call it.' }
  if (line.varietyIs === 'open') {
    return { variety: `Choose from the list what ‘${line.variety.trim()}’ is, or add it as new.` }
  }
  if (line.cropId === null && !line.newCrop)
    return { crop: 'Choose the crop from the list, or add it as one of your own.' }
  return {}
}

/** A gift that gets no number yet may stay unweighed. */
function amountProblems(line: GiftLine): GiftProblems {
  if (line.decision !== 'take-in' && line.amount.trim() === '') return {}
  const amount = amountProblem(line.amount)
  return amount === undefined ? {} : { amount }
}

function sampleProblems(line: GiftLine): GiftProblems {
  const reading = readSample(line.sample)
  return reading.kind === 'unreadable' ? { sample: reading.because } : {}
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
    cautions: [...line.cautions],
    cautionNote: line.cautions.length === 0 ? '' : line.cautionNote,
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

const FIELD_OF_INPUT: Readonly<Record<string, GiftField>> = {
  variety: 'variety',
  harvest: 'harvest',
  amount: 'amount',
  sample: 'sample',
  grownAt: 'grownAt',
  donorWords: 'donorWords',
  story: 'story',
  terms: 'terms',
  cautions: 'cautionNote',
  cautionNote: 'cautionNote',
  decision: 'reason',
}

const OF_CROP = /^newVariety\.(?:cropId$|newCrop\b)/

/** The gift and its field that a problem's path names ('gifts.0.amount'), or null for a path of another kind. */
export function giftFieldOf(
  path: string | null,
): { readonly gift: number; readonly field: GiftField } | null {
  const parts = /^gifts\.(\d+)(?:\.([A-Za-z]+)(?:\.(.*))?)?$/.exec(path ?? '')
  if (!parts) return null
  const named = parts[2] === 'variety' && OF_CROP.test(parts[3] ?? '') ? 'crop' : undefined
  return { gift: Number(parts[1]), field: named ?? FIELD_OF_INPUT[parts[2] ?? ''] ?? 'variety' }
}
