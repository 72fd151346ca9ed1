import { type RefObject, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Value } from '../../../db/contract/contract.ts'
import type { Problem } from '../../../db/contract/problem.ts'
import { ProblemError } from '../../shared/client/problem-error.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useLotScan } from '../../shared/scans/scans.ts'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { useHeldKeys } from '../../shared/table-form/use-held-keys.ts'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import {
  countedLots,
  foundProblem,
  type ListedLot,
  lineOf,
  type StocktakeDraft,
  type StocktakeStep,
} from './stocktake-draft.ts'

export type Previewed = Value<'stocktake.preview'>['lines'][number]

interface Table {
  readonly draft: StocktakeDraft
  readonly dispatch: (step: StocktakeStep) => void
  readonly today: string
  readonly rows: readonly ListedLot[]
  readonly form: RefObject<HTMLElement | null>
  readonly onSaved: (saved: Value<'stocktake.record'>) => void
}

interface Shown {
  readonly found: string | undefined
  readonly reason: string | undefined
  readonly refused: Problem | null
}

const NOTHING_SHOWN: Shown = { found: undefined, reason: undefined, refused: null }
const FORESEE_AFTER_MS = 80

/** What the keys, scans and buttons of a stocktake do, and what differs so far. */
export function useStocktake({ draft, dispatch, today, rows, form, onSaved }: Table) {
  const [shown, setShown] = useState(NOTHING_SHOWN)
  const record = useWrite('stocktake.record')
  const counted = countedLots(draft)
  const previewed = usePreview(draft)
  const current =
    rows.find(({ lotId }) => lotId === draft.at) ??
    rows.find(({ lotId }) => !counted.some((lot) => lot.lotId === lotId)) ??
    rows[0]
  const found = draft.lots.find(({ lotId }) => lotId === current?.lotId)?.found ?? ''
  const focus = (step: string) => {
    if (form.current) focusStepNamed(form.current, step)
  }
  const show = (what: Partial<Shown>, step: string) => {
    flushSync(() => setShown({ ...NOTHING_SHOWN, ...what }))
    focus(step)
  }
  const change = (step: StocktakeStep) => {
    if (shown !== NOTHING_SHOWN) setShown(NOTHING_SHOWN)
    dispatch(step)
  }
  const take = (lotId: number) => {
    flushSync(() => change({ kind: 'at', lotId }))
    focus('found')
  }
  const goOn = (by: 1 | -1) => {
    if (found.trim() !== '') {
      const problem = foundProblem(found)
      if (problem !== undefined && by > 0) return show({ found: problem }, 'found')
    }
    const next = rows[rows.findIndex(({ lotId }) => lotId === current?.lotId) + by]
    if (next) take(next.lotId)
    else if (by > 0) focus('reason')
  }
  const held = useHeldKeys()
  /** Whether nothing is missing before it is posted; what is, is shown. */
  const isComplete = (): boolean => {
    const wrong = counted.find((lot) => foundProblem(lot.found) !== undefined)
    if (wrong !== undefined) {
      take(wrong.lotId)
      show({ found: foundProblem(wrong.found) }, 'found')
    } else if (counted.length === 0) show({ found: NOTHING_TYPED }, 'found')
    else if (draft.reason.trim() === '') show({ reason: SAY_WHY }, 'reason')
    else return true
    return false
  }
  /** Returns whether it was posted. */
  const save = async (): Promise<boolean> => {
    if (!isComplete()) return false
    const on = draft.on === '' ? today : draft.on
    try {
      const saved = await record.mutateAsync({
        key: draft.key,
        on,
        reason: draft.reason,
        lines: counted.map(lineOf),
      })
      flushSync(() => onSaved(saved))
      return true
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      refuse(thrown.problem)
      return false
    }
  }
  const refuse = (problem: Problem) => {
    if (problem.field === 'reason') return show({ reason: problem.sentence }, 'reason')
    const lot = counted[Number(/^lines\.(\d+)/.exec(problem.field ?? '')?.[1] ?? -1)]
    if (lot === undefined) return setShown({ ...NOTHING_SHOWN, refused: problem })
    take(lot.lotId)
    show({ found: problem.sentence }, 'found')
  }
  const takeScan = (lot: ListedLot) => {
    const { lotId, lotNumber, variety, crop, place } = lot
    if (rows.some((row) => row.lotId === lotId)) return take(lotId)
    flushSync(() => change({ kind: 'typed', lot: { lotId, lotNumber, variety, crop, place }, found: '' }))
    focus('found')
  }
  useLotScan(takeScan, (refused) => setShown({ ...NOTHING_SHOWN, refused }))
  return {
    shown,
    current,
    found,
    counted,
    previewed,
    saving: record.isPending,
    change,
    take,
    goOn,
    catches: held.catches,
    save: () => void held.holdUntil(save),
    focus,
  }
}

/** What the book says of each lot that was typed, and by how much it differs. */
function usePreview(draft: StocktakeDraft): ReadonlyMap<number, Previewed> {
  const counted = countedLots(useSettled(draft, FORESEE_AFTER_MS))
  const readable = counted.filter(({ found }) => foundProblem(found) === undefined).map(lineOf)
  const input = readable.length === 0 ? null : { lines: readable }
  const answer = useRead('stocktake.preview', input, { keepLast: true }).data
  return new Map(input === null ? [] : answer?.lines.map((line) => [line.lotId, line]))
}

const NOTHING_TYPED = 'Nothing is typed yet. Type what the scale says, or that nothing is left.'
const SAY_WHY = 'Say in a few words why the book may differ, such as: yearly stocktake.'
