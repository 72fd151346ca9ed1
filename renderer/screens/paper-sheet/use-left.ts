import type { Value } from '../../../db/contract/contract.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { canBePreviewed } from '../../shared/table-form/lot-line.ts'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import type { PaperDraft } from './paper-draft.ts'

type Previewed = Value<'withdrawal.preview'>['lines'][number]

const FORESEE_AFTER_MS = 80

/** What the whole sheet would leave in the lot of the line being typed; undefined while that cannot be said. */
export function useLeftBySheet(draft: PaperDraft): Previewed | undefined {
  const { listed, line, changing } = useSettled(draft.lines, FORESEE_AFTER_MS)
  const others = listed.filter(({ id }) => id !== changing)
  const readable = [...others, line].flatMap((each) => (canBePreviewed(each) ? [each] : []))
  const input =
    readable.at(-1) === line
      ? { lines: readable.map(({ lot, amount }) => ({ lotId: lot.lotId, amount })) }
      : null
  const answer = useRead('withdrawal.preview', input, { keepLast: true }).data
  const last = answer?.lines.at(-1)
  return input !== null && last?.lotId === line.lot?.lotId ? last : undefined
}
