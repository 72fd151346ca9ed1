import { type KeyboardEvent, type RefObject, useLayoutEffect, useRef, useState } from 'react'
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
import { useWhen } from '../../shared/table-form/use-when.ts'
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
import { cautionsOf, previewInput, usePreview } from './use-preview.ts'

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
  const previewed = usePreview(draft)
  const record = useWrite('withdrawal.record')
  const { dispatch } = visit
  const { line } = draft.lines

  const focus = (step: string) => {
    if (form.current) focusStepNamed(form.current, step)
  }
  const show = (what: Partial<Shown>, step?: string) => {
    flushSync(() => setShown({ ...NOTHING_SHOWN, ...what }))
    if (step !== undefined) focus(step)
  }
  const showLine = (problems: OutProblems) =>
    show({ line: problems }, problems.lot === undefined ? 'amount' : 'lot')
  const change = (step: HandOutStep) => {
    if (shown !== NOTHING_SHOWN) setShown(NOTHING_SHOWN)
    dispatch(step)
  }
  const takeUp = (id: string) => flushSync(() => change({ kind: 'change-line', id }))

  const held = useHeldKeys()
  const whenKnown = useWhen(previewed.known)
  /** Lists the line being typed, unless something is to be said or changed first. */
  const listKnown = () => {
    const problems = outProblems(line)
    if (Object.keys(problems).length > 0) return showLine(problems)
    if (previewed.failure !== null) {
      previewed.askAgain()
      return show({ refused: previewed.failure })
    }
    const of = previewed.ofLine.get(line.id)
    const field = outFieldOf(of?.problem?.field ?? null)?.field
    if (of?.problem && field) return showLine({ [field]: of.problem.sentence })
    const cautions = previewed.cautions.length + (of?.cautions.length ?? 0)
    if (cautions > 0 && draft.reason.trim() === '') return show({ reason: SAY_WHY }, 'reason')
    flushSync(() => change({ kind: 'list-line', nextId: crypto.randomUUID() }))
    focus('lot')
  }
  const listNow = useRef(listKnown)
  useLayoutEffect(() => {
    listNow.current = listKnown
  })
  const listLine = () => {
    if (previewed.known) return listKnown()
    void held.holdUntil(async () => {
      await whenKnown()
      listNow.current()
      return true
    })
  }
  /** Enter on the amount lists the line, leads to what is offered instead, or asks why: what is previewed decides. */
  const catches = (event: KeyboardEvent) => {
    if (held.catches(event)) return true
    const { key, ctrlKey, metaKey, shiftKey, altKey, target } = event
    if (previewed.known || ctrlKey || metaKey || shiftKey || altKey) return false
    if ((key !== 'Enter' && key !== 'ArrowDown') || !(target as Element).matches(DECIDED_BY_FORESIGHT))
      return false
    void held.holdKey(event, whenKnown)
    return true
  }
  /** Returns whether it was saved. */
  const save = async (): Promise<boolean> => {
    const closed = closeHandOut(draft, crypto.randomUUID())
    const { listed } = closed.lines
    flushSync(() => change({ kind: 'closed', lines: closed.lines }))
    if (closed.problems) {
      showLine(closed.problems)
      return false
    }
    try {
      const answer = await call('withdrawal.preview', previewInput(draft, listed))
      const cautions = cautionsOf(answer)
      if (cautions.length > 0 && draft.reason.trim() === '') {
        const cautioned = listed[answer.lines.findIndex((linePreview) => linePreview.cautions.length > 0)]
        if (cautioned) takeUp(cautioned.id)
        // The reason is asked where a caution is previewed: it must be on the page to take the focus.
        await whenKnown()
        show({ reason: SAY_WHY }, 'reason')
        return false
      }
      const input = handOutOf(draft, listed, cautions, today)
      if (input === null) {
        show({ member: { person: WHO } }, 'person')
        return false
      }
      const saved = await record.mutateAsync(input)
      const member = draft.member.is === 'nobody' ? 'the last visit' : draft.member.text
      flushSync(() => onSaved({ member, lines: saved.lines, listed }))
      focus('person')
      return true
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      refuse(thrown.problem, listed)
      return false
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
    previewed,
    catches,
    saving: record.isPending,
    change,
    pickLot,
    listLine,
    save: () => void held.holdUntil(save),
    toPromise: () => focus('promised'),
    backToLine: () => focus('lot'),
    changeLine: (id: string) => {
      takeUp(id)
      focus('amount')
    },
  }
}

const WHO = "Who takes it? Type a few letters and choose, or choose 'Nobody is named'."
const DECIDED_BY_FORESIGHT = '.table-card input:not([data-step="lot"])'
const SAY_WHY = 'Say in a few words why it goes out all the same, or give less.'
