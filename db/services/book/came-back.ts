import type { CameBack } from '../../contract/return-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { message } from '../../messages/message.ts'
import { checksOf, type ReturnRow, returnOf } from '../../queries/return-rows.ts'
import type { Reading } from './context.ts'

/** How a lot came back and what was found of it; null where it did not come back. */
export function cameBack(reading: Reading, lotId: number): Untold<CameBack> | null {
  const back = returnOf(reading.sqlite, lotId)
  return back === undefined ? null : backTold(reading, lotId, back)
}

/** The same of a row that was read. */
export function backTold(reading: Reading, lotId: number, back: ReturnRow): Untold<CameBack> {
  const { on, plants, floweredNear, nearNote, odd } = back
  return {
    on,
    answers: [
      plants === null ? null : message('returns.answer-plants', { plants }),
      floweredNear === null || floweredNear === 'not-known'
        ? null
        : message(`returns.answer-${floweredNear}`, { note: isNoted(nearNote), what: nearNote ?? '' }),
      odd === null || odd === '' ? null : message('returns.answer-odd', { odd }),
    ].filter((answer) => answer !== null),
    checks: checksOf(reading.sqlite, lotId).map((check) =>
      message('returns.found', {
        day: { day: check.on },
        compared: message(`returns.compared-${check.comparedWith}`),
        found: {
          list: [
            message(`returns.dry-${check.dry}`),
            message(`returns.clean-${check.clean}`),
            message(`returns.true-${check.trueToType}`),
          ],
        },
        outcome: message(`returns.outcome-${check.outcome}`),
        noted: isNoted(check.note),
        note: check.note,
      }),
    ),
  }
}

function isNoted(note: string | null): 'yes' | 'no' {
  return note === null || note === '' ? 'no' : 'yes'
}
