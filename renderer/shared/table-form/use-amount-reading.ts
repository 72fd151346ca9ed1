import type { Value } from '../../../db/contract/contract.ts'
import { useRead } from '../client/use-read.ts'
import { useSettled } from './use-settled.ts'

export type AmountReading = Value<'amount.preview'>

interface Asked {
  readonly text: string
  readonly sample?: string
  readonly cropId?: string | undefined
  readonly lotId?: number | undefined
}

/** A pause in typing after which the amount is read back. */
const READ_AFTER_MS = 80

/** The amount as the collection understands it; the last reading stays until the next is there. */
export function useAmountReading(asked: Asked): {
  readonly reading: AmountReading | null
  /** Whether `reading` is of the text as it stands, so that its choices may be taken. */
  readonly fresh: boolean
  readonly failure: string | undefined
} {
  const text = useSettled(asked.text, READ_AFTER_MS)
  const sample = useSettled(asked.sample ?? '', READ_AFTER_MS)
  const empty = text.trim() === '' || asked.text.trim() === ''
  const input = {
    text,
    sample,
    ...(asked.cropId === undefined ? {} : { cropId: asked.cropId }),
    ...(asked.lotId === undefined ? {} : { lotId: asked.lotId }),
  }
  const answer = useRead('amount.preview', empty ? null : input, { keepLast: true })
  // Before the first pause nothing was read yet of what is typed by now.
  if (empty) return { reading: null, fresh: asked.text.trim() === '', failure: undefined }
  const fresh =
    text === asked.text && sample === (asked.sample ?? '') && !answer.isPlaceholderData && !answer.isPending
  return { reading: answer.data ?? null, fresh, failure: answer.error?.problem.sentence }
}
