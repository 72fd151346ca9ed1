import { type RefObject, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Problem } from '../../../db/contract/problem.ts'
import type { IsoDate } from '../../../db/domain/dates/iso-date.ts'
import { call } from '../../shared/client/call.ts'
import type { ProblemError } from '../../shared/client/problem-error.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useScan } from '../../shared/scans/scans.ts'
import { personFieldOf, STEP_OF_PERSON_FIELD } from '../../shared/table-form/person-draft.ts'
import type { PersonProblems } from '../../shared/table-form/person-fields.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import {
  closeHandOut,
  type HandOutDraft,
  type HandOutStep,
  handOutOf,
  type Override,
} from './hand-out-draft.ts'
import type { HandedOut } from './handed-out.tsx'
import {
  isUntouched,
  type LotOffered,
  type OutLine,
  type OutProblems,
  outFieldOf,
  outProblems,
  withLot,
} from './out-line.ts'

interface Table {
  readonly draft: HandOutDraft
  readonly visit: { readonly dispatch: (step: HandOutStep) => void }
  readonly today: IsoDate
  readonly form: RefObject<HTMLElement | null>
  readonly onSaved: (saved: HandedOut) => void
}

/** A caution that the collection raised: it is read, and overridden with a reason or heeded. */
export interface RaisedCaution {
  readonly problem: Problem
  readonly override: Override
}

interface Shown {
  readonly member: PersonProblems
  readonly line: OutProblems
  /** Amounts that the refusal offers instead. */
  readonly offered: readonly string[]
  readonly reason: string | undefined
  /** A refusal that belongs to no field. */
  readonly refused: Problem | null
}

const NOTHING_SHOWN: Shown = { member: {}, line: {}, offered: [], reason: undefined, refused: null }
const OVERRIDES: readonly string[] = [
  'reference-sample',
  'reserve',
  'quarantine',
  'too-few-left',
] satisfies Override[]

/** What the keys, scans and buttons of the Hand out table do, and what is wrong where. */
export function useHandOut({ draft, visit, today, form, onSaved }: Table) {
  const [shown, setShown] = useState<Shown>(NOTHING_SHOWN)
  const [caution, setCaution] = useState<RaisedCaution | null>(null)
  const record = useWrite('withdrawal.record')
  const { dispatch } = visit

  const focus = (step: string) => {
    if (form.current) focusStepNamed(form.current, step)
  }
  const show = (what: Partial<Shown>, step?: string) => {
    flushSync(() => setShown({ ...NOTHING_SHOWN, ...what }))
    if (step !== undefined) focus(step)
  }
  const showLine = (line: OutProblems, offered: readonly string[] = []) =>
    show({ line, offered }, line.lot === undefined ? 'amount' : 'lot')
  const change = (step: HandOutStep) => {
    if (shown !== NOTHING_SHOWN) setShown(NOTHING_SHOWN)
    if (caution && step.kind !== 'visit') setCaution(null)
    dispatch(step)
  }

  const listLine = () => {
    const problems = outProblems(draft.lines.line)
    if (Object.keys(problems).length > 0) return showLine(problems)
    flushSync(() => change({ kind: 'list-line', nextId: crypto.randomUUID() }))
    focus('lot')
  }
  const save = (despite = draft.despite) => {
    if (record.isPending) return
    const closed = closeHandOut(draft, crypto.randomUUID())
    const { listed } = closed.lines
    flushSync(() => change({ kind: 'closed', lines: closed.lines }))
    if (closed.problems) return showLine(closed.problems)
    const input = handOutOf({ ...draft, despite }, listed, today)
    if (input === null) return show({ member: { person: WHO } }, 'person')
    record.mutate(input, {
      onSuccess: ({ lines }) => {
        setCaution(null)
        onSaved({ member: draft.member.is === 'nobody' ? 'somebody' : draft.member.text, lines, listed })
        focus('person')
      },
      onError: (thrown) => refuse(thrown, listed),
    })
  }
  /** Puts the sentence of a refusal at the field it concerns; the line is taken up for a change. */
  const refuse = ({ problem }: ProblemError, sent: readonly OutLine[]) => {
    const member = personFieldOf('person', problem.field)
    if (member) return show({ member: { [member]: problem.sentence } }, STEP_OF_PERSON_FIELD[member])
    if (problem.field === 'reason') return show({ reason: problem.sentence }, 'reason')
    const at = outFieldOf(problem.field)
    const line = at && sent[at.line]
    if (!at || !line) return show({ refused: problem })
    flushSync(() => dispatch({ kind: 'change-line', id: line.id }))
    const override = overrideOf(problem)
    showLine({ [at.field]: problem.sentence }, override === null ? problem.choices : [])
    if (override === null) return
    flushSync(() => setCaution({ problem, override }))
    focus('reason')
  }
  const overrideCaution = () => {
    if (caution === null) return
    if (draft.reason.trim() === '')
      return show({ reason: 'Say in a few words why it goes out all the same.' }, 'reason')
    const despite = [...new Set([...draft.despite, caution.override])]
    dispatch({ kind: 'visit', change: { despite } })
    save(despite)
  }
  const pickLot = (lot: LotOffered) => change({ kind: 'line', change: withLot(draft.lines.line, lot) })
  const takeScan = async (lotId: number, lotNumber: string) => {
    const offer = await call('lot.offer', { text: lotNumber, limit: 50 })
    const lot = offer.lots.find((each) => each.lotId === lotId)
    if (!lot) return showLine({ lot: `${lotNumber} is not handed out: ${NOT_OFFERED}` })
    const { line } = draft.lines
    const full = Object.keys(outProblems(line)).length === 0
    flushSync(() => {
      if (full) change({ kind: 'list-line', nextId: crypto.randomUUID() })
      if (full || isUntouched(line))
        change({ kind: 'line', change: withLot({ ...line, lot: null, amount: '' }, lot) })
      else pickLot(lot)
    })
    focus('amount')
  }
  useScan(({ lotId, lotNumber }) => {
    if (lotId === null || lotNumber === null) return false
    void takeScan(lotId, lotNumber)
    return true
  })
  return {
    shown,
    caution,
    saving: record.isPending,
    change,
    pickLot,
    save: () => save(),
    endOfSteps: caution ? overrideCaution : listLine,
    listLine,
    overrideCaution,
    toPromise: () => focus('promised'),
    backToLine: () => focus('lot'),
    changeLine: (id: string) => {
      flushSync(() => change({ kind: 'change-line', id }))
      focus('amount')
    },
  }
}

const WHO = "Who takes it? Type a few letters and choose, or choose 'Nobody is named'."
const NOT_OFFERED = 'it is empty, in quarantine, or no working stock. Its record on the shelf says which.'

function overrideOf(problem: Problem): Override | null {
  const named = problem.choices.find((choice) => OVERRIDES.includes(choice))
  return problem.code === 'caution' && named !== undefined ? (named as Override) : null
}
