import { useEffect, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import type { WriteName } from '../../../db/contract/contract.ts'
import type { Problem } from '../../../db/contract/problem.ts'
import type { Message } from '../../../db/messages/message.ts'
import { ProblemError } from '../client/problem-error.ts'
import { useWrite } from '../client/use-write.ts'
import { useTexts } from '../format/use-texts.ts'
import type { PersonStep } from './person-draft.ts'
import { type RefusalSteps, refusedStep, type StepProblems, type UntoldProblems } from './refusals.ts'
import { saidBy } from './said.ts'
import { focusFirstStep, focusStepNamed } from './steps.ts'
import type { OpenTable } from './table-draft.tsx'
import { useHeldKeys } from './use-held-keys.ts'

interface Shown<S extends string> {
  readonly problems: StepProblems<S | PersonStep>
  /** A refusal that belongs to no field. */
  readonly refused: Problem | null
}

const NOTHING_SHOWN: Shown<never> = { problems: {}, refused: null }

interface TableRules<W extends WriteName, S extends string> {
  /** The step that has the focus when the table opens. */
  readonly first: string
  readonly writes: W
  readonly refusals: RefusalSteps<S>
  /** Brings steps that are folded away onto the page before something is said at them. */
  readonly unfold?: (problems: UntoldProblems<S | PersonStep>) => void
}

/** What every table does: changes its draft, says what is wrong where, saves, and holds keys while an answer is awaited. */
export function useTable<D extends object, W extends WriteName, S extends string>(
  { visit, draft }: Pick<OpenTable<D>, 'visit' | 'draft'>,
  { first, writes, refusals, unfold }: TableRules<W, S>,
) {
  const form = useRef<HTMLElement>(null)
  const [shown, setShown] = useState<Shown<S>>(NOTHING_SHOWN)
  const record = useWrite(writes)
  const texts = useTexts()
  const held = useHeldKeys()
  const [opensAt] = useState(first)
  useEffect(() => {
    if (form.current) focusStepNamed(form.current, opensAt)
  }, [opensAt])

  /** Focuses the first of these that is on the page. */
  const focus = (...steps: readonly string[]) => {
    const { current } = form
    if (current) steps.find((step) => focusStepNamed(current, step))
  }
  const change = (update: (was: D) => D) => {
    setShown(NOTHING_SHOWN)
    visit.dispatch(update)
  }
  const show = (problems: UntoldProblems<S | PersonStep>, refused: Problem | null = null) => {
    const told = Object.entries<Message | string | undefined>(problems).map(([step, problem]) => [
      step,
      problem && saidBy(texts, problem),
    ])
    flushSync(() => {
      setShown({ problems: Object.fromEntries(told) as StepProblems<S | PersonStep>, refused })
      unfold?.(problems)
    })
    if (form.current) focusFirstStep(form.current, Object.keys(problems))
  }
  return {
    form,
    visit,
    draft,
    shown,
    saving: record.isPending,
    held,
    focus,
    change,
    set: (part: Partial<D>) => change((was) => ({ ...was, ...part })),
    /** Changes something of one part of the draft, such as of its person. */
    setIn: <K extends keyof D>(part: K, some: Partial<D[K]>) =>
      change((was) => ({ ...was, [part]: { ...was[part], ...some } })),
    show,
    refuse: (refused: Problem) => show({}, refused),
    write: record.mutateAsync,
    /**
     * Whether `work` came to its end. The sentence of a refusal is put at the step it concerns; `takeUp` brings the line
     * it names to the form and says whether there is one.
     */
    attempt: async (
      work: () => Promise<boolean>,
      takeUp: (line: number) => boolean = () => false,
    ): Promise<boolean> => {
      try {
        return await work()
      } catch (thrown) {
        if (!(thrown instanceof ProblemError)) throw thrown
        const { problem } = thrown
        const at = refusedStep(problem.field, refusals)
        if (at === null || (at.line !== undefined && !takeUp(at.line))) show({}, problem)
        else show({ [at.step]: String(problem.sentence) } as UntoldProblems<S | PersonStep>)
        return false
      }
    },
  }
}
