import { type Message, message } from '../../messages/message.ts'
import { breedingOf } from '../needs/population-goal.ts'
import type { CheckOutcome, FloweredNear, YesNoNotKnown } from '../shared/closed-sets.ts'

/** What is known of seed that somebody grew and brings back. */
export interface ComesBack {
  /** Of the crop table; null where it has none. */
  readonly matingSystem: string | null
  /** Plants that the seed was saved from; null where nobody knows. */
  readonly plants: number | null
  /** Plants for one regrowing, by the goal of its accession. */
  readonly plantsWanted: number
  readonly floweredNear: FloweredNear
  /** Anything unlike the rest, sick or wet; empty: nothing. */
  readonly odd: string
}

/** What may be asked at the table beside what it is and how much: three at most. */
export const RETURN_QUESTIONS = ['plants', 'near', 'odd'] as const
export type ReturnQuestion = (typeof RETURN_QUESTIONS)[number]

/**
 * Whether the plants of a crop take pollen from one another often enough for a neighbour of another variety to matter.
 *
 * From the crop table's mating system; a crop that it does not know counts as one that does.
 */
export function cropCrosses(matingSystem: string | null): boolean {
  return breedingOf(matingSystem) !== 'selfer'
}

/**
 * What is asked of a return: from how many plants, and whether anything was odd, of all; what flowered near only of a crop
 * that crosses.
 *
 * That crossers are kept apart from others of their kind and saved from many plants: Crop Genebank Knowledge Base,
 * regeneration (after Bioversity handbook no. 8; seen). Three questions: common practice, no source.
 */
export function questionsOf(matingSystem: string | null): ReturnQuestion[] {
  return RETURN_QUESTIONS.filter((question) => question !== 'near' || cropCrosses(matingSystem))
}

/**
 * Why a return waits to be checked before it is offered; none where nothing speaks for it but the keeper's rule `always`.
 *
 * Few plants: fewer than one regrowing of its accession is meant to have, by the keeper's own goal, not the bare number that
 * gives sound seed. That identity and genetic integrity are to be kept in regrowing: FAO Genebank Standards 2014, 4.4.1 (seen,
 * quoted by another); that the harvest is held against the original: its section on regeneration (from memory). That such
 * seed waits: common practice of seed libraries, which mark what may have crossed (several, seen).
 */
export function whyToCheck(back: ComesBack, always: boolean): Message[] {
  const { matingSystem, plants, plantsWanted, floweredNear, odd } = back
  const why = [
    ...(floweredNear === 'others' ? [message('quarantine-reason.others-near')] : []),
    ...(floweredNear !== 'others' && cropCrosses(matingSystem)
      ? [message(`quarantine-reason.crosses-${floweredNear}`)]
      : []),
    ...(plants !== null && plants < plantsWanted
      ? [message('quarantine-reason.few-plants', { plants, wanted: plantsWanted })]
      : []),
    ...(odd === '' ? [] : [message('quarantine-reason.odd', { odd })]),
  ]
  return why.length === 0 && always ? [message('quarantine-reason.every-return')] : why
}

/**
 * Whether a return counts as a possible cross until it was checked: something of its kind flowered near, or its crop crosses
 * and nobody knows what did. Common practice of seed libraries (several, seen).
 */
export function mayHaveCrossed({ matingSystem, floweredNear }: ComesBack): boolean {
  return floweredNear === 'others' || (floweredNear === 'not-known' && cropCrosses(matingSystem))
}

/** What was found when a return was checked. */
export interface Checked {
  readonly dry: YesNoNotKnown
  readonly clean: YesNoNotKnown
  readonly trueToType: YesNoNotKnown
  readonly outcome: CheckOutcome
}

/**
 * What is odd about a check, to be asked once: seed that is offered though it is wet or dirty, kept under its name though it is
 * not true to type. Common practice, no source.
 */
export function oddCheck({ dry, clean, trueToType, outcome }: Checked): Message | null {
  if (outcome === 'wait') return null
  if (dry === 'no') return message('returns.check-wet')
  if (clean === 'no') return message('returns.check-dirty')
  return outcome === 'keep' && trueToType === 'no' ? message('returns.check-not-true') : null
}
