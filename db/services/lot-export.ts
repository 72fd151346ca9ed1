import type { ParsedInput, Value } from '../contract/contract.ts'
import { harvestInWords } from '../domain/dates/harvest-year.ts'
import { type CsvColumn, csvOf } from '../exchange/csv.ts'
import { type LotRow, shelfPage } from '../queries/lot-rows.ts'
import type { Reading } from './context.ts'
import { livingOf } from './living-stock.ts'
import { harvestOf } from './new-lot.ts'

const COLUMNS: readonly CsvColumn<LotRow>[] = [
  ['lot', (row) => row.lot_number],
  ['accession', (row) => row.accession_number],
  ['crop', (row) => row.crop],
  ['variety', (row) => row.variety],
  ['harvest', (row) => harvestInWords(harvestOf(row))],
  ['generation', (row) => row.generation],
  ['role', (row) => row.role],
  ['place', (row) => row.place ?? ''],
  ['donor', (row) => row.donor ?? ''],
  ['seeds', (row) => row.balance_count],
  ['seeds are', (row) => (row.estimated === 1 ? 'estimated' : row.basis)],
  ['mass g', (row) => row.balance_mass_mg / 1000],
  ['living seeds, about', (row) => livingOf(row)],
  ['in quarantine because', (row) => row.quarantine_reason ?? ''],
]

export function exportLots(reading: Reading, { lotIds }: ParsedInput<'lot.export'>): Value<'lot.export'> {
  const place = new Map(lotIds.map((lotId, index) => [lotId, index]))
  const filter = { lotIds, emptyToo: true }
  const rows = shelfPage(reading.sqlite, filter, 'number', false, { offset: 0, limit: lotIds.length })
  const ordered = rows.toSorted((a, b) => (place.get(a.lot_id) ?? 0) - (place.get(b.lot_id) ?? 0))
  return { fileName: `lots-${reading.today}.csv`, csv: csvOf(COLUMNS, ordered) }
}
