import type { Result } from '../../contract/contract.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { fireSheetDue } from '../../domain/rescue-order/sheet-due.ts'
import { message } from '../../messages/message.ts'
import { fireSheetPrintedOn } from '../../queries/rescue-rows.ts'
import type { Reading, Writes } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'

export function fireSheetStanding(reading: Reading): Result<'fire-sheet.get'> {
  const { whomToCall, sowingDay } = settingsOf(reading)
  const lastPrinted = fireSheetPrintedOn(reading.sqlite)
  const due = fireSheetDue(lastPrinted === null ? null : isoDate(lastPrinted), reading.today, sowingDay)
  return { lastPrinted, due, whomToCall }
}

/** The day stands in the answer of its entry. */
export const markFireSheetPrinted: Writes<'fire-sheet.mark-printed'> = (_, { on }) => ({
  on,
  said: message('fire-sheet.printed', { on: { day: on } }),
  undoable: true,
})
