import { z } from 'zod'
import { Told, type Untold } from './told.ts'

/** Stable codes for what can go wrong. A screen may decide by the code; it shows the sentence. */
export const PROBLEM_CODES = [
  'bad-request',
  'caution-not-set',
  'caution-set-already',
  'due-dates-off',
  'not-a-return',
  'unknown-operation',
  'amount-unclear',
  'amount-unreadable',
  'before-its-lot',
  'collection-not-empty',
  'count-unfit',
  'day-not-come',
  'days-out-of-order',
  'file-unreadable',
  'folder-unfit',
  'garden-place-unfit',
  'gift-decided',
  'harvest-unreadable',
  'kinds-mixed',
  'labels-only',
  'list-unreadable',
  'merged-already',
  'moisture-unfit',
  'name-unfit',
  'named-twice',
  'no-consent',
  'not-counted-yet',
  'not-in-its-trace',
  'not-in-recall',
  'not-in-quarantine',
  'not-kept',
  'no-seed',
  'not-mergeable',
  'not-own-crop',
  'not-to-give',
  'nothing-new',
  'nothing-to-change',
  'nothing-to-print',
  'number-taken',
  'odd-but-possible',
  'off-the-sheet',
  'other-accession',
  'package-unreadable',
  'pattern-unfit',
  'placeholder-unknown',
  'plan-clash',
  'plan-loses-grow-out',
  'promise-closed',
  'reading-unfit',
  'reason-missing',
  'round-unfit',
  'rows-refused',
  'rows-undecided',
  'same-kind',
  'same-record',
  'season-note-unfit',
  'seed-not-from-stock',
  'seed-was-wet',
  'sheet-missing',
  'sheet-unfit',
  'stage-unfit',
  'test-over',
  'too-light',
  'too-many',
  'words-missing',
  'not-found',
  'not-enough-seed',
  'in-quarantine',
  'wrong-role',
  'cannot-undo',
  'key-used-otherwise',
  'already-there',
  'caution',
  'collection-busy',
  'collection-read-only',
  'disk-full',
  'disk-fails',
  'file-from-the-future',
  'not-a-collection',
  'file-damaged',
  'file-moved',
  'untrusted-caller',
  'unexpected',
] as const
export type ProblemCode = (typeof PROBLEM_CODES)[number]

/** Why an operation did nothing, and what to do about it. Nothing is half written when a problem is answered. */
export const Problem = z.object({
  code: z.enum(PROBLEM_CODES),
  sentence: Told.describe('what happened and what is safe, for the keeper'),
  field: z.string().nullable().describe('the path of the input it concerns, such as gifts.0.amount'),
  todo: Told.nullable().describe('what to do next'),
  choices: z.array(Told).describe('texts that can be given instead in that field'),
  asks: z
    .string()
    .optional()
    .describe('what is odd but possible: the same call with this in itIsSo is done all the same'),
})
export type Problem = z.infer<typeof Problem>
/** A problem before it is told in any language. */
export type UntoldProblem = Untold<Problem>

/** What a call answers: the operation's value, or a problem. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: Problem }
