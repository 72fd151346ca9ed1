import { flushSync } from 'react-dom'
import { isAmiss, type UntoldProblems } from './refusals.ts'
import { closeLines, type LineRules, type LineStep, stepLines, type VisitLines } from './visit-lines.ts'

interface LinesOf<L extends { readonly id: string }, S extends string> {
  readonly lines: VisitLines<L>
  readonly rules: LineRules<L, S>
  readonly onLines: (update: (was: VisitLines<L>) => VisitLines<L>) => void
  readonly table: {
    readonly show: (problems: UntoldProblems<S>) => void
    readonly focus: (step: string) => void
    readonly held: { readonly holdUntil: (work: () => Promise<boolean>) => Promise<void> }
    readonly attempt: (work: () => Promise<boolean>, takeUp: (line: number) => boolean) => Promise<boolean>
  }
  /** The step at which a line begins. */
  readonly begins: string
  /** The step at which a line that is taken up for a change begins. */
  readonly changesAt?: string
}

/** The lines of a table: the one being typed, those that are listed, and saving them all. */
export function useVisitLines<L extends { readonly id: string }, S extends string>(of: LinesOf<L, S>) {
  const { lines, rules, onLines, table, begins, changesAt = begins } = of
  const step = (next: LineStep) => onLines((was) => stepLines(was, next, rules.make))
  const takeUp = (id: string) => flushSync(() => step({ kind: 'change-line', id }))
  const list = () => {
    flushSync(() => step({ kind: 'list-line', nextId: crypto.randomUUID() }))
    table.focus(begins)
  }
  return {
    lines,
    step,
    takeUp,
    setLine: (part: Partial<L>) => onLines((was) => ({ ...was, line: { ...was.line, ...part } })),
    /** Lists the line being typed, whatever it lacks. */
    list,
    /** Lists the line being typed, or says what it lacks. */
    listOrShow: () => {
      const problems = rules.problems(lines.line)
      if (isAmiss(problems)) table.show(problems)
      else list()
    },
    backToLine: () => table.focus(begins),
    changeLine: (id: string) => {
      takeUp(id)
      table.focus(changesAt)
    },
    /** Lists what is still being typed and sends every line; what is refused of one takes that line up. */
    save: (send: (listed: readonly L[]) => Promise<boolean>) =>
      void table.held.holdUntil(async () => {
        const closed = closeLines(lines, rules, crypto.randomUUID())
        flushSync(() => onLines(() => closed.lines))
        if (closed.problems) {
          table.show(closed.problems)
          return false
        }
        const { listed } = closed.lines
        return table.attempt(
          () => send(listed),
          (index) => {
            const line = listed[index]
            if (line) takeUp(line.id)
            return line !== undefined
          },
        )
      }),
  }
}

/** The lines of a table at work. */
export type LinesAtWork<L extends { readonly id: string }, S extends string> = ReturnType<
  typeof useVisitLines<L, S>
>
