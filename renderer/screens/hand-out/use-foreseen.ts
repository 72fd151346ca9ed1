import { useState } from 'react'
import { flushSync } from 'react-dom'
import type { CallInput, Value } from '../../../db/contract/contract.ts'
import type { Override } from '../../../db/contract/stock-operations.ts'
import { readAmount } from '../../../db/domain/amounts/read-amount.ts'
import { call } from '../../shared/client/call.ts'
import { answersNow, useRead } from '../../shared/client/use-read.ts'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import type { HandOutDraft } from './hand-out-draft.ts'
import { lineOf, type OutLine } from './out-line.ts'

type Answer = Value<'withdrawal.foresee'>
export type Foreseen = Answer['lines'][number]
export type Caution = Answer['cautions'][number]

/** What handing the visit's lines out would do: by the id of a line that can be read, and of the visit as a whole. */
export interface Foresight {
  readonly ofLine: ReadonlyMap<string, Foreseen>
  readonly cautions: readonly Caution[]
}

export interface ForeseenVisit extends Foresight {
  /** Whether this is about the lines as they stand, so that it may hold one back or be chosen from. */
  readonly fresh: boolean
  /** What is foreseen of the lines as they stand, asked afresh. */
  readonly findNow: () => Promise<Foresight>
}

const FORESEE_AFTER_MS = 80
const NOTHING: Answer = { lines: [], cautions: [] }

export function useForeseen(draft: HandOutDraft): ForeseenVisit {
  const settled = useSettled(draft.lines, FORESEE_AFTER_MS)
  const [found, setFound] = useState<{ readonly of: HandOutDraft['lines']; readonly foresight: Foresight }>()
  const lines = foreseeable(settled)
  const input = lines.length === 0 ? null : foreseeInput(draft, lines)
  const answer = useRead('withdrawal.foresee', input, { keepLast: true })
  const findNow = async () => {
    const asked = foreseeable(draft.lines)
    const foresight = foresightOf(asked, await call('withdrawal.foresee', foreseeInput(draft, asked)))
    flushSync(() => setFound({ of: draft.lines, foresight }))
    return foresight
  }
  const fresh = settled === draft.lines && (input === null || answersNow(answer))
  if (!fresh && found?.of === draft.lines) return { ...found.foresight, fresh: true, findNow }
  return { ...foresightOf(lines, (input === null ? null : answer.data) ?? NOTHING), fresh, findNow }
}

/** Answers come in the order of the lines asked about; an answer of before is of use only where the lines still match. */
function foresightOf(lines: readonly OutLine[], { lines: answers, cautions }: Answer): Foresight {
  const ofLine = lines.flatMap(({ id, lot }, index) => {
    const of = answers[index]
    return of !== undefined && of.lotId === lot?.lotId ? [[id, of] as const] : []
  })
  return { ofLine: new Map(ofLine), cautions }
}

/** The lines of a visit, with the one being typed, of which it can be said what they would do. */
function foreseeable({ listed, line, changing }: HandOutDraft['lines']): readonly OutLine[] {
  const all =
    changing === null ? [...listed, line] : listed.map((each) => (each.id === changing ? line : each))
  return all.filter(
    ({ lot, amount }) => lot !== null && readAmount(amount, { packetSeeds: null }).kind === 'amount',
  )
}

/** The lines of a visit as they are foreseen. */
export function foreseeInput(
  draft: Pick<HandOutDraft, 'purpose'>,
  lines: readonly OutLine[],
): CallInput<'withdrawal.foresee'> {
  return { purpose: draft.purpose, lines: lines.map(lineOf) }
}

/** Every caution of a visit, each once. */
export function cautionsOf({ lines, cautions }: Answer): readonly Override[] {
  return [...new Set([...cautions, ...lines.flatMap((line) => line.cautions)].map(({ despite }) => despite))]
}
