import { type RefObject, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Problem } from '../../../db/contract/problem.ts'
import { ProblemError } from '../../shared/client/problem-error.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useLotScan } from '../../shared/scans/scans.ts'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { useHeldKeys } from '../../shared/table-form/use-held-keys.ts'
import {
  closePaper,
  type PaperDraft,
  type PaperField,
  type PaperLine,
  type PaperProblems,
  type PaperStep,
  paperFieldOf,
  paperProblems,
  sheetOf,
  withLot,
} from './paper-draft.ts'

interface Table {
  readonly draft: PaperDraft
  readonly dispatch: (step: PaperStep) => void
  readonly today: string
  readonly form: RefObject<HTMLElement | null>
  readonly onSaved: (lines: number) => void
}

interface Shown {
  readonly on: string | undefined
  readonly line: PaperProblems
  readonly refused: Problem | null
}

const NOTHING_SHOWN: Shown = { on: undefined, line: {}, refused: null }
const FIELDS: readonly PaperField[] = ['person', 'lot', 'amount']

/** What the keys, scans and buttons of the paper sheet do, and what is wrong where. */
export function usePaper({ draft, dispatch, today, form, onSaved }: Table) {
  const [shown, setShown] = useState(NOTHING_SHOWN)
  const record = useWrite('paper-sheet.record')
  const { line } = draft.lines
  const focus = (step: string) => {
    if (form.current) focusStepNamed(form.current, step)
  }
  const show = (what: Partial<Shown>, step?: string) => {
    flushSync(() => setShown({ ...NOTHING_SHOWN, ...what }))
    if (step !== undefined) focus(step)
  }
  const showLine = (problems: PaperProblems) =>
    show(
      { line: problems },
      FIELDS.find((field) => problems[field] !== undefined),
    )
  const change = (step: PaperStep) => {
    if (shown !== NOTHING_SHOWN) setShown(NOTHING_SHOWN)
    dispatch(step)
  }
  const listLine = () => {
    const problems = paperProblems(line)
    if (Object.keys(problems).length > 0) return showLine(problems)
    flushSync(() => change({ kind: 'list-line', nextId: crypto.randomUUID() }))
    focus('person')
  }
  const held = useHeldKeys()
  /** Returns whether it was saved. */
  const save = async (): Promise<boolean> => {
    if (draft.on === '' || draft.on > today) {
      show({ on: WHICH_DAY }, 'on')
      return false
    }
    const closed = closePaper(draft, crypto.randomUUID())
    flushSync(() => change({ kind: 'closed', lines: closed.lines }))
    if (closed.problems) {
      showLine(closed.problems)
      return false
    }
    const { listed } = closed.lines
    try {
      await record.mutateAsync(sheetOf(draft, listed))
      flushSync(() => onSaved(listed.length))
      focus('on')
      return true
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      refuse(thrown.problem, listed)
      return false
    }
  }
  const refuse = (problem: Problem, sent: readonly PaperLine[]) => {
    if (problem.field === 'on') return show({ on: problem.sentence }, 'on')
    const at = paperFieldOf(problem.field)
    const refused = at && sent[at.line]
    if (!at || !refused) return show({ refused: problem })
    flushSync(() => dispatch({ kind: 'change-line', id: refused.id }))
    showLine({ [at.field]: problem.sentence })
  }
  useLotScan(
    (lot) => {
      flushSync(() => change({ kind: 'line', change: withLot(line, lot) }))
      focus('amount')
    },
    (refused) => show({ refused }),
  )
  return {
    shown,
    saving: record.isPending,
    change,
    listLine,
    catches: held.catches,
    save: () => void held.holdUntil(save),
    focus,
    changeLine: (id: string) => {
      flushSync(() => change({ kind: 'change-line', id }))
      focus('person')
    },
  }
}

const WHICH_DAY = 'Which day stands on the sheet? It must not lie ahead of today.'
