import type { CallInput, Value } from '../../../db/contract/contract.ts'
import type { Override } from '../../../db/contract/stock-operations.ts'
import { readAmount } from '../../../db/domain/amounts/read-amount.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import type { HandOutDraft } from './hand-out-draft.ts'
import { lineOf, type OutLine } from './out-line.ts'

export type Foreseen = Value<'withdrawal.foresee'>['lines'][number]

const FORESEE_AFTER_MS = 80

/** What handing the visit's lines out would do, by the id of the line; nothing for a line that cannot be read yet. */
export function useForeseen(draft: HandOutDraft): ReadonlyMap<string, Foreseen> {
  const lines = useSettled(draft.lines, FORESEE_AFTER_MS)
  const { listed, line, changing } = lines
  const all =
    changing === null ? [...listed, line] : listed.map((each) => (each.id === changing ? line : each))
  const readable = all.filter(canBeForeseen)
  const answer = useRead('withdrawal.foresee', readable.length === 0 ? null : foreseeInput(draft, readable), {
    keepLast: true,
  })
  // Answers come in the order of the lines asked about; an answer of before is of use only where the lines still match.
  const foreseen = answer.data?.lines ?? []
  return new Map(
    readable.flatMap(({ id, lot }, index) => {
      const of = foreseen[index]
      return of !== undefined && of.lotId === lot?.lotId ? [[id, of]] : []
    }),
  )
}

export function foreseeInput(
  draft: Pick<HandOutDraft, 'purpose'>,
  lines: readonly OutLine[],
): CallInput<'withdrawal.foresee'> {
  return { purpose: draft.purpose, lines: lines.map(lineOf) }
}

function canBeForeseen(line: OutLine): boolean {
  return line.lot !== null && readAmount(line.amount, { packetSeeds: null }).kind === 'amount'
}

/** The cautions of some lines, each once. */
export function cautionsOf(foreseen: readonly Foreseen[]): readonly Override[] {
  return [...new Set(foreseen.flatMap(({ cautions }) => cautions.map(({ despite }) => despite)))]
}
