import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Value } from '../../../db/contract/contract.ts'
import type { Problem } from '../../../db/contract/problem.ts'
import type { IsoDate } from '../../../db/domain/dates/iso-date.ts'
import { call } from '../../shared/client/call.ts'
import { ProblemError } from '../../shared/client/problem-error.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useLotScan } from '../../shared/scans/scans.ts'
import { personFieldOf, STEP_OF_PERSON_FIELD } from '../../shared/table-form/person-draft.ts'
import type { PersonProblems } from '../../shared/table-form/person-fields.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { useHeldKeys } from '../../shared/table-form/use-held-keys.ts'
import { closeHandOut, type HandOutDraft, type HandOutStep, handOutOf } from './hand-out-draft.ts'
import type { HandedOut } from './handed-out.tsx'
import {
  type OutLine,
  type OutProblems,
  outFieldOf,
  outProblems,
  type PickedFrom,
  withLot,
} from './out-line.ts'
import { cautionsOf, type Foresight, foreseeInput, useForeseen } from './use-foreseen.ts'

interface Table {
  readonly draft: HandOutDraft
  readonly visit: { readonly dispatch: (step: HandOutStep) => void }
  readonly today: IsoDate
  readonly form: RefObject<HTMLElement | null>
  readonly onSaved: (saved: HandedOut) => void
}

interface Shown {
  readonly member: PersonProblems
  readonly line: OutProblems
  readonly reason: string | undefined
  /** A refusal that belongs to no field. */
  readonly refused: Problem | null
}

const NOTHING_SHOWN: Shown = { member: {}, line: {}, reason: undefined, refused: null }

/** What the keys, scans and buttons of the Hand out table do, and what is wrong where. */
export function useHandOut({ draft, visit, today, form, onSaved }: Table) {
  const [shown, setShown] = useState<Shown>(NOTHING_SHOWN)
  const foreseen = useForeseen(draft)
  const record = useWrite('withdrawal.record')
  const { dispatch } = visit
  const { line } = draft.lines

  // The reason is asked once a caution is foreseen: a step that is not there yet gets the focus when it comes.
  const awaited = useRef<string | null>(null)
  const focus = (step: string) => {
    awaited.current = form.current && focusStepNamed(form.current, step) ? null : step
  }
  useEffect(() => {
    if (awaited.current !== null) focus(awaited.current)
  })
  const show = (what: Partial<Shown>, step?: string) => {
    flushSync(() => setShown({ ...NOTHING_SHOWN, ...what }))
    if (step !== undefined) focus(step)
  }
  const showLine = (problems: OutProblems) =>
    show({ line: problems }, problems.lot === undefined ? 'amount' : 'lot')
  const change = (step: HandOutStep) => {
    awaited.current = null
    if (shown !== NOTHING_SHOWN) setShown(NOTHING_SHOWN)
    dispatch(step)
  }
  const takeUp = (id: string) => flushSync(() => change({ kind: 'change-line', id }))

  const held = useHeldKeys()
  const lineNow = useRef(line)
  useLayoutEffect(() => {
    lineNow.current = line
  })
  const listLine = () => {
    const problems = outProblems(line)
    if (Object.keys(problems).length > 0) return showLine(problems)
    if (foreseen.fresh) return listForeseen(foreseen)
    void held.holdUntil(async () => {
      try {
        const found = await foreseen.findNow()
        return lineNow.current === line && listForeseen(found)
      } catch (thrown) {
        if (!(thrown instanceof ProblemError)) throw thrown
        show({ refused: thrown.problem })
        return false
      }
    })
  }
  /** Lists the line being typed, unless something is to be said or changed first. Returns whether it was listed. */
  const listForeseen = ({ ofLine, cautions }: Foresight): boolean => {
    const of = ofLine.get(line.id)
    const refused = of?.problem
    const field = outFieldOf(refused?.field ?? null)?.field
    if (refused && field) {
      showLine({ [field]: refused.sentence })
      return false
    }
    if (cautions.length + (of?.cautions.length ?? 0) > 0 && draft.reason.trim() === '') {
      show({ reason: SAY_WHY }, 'reason')
      return false
    }
    flushSync(() => change({ kind: 'list-line', nextId: crypto.randomUUID() }))
    focus('lot')
    return true
  }
  const save = async () => {
    if (record.isPending) return
    const closed = closeHandOut(draft, crypto.randomUUID())
    const { listed } = closed.lines
    flushSync(() => change({ kind: 'closed', lines: closed.lines }))
    if (closed.problems) return showLine(closed.problems)
    try {
      const answer = await call('withdrawal.foresee', foreseeInput(draft, listed))
      const cautions = cautionsOf(answer)
      if (cautions.length > 0 && draft.reason.trim() === '') {
        const cautioned = listed[answer.lines.findIndex((foreseenLine) => foreseenLine.cautions.length > 0)]
        if (cautioned) takeUp(cautioned.id)
        return show({ reason: SAY_WHY }, 'reason')
      }
      const input = handOutOf(draft, listed, cautions, today)
      if (input === null) return show({ member: { person: WHO } }, 'person')
      const saved = await record.mutateAsync(input)
      onSaved({
        member: draft.member.is === 'nobody' ? 'the last visit' : draft.member.text,
        lines: saved.lines,
        listed,
      })
      focus('person')
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      refuse(thrown.problem, listed)
    }
  }
  /** Puts the sentence of a refusal at the field it concerns; the line is taken up for a change. */
  const refuse = (problem: Problem, sent: readonly OutLine[]) => {
    const member = personFieldOf('person', problem.field)
    if (member) return show({ member: { [member]: problem.sentence } }, STEP_OF_PERSON_FIELD[member])
    const at = outFieldOf(problem.field)
    const refused = at && sent[at.line]
    if (!at || !refused) return show({ refused: problem })
    takeUp(refused.id)
    showLine({ [at.field]: problem.sentence })
  }
  const pickLot = (lot: PickedFrom) => change({ kind: 'line', change: withLot(line, lot) })
  const takeScan = (lot: Value<'lot.get'>) => {
    const full = Object.keys(outProblems(line)).length === 0
    flushSync(() => {
      if (full) change({ kind: 'list-line', nextId: crypto.randomUUID() })
      change({ kind: 'line', change: withLot(full ? { lot: null, amount: '' } : line, { ...lot, why: '' }) })
    })
    focus('amount')
  }
  useLotScan(takeScan, (refused) => show({ refused }))
  return {
    shown,
    foreseen,
    catches: held.catches,
    saving: record.isPending,
    change,
    pickLot,
    listLine,
    save: () => void save(),
    toPromise: () => focus('promised'),
    backToLine: () => focus('lot'),
    changeLine: (id: string) => {
      takeUp(id)
      focus('amount')
    },
  }
}

const WHO = "Who takes it? Type a few letters and choose, or choose 'Nobody is named'."
const SAY_WHY = 'Say in a few words why it goes out all the same, or give less.'
