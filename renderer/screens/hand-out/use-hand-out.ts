import type { KeyboardEvent } from 'react'
import { flushSync } from 'react-dom'
import type { Value } from '../../../db/contract/contract.ts'
import { message } from '../../../db/messages/message.ts'
import { call } from '../../shared/client/call.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { useLotScan } from '../../shared/scans/scans.ts'
import { type LotLine, withLot } from '../../shared/table-form/lot-line.ts'
import { isNobodyYet } from '../../shared/table-form/person-draft.ts'
import { isAmiss, refusedStep } from '../../shared/table-form/refusals.ts'
import type { OpenTable } from '../../shared/table-form/table-draft.tsx'
import { useNewest } from '../../shared/table-form/use-newest.ts'
import { useTable } from '../../shared/table-form/use-table.ts'
import { useVisitLines } from '../../shared/table-form/use-visit-lines.ts'
import { useWhen } from '../../shared/table-form/use-when.ts'
import {
  emptyHandOut,
  type HandOutDraft,
  handOutOf,
  OUT_REFUSALS,
  outProblems,
  PACKETS,
} from './hand-out-draft.ts'
import type { HandedOut } from './handed-out.tsx'
import { cautionsOf, previewInput, usePreview } from './use-preview.ts'

/** What the keys, scans and buttons of the Hand out table do, and what is wrong where. */
export function useHandOut(open: OpenTable<HandOutDraft>, onSaved: (saved: HandedOut) => void) {
  const { draft, today } = open
  const table = useTable(open, {
    first: isNobodyYet(draft.member) ? 'person' : 'lot',
    writes: 'withdrawal.record',
    refusals: OUT_REFUSALS,
  })
  const packets = useVisitLines({
    lines: draft.lines,
    rules: PACKETS,
    onLines: (update) => table.change((was) => ({ ...was, lines: update(was.lines) })),
    table,
    begins: 'lot',
    changesAt: 'amount',
  })
  const { held } = table
  const { t } = useTexts()
  const { line } = draft.lines
  const previewed = usePreview(draft)
  const whenKnown = useWhen(previewed.known)

  /** Lists the line being typed, unless something is to be said or changed first. */
  const listKnown = () => {
    const problems = outProblems(line)
    if (isAmiss(problems)) return table.show(problems)
    if (previewed.failure !== null) {
      previewed.askAgain()
      return table.refuse(previewed.failure)
    }
    const of = previewed.ofLine.get(line.id)
    const at = refusedStep(of?.problem?.field ?? null, OUT_REFUSALS)
    if (of?.problem && at) return table.show({ [at.step]: of.problem.sentence })
    const cautions = previewed.cautions.length + (of?.cautions.length ?? 0)
    if (cautions > 0 && draft.reason.trim() === '') return table.show({ reason: SAY_WHY })
    packets.list()
  }
  const listNow = useNewest(listKnown)
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
    if (
      (key !== 'Enter' && key !== 'ArrowDown') ||
      !(target as Element).matches('.table-card input:not([data-step="lot"])')
    )
      return false
    void held.holdKey(event, whenKnown)
    return true
  }
  const send = async (listed: readonly LotLine[]): Promise<boolean> => {
    const answer = await call('withdrawal.preview', previewInput(draft, listed))
    const cautions = cautionsOf(answer)
    if (cautions.length > 0 && draft.reason.trim() === '') {
      const cautioned = listed[answer.lines.findIndex((linePreview) => linePreview.cautions.length > 0)]
      if (cautioned) packets.takeUp(cautioned.id)
      // The reason is asked where a caution is previewed: it must be on the page to take the focus.
      await whenKnown()
      table.show({ reason: SAY_WHY })
      return false
    }
    const input = handOutOf(draft, listed, cautions, today)
    if (input === null) {
      table.show({ person: WHO })
      return false
    }
    const { lines } = await table.write(input)
    const member = draft.member.is === 'nobody' ? '' : draft.member.text
    flushSync(() => {
      table.change(() => emptyHandOut(crypto.randomUUID()))
      onSaved({ member, lines, listed })
    })
    table.focus('person')
    return true
  }
  const takeScan = (lot: Value<'lot.get'>) => {
    const full = !isAmiss(outProblems(line))
    flushSync(() => {
      if (full) packets.step({ kind: 'list-line', nextId: crypto.randomUUID() })
      packets.setLine(withLot(full ? { lot: null, amount: '' } : line, lot, t))
    })
    table.focus('amount')
  }
  useLotScan(takeScan, table.refuse)
  return { table, packets, previewed, catches, listLine, save: () => packets.save(send) }
}

const WHO = message('hand-out.who-is-it')
const SAY_WHY = message('hand-out.say-why')
