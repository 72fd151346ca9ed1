import type { CallInput } from '../../../db/contract/contract.ts'
import type { Caution } from '../../../db/contract/fields.ts'
import type { VisitOut } from '../../../db/contract/withdrawal-operations.ts'
import type { FloweredNear } from '../../../db/domain/shared/closed-sets.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import {
  isNobodyYet,
  NO_PERSON_YET,
  type PersonDraft,
  whoIsIt,
} from '../../shared/table-form/person-draft.ts'
import { onlyProblems, type RefusalSteps, type UntoldProblems } from '../../shared/table-form/refusals.ts'
import { type SeedStep, seedProblems } from '../../shared/table-form/typed-seed.ts'

type Input = CallInput<'return.record'>

/** The lot that what came back was grown from, and the visit it went out on where that is known. */
export interface Parent {
  readonly lotId: number
  readonly lotNumber: string
  readonly variety: string
  readonly withdrawalId: number | null
  /** What was promised on that visit and is still waited for; '' for nothing. */
  readonly promise: string
}

/** One lot that comes back, as it is typed. */
export interface ReturnLine {
  /** The parent's text as typed, or its name once it is picked. */
  readonly text: string
  readonly parent: Parent | null
  /** Whether this keeps the promise of the visit. */
  readonly meets: boolean
  readonly harvest: string
  readonly amount: string
  readonly sample: string
  readonly plants: string
  readonly grownAt: string
  readonly note: string
  /** What of its kind flowered near; not in a draft that an earlier version kept, nor are the next two. */
  readonly near?: FloweredNear
  readonly nearNote?: string
  /** Anything unlike the rest, sick or wet. */
  readonly odd?: string
  /** Not in a draft that an earlier version kept, nor is their note. */
  readonly cautions?: readonly Caution[]
  readonly cautionNote?: string
}

/** What somebody brings back while it is being entered; kept key by key, so that nothing typed can be lost. */
export interface ReturnDraft {
  /** Names the intention to save, so that a save repeated after a crash acts once. */
  readonly key: string
  readonly person: PersonDraft
  readonly line: ReturnLine
  /** How many lots of this person were saved already. */
  readonly saved: number
  readonly placeId: number | null
  /** '' for today. */
  readonly receivedOn: string
}

export type ReturnStep =
  | SeedStep
  | 'lot'
  | 'plants'
  | 'near'
  | 'nearNote'
  | 'odd'
  | 'grownAt'
  | 'note'
  | 'cautionNote'

const NOTHING_YET: ReturnLine = {
  text: '',
  parent: null,
  meets: true,
  harvest: '',
  amount: '',
  sample: '',
  plants: '',
  grownAt: '',
  note: '',
}

export function emptyReturn(key: string): ReturnDraft {
  return { key, person: NO_PERSON_YET, line: NOTHING_YET, saved: 0, placeId: null, receivedOn: '' }
}

/** Who brings it. Somebody else's visit is not this person's: the lot stays, what was promised does not. */
export function withPerson(draft: ReturnDraft, change: Partial<PersonDraft>): ReturnDraft {
  const person = { ...draft.person, ...change }
  const { parent } = draft.line
  if (parent === null || person.personId === draft.person.personId) return { ...draft, person }
  const line = { ...draft.line, parent: { ...parent, withdrawalId: null, promise: '' } }
  return { ...draft, person, line }
}

/** The visit goes on once a lot of it was saved: the person is in the book now. `key` names the next save. */
export function withSaved(draft: ReturnDraft, personId: number, key: string): ReturnDraft {
  const person = { ...draft.person, is: 'known', personId } as const
  return { ...draft, key, person, line: NOTHING_YET, saved: draft.saved + 1 }
}

/** The next person begins with the place and the day of the last. */
export function nextReturn({ placeId, receivedOn }: ReturnDraft, key: string): ReturnDraft {
  return { ...emptyReturn(key), placeId, receivedOn }
}

/**
 * A line grown from this lot, with what was noted of its growing; the latest visit on which the person took it, one with an open promise first.
 */
export function grownFrom(
  lot: Pick<Parent, 'lotId' | 'lotNumber' | 'variety'>,
  visits: readonly VisitOut[],
): Pick<ReturnLine, 'text' | 'parent' | 'meets'> & Partial<Pick<ReturnLine, 'plants' | 'grownAt'>> {
  const visit = visits.find(({ lots }) => lots.some(({ lotId }) => lotId === lot.lotId))
  const promise = visit?.promise
  const growOut = visit?.lots.find(({ lotId }) => lotId === lot.lotId)?.growOut ?? null
  const waits = promise?.state === 'open' || promise?.state === 'overdue'
  return {
    text: `${lot.variety}, ${lot.lotNumber}`,
    parent: {
      lotId: lot.lotId,
      lotNumber: lot.lotNumber,
      variety: lot.variety,
      withdrawalId: visit?.withdrawalId ?? null,
      promise: waits ? promise.words : '',
    },
    meets: true,
    ...(growOut === null
      ? {}
      : { grownAt: growOut.site, plants: growOut.plants === null ? '' : String(growOut.plants) }),
  }
}

/** What a line still lacks before it can be saved. */
export function returnProblems(
  line: ReturnLine,
  thisYear: number,
  t: Texts['text'],
): UntoldProblems<ReturnStep> {
  return onlyProblems({
    lot: line.parent === null ? lotProblem(line.text.trim(), t) : undefined,
    ...seedProblems(line, thisYear),
    plants: plantsOf(line.plants) === undefined ? t('returns.plants-problem') : undefined,
  })
}

function lotProblem(typed: string, t: Texts['text']): string {
  return typed === '' ? t('returns.which-lot') : t('returns.choose-lot', { typed })
}

/** The plants as a number, null where none were told, undefined where the text is no number of plants. */
function plantsOf(text: string): number | null | undefined {
  const typed = text.trim()
  if (typed === '') return null
  const plants = /^\d{1,7}$/.test(typed) ? Number(typed) : 0
  return plants >= 1 && plants <= 1_000_000 ? plants : undefined
}

/** What was answered at the table, as far as it can be read. */
export function answersOf({ plants, near = 'not-known', nearNote = '', odd = '' }: ReturnLine) {
  const noted = near === 'kept-apart' || near === 'others'
  return { plantsGrown: plantsOf(plants) ?? null, floweredNear: near, nearNote: noted ? nearNote : '', odd }
}

/** Whether nothing was typed of a line. */
export function isUntouched(line: ReturnLine): boolean {
  const typed = [
    line.text,
    line.harvest,
    line.amount,
    line.sample,
    line.plants,
    line.grownAt,
    line.note,
    line.odd ?? '',
  ]
  return typed.every((text) => text.trim() === '') && (line.cautions ?? []).length === 0
}

/** Whether nothing worth keeping was typed. */
export function isBlankReturn(draft: ReturnDraft): boolean {
  return isUntouched(draft.line) && (isNobodyYet(draft.person) || draft.saved > 0)
}

/** The return as the collection takes it, or null while it is not known who brings it or what it was grown from. */
export function returnOf(draft: ReturnDraft, today: string): Input | null {
  const { cautions = [], cautionNote = '', ...line } = draft.line
  const person = whoIsIt(draft.person)
  if (person === undefined || person === null || line.parent === null) return null
  const meets = line.parent.promise === '' || line.meets
  return {
    key: draft.key,
    person,
    parentLotId: line.parent.lotId,
    withdrawalId: meets ? line.parent.withdrawalId : null,
    receivedOn: draft.receivedOn || today,
    harvest: line.harvest,
    amount: line.amount,
    sample: line.sample,
    ...answersOf(line),
    grownAt: line.grownAt,
    note: line.note,
    cautions: [...cautions],
    cautionNote: cautions.length === 0 ? '' : cautionNote,
    placeId: draft.placeId,
  }
}

export const RETURN_REFUSALS: RefusalSteps<ReturnStep> = {
  person: 'person',
  field: {
    parentLotId: 'lot',
    withdrawalId: 'lot',
    harvest: 'harvest',
    amount: 'amount',
    sample: 'sample',
    plantsGrown: 'plants',
    floweredNear: 'near',
    nearNote: 'nearNote',
    odd: 'odd',
    grownAt: 'grownAt',
    note: 'note',
    cautions: 'cautionNote',
    cautionNote: 'cautionNote',
  },
}
