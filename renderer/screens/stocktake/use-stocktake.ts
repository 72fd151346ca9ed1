import { flushSync } from 'react-dom'
import type { Value } from '../../../db/contract/contract.ts'
import { message } from '../../../db/messages/message.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useLotScan } from '../../shared/scans/scans.ts'
import type { OpenTable } from '../../shared/table-form/table-draft.tsx'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import { useTable } from '../../shared/table-form/use-table.ts'
import {
  COUNT_REFUSALS,
  countedLots,
  emptyStocktake,
  foundProblem,
  type ListedLot,
  lineOf,
  type StocktakeDraft,
  withFound,
} from './stocktake-draft.ts'

export type Previewed = Value<'stocktake.preview'>['lines'][number]

const FORESEE_AFTER_MS = 80

/** What the keys, scans and buttons of a stocktake do, and what differs so far. */
export function useStocktake(
  open: OpenTable<StocktakeDraft>,
  rows: readonly ListedLot[],
  onSaved: (saved: Value<'stocktake.record'>) => void,
) {
  const { draft, today } = open
  const table = useTable(open, { first: 'found', writes: 'stocktake.record', refusals: COUNT_REFUSALS })
  const counted = countedLots(draft)
  const previewed = usePreview(draft)
  const current =
    rows.find(({ lotId }) => lotId === draft.at) ??
    rows.find(({ lotId }) => !counted.some((lot) => lot.lotId === lotId)) ??
    rows[0]
  const found = draft.lots.find(({ lotId }) => lotId === current?.lotId)?.found ?? ''
  const type = (lot: ListedLot, text: string) => table.change((was) => withFound(was, lot, text))
  const take = (at: number) => {
    flushSync(() => table.set({ at }))
    table.focus('found')
  }
  const goOn = (by: 1 | -1) => {
    const problem = found.trim() === '' ? undefined : foundProblem(found)
    if (problem !== undefined && by > 0) return table.show({ found: problem })
    const next = rows[rows.findIndex(({ lotId }) => lotId === current?.lotId) + by]
    if (next) take(next.lotId)
    else if (by > 0) table.focus('reason')
  }
  /** Whether nothing is missing before it is posted; what is, is shown. */
  const isComplete = (): boolean => {
    const wrong = counted.find((lot) => foundProblem(lot.found) !== undefined)
    if (wrong !== undefined) {
      take(wrong.lotId)
      table.show({ found: foundProblem(wrong.found) })
    } else if (counted.length === 0) table.show({ found: NOTHING_TYPED })
    else if (draft.reason.trim() === '') table.show({ reason: SAY_WHY })
    else return true
    return false
  }
  const post = async (): Promise<boolean> => {
    const { key, reason } = draft
    const saved = await table.write({ key, on: draft.on || today, reason, lines: counted.map(lineOf) })
    flushSync(() => {
      table.change(() => emptyStocktake(crypto.randomUUID()))
      onSaved(saved)
    })
    return true
  }
  const takeUp = (index: number): boolean => {
    const lot = counted[index]
    if (lot !== undefined) take(lot.lotId)
    return lot !== undefined
  }
  useLotScan((lot) => {
    if (rows.some((row) => row.lotId === lot.lotId)) return take(lot.lotId)
    flushSync(() => type(lot, ''))
    table.focus('found')
  }, table.refuse)
  return {
    table,
    current,
    found,
    counted,
    previewed,
    type,
    take,
    goOn,
    save: () => void table.held.holdUntil(async () => isComplete() && table.attempt(post, takeUp)),
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

const NOTHING_TYPED = message('stocktake.nothing-typed')
const SAY_WHY = message('stocktake.say-why')
