import type { Message } from '../../../db/messages/message.ts'
import { type PersonStep, personStepOf } from './person-draft.ts'

/** What is wrong at a table, each sentence at the step of the form that it is about. */
export type StepProblems<S extends string = string> = { readonly [step in S]?: string | undefined }
/** The same before it is told in any language. */
export type UntoldProblems<S extends string = string> = {
  readonly [step in S]?: Message | string | undefined
}

/** The sentences that there are, without the steps that lack nothing. */
export function onlyProblems<S extends string>(sentences: UntoldProblems<S>): UntoldProblems<S> {
  const there = Object.entries(sentences).filter(([, sentence]) => sentence !== undefined)
  return Object.fromEntries(there) as UntoldProblems<S>
}

/** Whether anything is wrong. */
export function isAmiss(problems: UntoldProblems): boolean {
  return Object.values(problems).some((sentence) => sentence !== undefined)
}

/** Binds fields to what is typed of something: each step of the form is called like what is typed there. */
export function fieldsOf<T extends object>(
  typed: T,
  onChange: (change: Partial<T>) => void,
  problems: StepProblems = {},
) {
  return <K extends keyof T & string>(step: K) => ({
    step,
    value: typed[step],
    onChange: (value: T[K]) => onChange({ [step]: value } as unknown as Partial<T>),
    problem: problems[step],
  })
}

/** At which step of a table the refusal of a part of its input is said. */
export interface RefusalSteps<S extends string> {
  /** The input that says who it is. */
  readonly person?: 'donor' | 'person'
  /** The step of a line, by the path within the line; '' for the line itself. */
  readonly line?: (within: string) => S
  /** The step of anything else, by its path. */
  readonly field?: Readonly<Partial<Record<string, S>>>
}

/** The step that a problem's path names and the line it is in ('lines.0.amount'), or null for a path of another kind. */
export function refusedStep<S extends string>(
  path: string | null,
  steps: RefusalSteps<S>,
): { readonly step: S | PersonStep; readonly line?: number } | null {
  const parts = /^(?:lines|gifts)\.(\d+)(?:\.(.+))?$/.exec(path ?? '')
  if (parts && steps.line) return { step: steps.line(parts[2] ?? ''), line: Number(parts[1]) }
  const step = steps.field?.[path ?? ''] ?? (steps.person && personStepOf(steps.person, path))
  return step ? { step } : null
}
