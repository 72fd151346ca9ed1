import { type RefObject, useLayoutEffect, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Problem } from '../../../db/contract/problem.ts'
import type { VisitOut } from '../../../db/contract/withdrawal-operations.ts'
import { ProblemError } from '../../shared/client/problem-error.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useLotScan } from '../../shared/scans/scans.ts'
import {
  type PersonDraft,
  personFieldOf,
  STEP_OF_PERSON_FIELD,
} from '../../shared/table-form/person-draft.ts'
import type { PersonProblems } from '../../shared/table-form/person-fields.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { useHeldKeys } from '../../shared/table-form/use-held-keys.ts'
import { useWhen } from '../../shared/table-form/use-when.ts'
import {
  grownFrom,
  type Parent,
  type ReturnDraft,
  type ReturnField,
  type ReturnProblems,
  type ReturnStep,
  returnFieldOf,
  returnOf,
  returnProblems,
} from './return-draft.ts'
import type { TakenBack } from './returned-list.tsx'

interface Table {
  readonly draft: ReturnDraft
  readonly visit: { readonly dispatch: (step: ReturnStep) => void }
  readonly today: string
  readonly thisYear: number
  readonly form: RefObject<HTMLElement | null>
  readonly onSaved: (saved: TakenBack, personId: number) => void
  readonly onNextPerson: () => void
}

interface Shown {
  readonly person: PersonProblems
  readonly line: ReturnProblems
  /** A refusal that belongs to no field. */
  readonly refused: Problem | null
}

const NOTHING_SHOWN: Shown = { person: {}, line: {}, refused: null }
const NO_VISITS: readonly VisitOut[] = []
const FIELDS = ['lot', 'harvest', 'amount', 'sample', 'plants', 'grownAt', 'note', 'cautionNote'] as const

/** What the keys, scans and buttons of the Take back table do, and what is wrong where. */
export function useReturns(table: Table) {
  const { draft, visit, today, thisYear, form } = table
  const [shown, setShown] = useState<Shown>(NOTHING_SHOWN)
  const record = useWrite('return.record')
  const { personId } = draft.person
  const out = useRead('withdrawal.list-open', personId === null ? null : { personId })
  const visits = personId === null ? NO_VISITS : (out.data?.visits ?? NO_VISITS)
  const held = useHeldKeys()
  // What somebody has out decides where the keys lead and which promise a lot keeps.
  const whenOutKnown = useWhen(personId === null || !out.isFetching)

  const focus = (...steps: readonly string[]) => {
    const { current } = form
    if (current) steps.find((step) => focusStepNamed(current, step))
  }
  const show = (what: Partial<Shown>, step?: string) => {
    flushSync(() => setShown({ ...NOTHING_SHOWN, ...what }))
    if (step !== undefined) focus(step)
  }
  const showLine = (line: ReturnProblems) => show({ line }, stepOf(FIELDS.find((field) => line[field])))
  const change = (step: ReturnStep) => {
    if (shown !== NOTHING_SHOWN) setShown(NOTHING_SHOWN)
    visit.dispatch(step)
  }
  const pickLot = (lot: Pick<Parent, 'lotId' | 'lotNumber' | 'variety'>, from = visits) =>
    change({ kind: 'line', change: grownFrom(lot, from) })

  /** Returns whether it was saved. */
  const save = async (): Promise<boolean> => {
    const input = returnOf(draft, today)
    const problems = returnProblems(draft.line, thisYear)
    const lacks = Object.keys(problems).length > 0
    if (draft.person.is !== 'open' && lacks) showLine(problems)
    else if (input === null) show({ person: { person: WHO } }, 'person')
    if (lacks || input === null) return false
    try {
      const saved = await record.mutateAsync(input)
      const { text } = draft.person
      flushSync(() => {
        setShown(NOTHING_SHOWN)
        table.onSaved(takenBack(draft, saved.taken, text), saved.personId)
      })
      await whenOutKnown()
      focus('out', 'lot')
      return true
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      refuse(thrown.problem)
      return false
    }
  }
  /** Puts the sentence of a refusal at the field it concerns. */
  const refuse = (problem: Problem) => {
    const person = personFieldOf('person', problem.field)
    if (person) return show({ person: { [person]: problem.sentence } }, STEP_OF_PERSON_FIELD[person])
    const field = returnFieldOf(problem.field)
    if (field) return showLine({ [field]: problem.sentence })
    show({ refused: problem })
  }
  const scanNow = useRef(pickLot)
  useLayoutEffect(() => {
    scanNow.current = pickLot
  })
  useLotScan(
    async (lot) => {
      await whenOutKnown()
      flushSync(() => scanNow.current(lot))
      focus('harvest')
    },
    (refused) => show({ refused }),
  )
  return {
    shown,
    visits,
    catches: held.catches,
    saving: record.isPending,
    change,
    changePerson: (part: Partial<PersonDraft>) => {
      change({ kind: 'person', change: part })
      if (typeof part.personId !== 'number') return
      void held.holdUntil(async () => {
        await Promise.resolve()
        await whenOutKnown()
        focus('out')
        return true
      })
    },
    pickLot,
    /** Takes a lot of one visit, and goes on to what is asked of it. */
    pickOut: (lot: VisitOut['lots'][number], of: VisitOut) => {
      flushSync(() => pickLot(lot, [of]))
      focus('harvest')
    },
    somethingElse: () => focus('lot'),
    save: () => void held.holdUntil(save),
    toPins: () => focus('place'),
    backToLine: () => focus('save'),
    nextPerson: () => {
      flushSync(table.onNextPerson)
      focus('person')
    },
  }
}

const STEP_OF: Partial<Record<ReturnField, string>> = { grownAt: 'grown-at', cautionNote: 'caution-note' }

function stepOf(field: ReturnField | undefined): string | undefined {
  return field === undefined ? undefined : (STEP_OF[field] ?? field)
}

function takenBack(draft: ReturnDraft, lot: TakenBack['lot'], person: string): TakenBack {
  const { parent, meets } = draft.line
  return {
    lot,
    person,
    variety: parent?.variety ?? '',
    parentNumber: parent?.lotNumber ?? '',
    promiseKept: meets ? (parent?.promise ?? '') : '',
  }
}

const WHO = 'Who brings it? Type a few letters and choose, or add them as new.'
