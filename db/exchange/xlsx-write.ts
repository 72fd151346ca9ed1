import { unzipSync, zipSync } from 'fflate'
import writeWorkbook from 'write-excel-file/node'
import type { CsvColumn } from './csv.ts'

/** Rows as an .xlsx workbook of one sheet, dated `at` (ISO 8601). Texts are texts in it, so that nothing in them is worked out as a formula. */
export async function workbookOf<T>(
  sheet: string,
  columns: readonly CsvColumn<T>[],
  rows: readonly T[],
  at: string,
): Promise<Uint8Array> {
  const headings = columns.map(([heading]) => ({ value: heading, type: String, fontWeight: 'bold' as const }))
  const data = rows.map((row) =>
    columns.map(([, cell]) => {
      const value = cell(row)
      if (value === '') return null
      return typeof value === 'number' ? { value, type: Number } : { value, type: String }
    }),
  )
  const bytes = await writeWorkbook([headings, ...data], { sheet, stickyRowsCount: 1 }).toBuffer()
  // Packed anew under the collection's own clock: the writer dates its parts by that of the machine.
  return zipSync(unzipSync(bytes), { mtime: at })
}
