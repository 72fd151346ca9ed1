import { type CsvColumn, csvOf } from '../../exchange/csv.ts'
import { english } from '../../messages/english.ts'
import { message } from '../../messages/message.ts'
import type { Reads } from '../book/context.ts'
import { recallOrRefuse, whomToTell } from '../recall/recalls.ts'
import type { TakenRow, Taker } from '../recall/trace.ts'

const each =
  (words: (row: TakenRow) => string) =>
  ({ had }: Taker) =>
    had.map(words).join('; ')

const COLUMNS: readonly CsvColumn<Taker>[] = [
  ['name', ({ who }) => who.name ?? ''],
  ['town', ({ who }) => who.town ?? ''],
  ['e-mail', ({ who }) => who.email ?? ''],
  ['phone', ({ who }) => who.phone ?? ''],
  ['address', ({ who }) => who.address ?? ''],
  ['variety', each(({ variety }) => variety)],
  ['lot', each(({ lotNumber }) => lotNumber)],
  ['seeds', each(({ count }) => String(count))],
  ['handed out', each(({ on }) => on)],
  ['affected', each(({ affected }) => english.say(message(`recall.affected-${affected}`)))],
]

/** Whom to tell of a recall, as a table: those who agreed to be written to, and how many others there are. */
export const exportRecall: Reads<'recall.export'> = (reading, input) => {
  const { row, lots } = recallOrRefuse(reading, input.recallId)
  const { takers, ...howMany } = whomToTell(reading, lots)
  return { fileName: `recall-${row.lotNumber}-${row.on}.csv`, csv: csvOf(COLUMNS, takers), ...howMany }
}
