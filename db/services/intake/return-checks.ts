import { refuse } from '../../contract/refusal.ts'
import { oddCheck } from '../../domain/intake/check-return.ts'
import { message } from '../../messages/message.ts'
import { returnOf, returnsToCheck } from '../../queries/return-rows.ts'
import { insertRow } from '../../queries/rows.ts'
import { returnCheck } from '../../schema/stock-tables.ts'
import { askOnce } from '../book/ask-once.ts'
import { backTold } from '../book/came-back.ts'
import { setCaution, writeCautionEnd } from '../book/cautions.ts'
import { changeLot } from '../book/change-lot.ts'
import type { Reads, Writes } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { reasonOf } from '../book/quarantine-reason.ts'
import { cautionsTold } from '../book/seed-words.ts'

export const checkReturn: Writes<'return.check'> = (writing, input) => {
  const { lotId, on, outcome, note } = input
  const { lotNumber } = lotOrRefuse(writing, lotId, 'lotId')
  if (returnOf(writing.sqlite, lotId) === undefined) {
    refuse('not-a-return', message('returns.not-a-return', { lot: lotNumber }), {
      field: 'lotId',
      todo: message('returns.not-a-return-todo'),
    })
  }
  const odd = oddCheck(input)
  if (odd !== null) askOnce(writing, `check ${outcome}`, odd, 'outcome')
  const { dry, clean, trueToType, comparedWith, entryId } = { ...input, ...writing }
  insertRow(writing.sqlite, returnCheck, {
    ...{ lotId, dry, clean, trueToType, comparedWith, outcome, onDate: on, note, entryId },
  })
  const crossed = cautionsTold(writing, [lotId]).some(({ caution }) => caution === 'possible-cross')
  const caution = { lotId, caution: 'possible-cross', onDate: on } as const
  if (outcome === 'keep' && crossed) writeCautionEnd(writing, { ...caution, reason: note })
  if (outcome === 'pass-on' && !crossed) setCaution(writing, { ...caution, note })
  if (outcome !== 'wait') changeLot(writing, lotId, { quarantineReason: null })
  return {
    said: message('returns.checked', { lot: lotNumber, outcome: message(`returns.outcome-${outcome}`) }),
    undoable: true,
  }
}

export const listReturnsToCheck: Reads<'return.list-to-check'> = (reading) => ({
  returns: returnsToCheck(reading.sqlite).map(
    ({ lotId, lotNumber, variety, crop, person, reason, ...back }) => ({
      ...{ lotId, lotNumber, variety, crop, person: person ?? '' },
      reason: reasonOf(reason),
      ...backTold(reading, lotId, back),
    }),
  ),
})
