import type { Answer, UntoldProblem } from '../../db/contract/problem.ts'
import type { LanguageCode } from '../../db/messages/languages.ts'

/** What the collection's thread is started with. */
export interface WorkerStart {
  /** Where collections live. */
  readonly folder: string
  /** The collection asked for, or null for the one open last, or the demonstration. */
  readonly file: string | null
}

export type ToWorker =
  | {
      readonly kind: 'call'
      readonly id: number
      readonly name: unknown
      readonly input: unknown
      readonly language: LanguageCode | null
    }
  | { readonly kind: 'close' }

export type FromWorker =
  | { readonly kind: 'opened'; readonly problem: UntoldProblem | null }
  | { readonly kind: 'answer'; readonly id: number; readonly answer: Answer<unknown> }
