import type { ParsedInput, Result } from '../../contract/contract.ts'
import { harvestTold } from '../../domain/dates/harvest-year.ts'
import { limitsTold } from '../../domain/terms/gift-limits.ts'
import { type CsvColumn, csvOf, exactCsvOf } from '../../exchange/csv.ts'
import { english } from '../../messages/english.ts'
import type { Message } from '../../messages/message.ts'
import { limitsOfAccession } from '../../queries/gift-limits.ts'
import { type LotRow, shelfPage } from '../../queries/lot-rows.ts'
import { weightInForce } from '../book/amounts.ts'
import type { Reading, Reads } from '../book/context.ts'
import { livingOf } from '../book/living-stock.ts'
import { harvestOf } from '../book/new-lot.ts'
import { reasonOf } from '../book/quarantine-reason.ts'
import { cautionsTold } from '../book/seed-words.ts'
import { withheldOf, withholdingOf } from '../people/withhold.ts'

function inEnglish(told: Message | string): string {
  return typeof told === 'string' ? told : english.say(told)
}

/** Weighed seed whose weight nobody has said has only a guess at its number. */
function howCounted(row: LotRow): string {
  if (row.basis === 'weighed' && weightInForce(row).basis === 'guess') return 'guessed'
  return row.estimated === 1 ? 'estimated' : row.basis
}

function reasonInEnglish(kept: string | null): string {
  const reason = reasonOf(kept)
  return typeof reason === 'string' ? reason : english.say(reason)
}

const limitsOf = (reading: Reading, { accessionId }: LotRow) => limitsOfAccession(reading.sqlite, accessionId)

const columnsOf = (reading: Reading): readonly CsvColumn<LotRow>[] => [
  ['lot', (row) => row.lotNumber],
  ['accession', (row) => row.accessionNumber],
  ['crop', (row) => row.crop],
  ['variety', (row) => row.variety],
  ['harvest', (row) => inEnglish(harvestTold(harvestOf(row)))],
  ['generation', (row) => row.generation],
  ['role', (row) => row.role],
  ['place', (row) => row.place ?? ''],
  ['donor', (row) => (limitsOf(reading, row).publishName ? (row.donor ?? '') : '')],
  ['seeds', (row) => row.balanceCount],
  ['seeds are', howCounted],
  ['mass g', (row) => row.balanceMassMg / 1000],
  ['living seeds, about', (row) => livingOf(row)],
  ['in quarantine because', (row) => reasonInEnglish(row.quarantineReason)],
  [
    'careful',
    (row) =>
      cautionsTold(reading, [row.lotId])
        .map(({ text }) => english.say(text))
        .join(' '),
  ],
  ['terms', (row) => limitsTold(limitsOf(reading, row), reading.today).map(english.say).join(' ')],
]

/** Some lots as CSV, in the order given: for a spreadsheet, or exact for programs. Masses in grams. */
export const exportLots: Reads<'lot.export'> = (reading, input) => {
  const rows = rowsInOrder(reading, input.lotIds)
  const csv = input.exact ? exactCsvOf(columnsOf(reading), rows) : csvOf(columnsOf(reading), rows)
  return { fileName: `lots-${reading.today}${input.exact ? '-exact' : ''}.csv`, csv }
}

/** Texts of a lot in which somebody may be named. */
const OF_LOTS = new Set(['place', 'in quarantine because', 'careful', 'terms'])

/** Writes every lot of the book, with its donor only where that was asked for. */
export const makeStock: Reads<'stock.export'> = (reading, { people }) => {
  const asked = { people, places: true }
  const withholding = withholdingOf(reading, asked)
  const columns = columnsOf(reading)
    .filter(([heading]) => people || heading !== 'donor')
    .map(
      ([heading, cell]): CsvColumn<LotRow> => [
        heading,
        (row) => (OF_LOTS.has(heading) ? withholding.text(String(cell(row))) : cell(row)),
      ],
    )
  const all = { offset: 0, limit: Number.MAX_SAFE_INTEGER }
  const rows = shelfPage(reading.sqlite, { emptyToo: true }, 'number', false, all)
  return {
    fileName: `stock-${reading.today}.csv`,
    csv: exactCsvOf(columns, rows),
    rows: rows.length,
    withheld: withheldOf(reading, asked),
  }
}

/** Some lots as a workbook, in the order given. */
export async function exportWorkbook(
  reading: Reading,
  { lotIds }: ParsedInput<'lot.workbook'>,
): Promise<Result<'lot.workbook'>> {
  const { workbookOf } = await import('../../exchange/xlsx-write.ts')
  const bytes = await workbookOf(
    'Lots',
    columnsOf(reading),
    rowsInOrder(reading, lotIds),
    reading.now.toISOString(),
  )
  return { fileName: `lots-${reading.today}.xlsx`, content: Buffer.from(bytes).toString('base64') }
}

/** Lots as they stand in the list that they were ticked in. */
function rowsInOrder(reading: Reading, lotIds: readonly number[]): LotRow[] {
  const place = new Map(lotIds.map((lotId, index) => [lotId, index]))
  const filter = { lotIds, emptyToo: true }
  const rows = shelfPage(reading.sqlite, filter, 'number', false, { offset: 0, limit: lotIds.length })
  return rows.toSorted((a, b) => (place.get(a.lotId) ?? 0) - (place.get(b.lotId) ?? 0))
}
