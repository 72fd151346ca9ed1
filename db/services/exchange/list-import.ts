import { createHash } from 'node:crypto'
import type { ParsedInput, Result, WriteResult } from '../../contract/contract.ts'
import type { Fate, ListPreview } from '../../contract/intake-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import { fold } from '../../domain/shared/fold.ts'
import { csvOf } from '../../exchange/csv.ts'
import { FIELD_NAMES, isContactHeading, LIST_FIELDS, type ListField } from '../../exchange/list-fields.ts'
import { ADDED, guessLayout, type ListLayout } from '../../exchange/list-layout.ts'
import { isColumnUse, listRow } from '../../exchange/list-row.ts'
import { checkPassport, gatherFindings } from '../../exchange/mcpd-check.ts'
import { DESCRIPTORS } from '../../exchange/mcpd-table.ts'
import { readTableFile, type TableFile } from '../../exchange/table-file.ts'
import type { Sqlite } from '../../migrations/connection.ts'
import { batchOfList, rememberedColumns } from '../../queries/list-rows.ts'
import { prepared } from '../../queries/prepared.ts'
import { listBatch, listColumns } from '../../schema/list-tables.ts'
import type { Reading, Writing } from '../book/context.ts'
import { listBook } from './list-book.ts'
import { type ListPlan, planList } from './list-plan.ts'
import { writeGifts } from './list-write.ts'

type ListInput = ParsedInput<'import.preview'>
type Table = Extract<TableFile, { kind: 'table' }>

const MOST_ROWS_SHOWN = 60
const MOST_QUESTIONS_SHOWN = 200
const MOST_FINDINGS_SHOWN = 200
const SAMPLED = 3

interface PlannedList {
  readonly table: Table
  readonly layout: ListLayout
  readonly remembered: boolean
  readonly plan: ListPlan
}

/** How a list is understood and what becomes of its rows. Refuses columns that do not fit it. */
export function previewList(reading: Reading, input: ListInput): ListPreview {
  const planned = plannedList(reading, input)
  if ('because' in planned) return { kind: 'unreadable', because: planned.because }
  const { table, layout, plan } = planned
  const questions = plan.questions.listed()
  return {
    kind: 'read',
    understood: understoodInWords(reading, input, planned),
    sheets: [...table.sheets],
    sheet: table.sheet,
    encoding: table.encoding,
    delimiter: table.delimiter,
    headingRow: layout.headingRow,
    remembered: planned.remembered,
    columns: layout.columns.map((use, index) => ({
      heading: layout.headings[index] ?? '',
      use,
      sample: samplesOf(table, layout, index),
    })),
    fields: fieldsFor(layout),
    counts: countsOf(plan),
    questions: questions.slice(0, MOST_QUESTIONS_SHOWN),
    openQuestions: questions.filter(({ answered }) => answered === null).length,
    rows: FATES.flatMap((fate) => plan.fates.filter((row) => row.fate === fate).slice(0, MOST_ROWS_SHOWN)),
    findings: layout.passport ? findingsIn(table, layout).slice(0, MOST_FINDINGS_SHOWN) : [],
  }
}

/** What every row says by descriptors, held against the standard. */
function findingsIn({ rows }: Table, layout: ListLayout) {
  const first = layout.headingRow + 1
  return gatherFindings(
    rows.slice(first).flatMap((cells, index) => {
      const row = listRow(cells, first + index + 1, layout)
      return row === null || typeof row === 'string'
        ? []
        : [{ at: row.row, findings: checkPassport(row.passport) }]
    }),
  )
}

/** The rows that would not come in, as CSV. Refuses a file that cannot be read. */
export function refusedRows(reading: Reading, input: ListInput): Result<'import.list-refused'> {
  const planned = plannedList(reading, input)
  if ('because' in planned) return refuse('list-unreadable', planned.because, { field: 'content' })
  const { table, layout, plan } = planned
  const left = plan.fates.filter(({ fate }) => fate !== 'new')
  const csv = csvOf(
    [
      [ADDED[0], ({ row }: ListPlan['fates'][number]) => row],
      [ADDED[1], ({ because }) => because],
      ...layout.columns.map(
        (use, index) =>
          [
            layout.headings[index] || FIELD_NAMES[use as ListField] || `column ${index + 1}`,
            ({ row }: ListPlan['fates'][number]) => table.rows[row - 1]?.[index] ?? '',
          ] as const,
      ),
    ],
    left,
  )
  const name = input.fileName.replace(/\.[a-z]+$/i, '')
  return { fileName: `${name}-left-out.csv`, csv, rows: left.length }
}

/** Takes the gifts of a list in. Refuses while rows are in doubt, refused ones unless left out, and a list that came in before. */
export function takeListIn(
  writing: Writing,
  input: ParsedInput<'import.record'>,
): WriteResult<'import.record'> {
  const digest = digestOf(input)
  const before = batchOfList(writing.sqlite, digest)
  if (before !== null)
    refuse('already-there', `This very list is in the book already, as ‘${before}’.`, {
      field: 'content',
      todo: 'If it came in wrongly, take it back under ‘What was written’; then take it in again.',
    })
  const planned = plannedList(writing, input)
  if ('because' in planned) return refuse('list-unreadable', planned.because, { field: 'content' })
  const { plan, layout } = planned
  const counts = countsOf(plan)
  if (counts.doubtful > 0)
    refuse('rows-undecided', `${rowsInWords(counts.doubtful)} not sure yet. Nothing was written.`, {
      field: 'answers',
      todo: 'Answer what is asked, or leave those rows out.',
    })
  if (counts.refused > 0 && !input.leaveOut)
    refuse(
      'rows-refused',
      `${counts.refused === 1 ? 'One row' : `${counts.refused} rows`} cannot come in. Nothing was written.`,
      {
        field: 'leaveOut',
        todo: 'Save them as a file, then say that they may be left out.',
      },
    )
  if (plan.gifts.length === 0)
    refuse('nothing-new', 'No row of this list is a new gift. Nothing was written.', { field: 'content' })
  lastPlanned.delete(writing.sqlite)
  const written = writeGifts(writing, plan.gifts)
  const leftOut = plan.fates.length - written.length
  const { entryId } = writing
  writing.db
    .insert(listBatch)
    .values({ fileName: input.fileName, digest, taken: written.length, leftOut, entryId })
    .run()
  rememberColumns(writing, layout)
  const [first, last] = [written[0], written.at(-1)]
  const gifts = written.length === 1 ? 'one gift' : `${written.length} gifts`
  const without = leftOut === 0 ? '' : `, ${leftOut === 1 ? 'one row' : `${leftOut} rows`} left out`
  return {
    taken: written.length,
    leftOut,
    firstLotId: first?.lotId ?? 0,
    firstNumber: first?.number ?? '',
    lastNumber: last?.number ?? '',
    said: `Took in ${gifts} from ${input.fileName}${without}`,
    undoable: true,
  }
}

type Planned = PlannedList | { readonly because: string }

/** The list of each collection that was looked at last: it is mostly taken in next, as it was looked at. */
const lastPlanned = new WeakMap<Sqlite, { readonly of: string; readonly planned: Planned }>()

function plannedList(reading: Reading, { content, choices, answers }: ListInput): Planned {
  const of = JSON.stringify([lastEntry(reading), reading.today, choices, answers, content])
  const last = lastPlanned.get(reading.sqlite)
  if (last?.of === of) return last.planned
  const planned = planNow(reading, { content, choices, answers })
  lastPlanned.set(reading.sqlite, { of, planned })
  return planned
}

/** The latest entry of the book, the one that is being written left out. */
function lastEntry(reading: Reading | Writing): number {
  const own = 'entryId' in reading ? reading.entryId : 0
  return prepared(reading.sqlite, 'SELECT max(id) FROM entry WHERE id <> ?').pluck().get(own) as number
}

function planNow(reading: Reading, input: Pick<ListInput, 'content' | 'choices' | 'answers'>): Planned {
  const bytes = Buffer.from(input.content, 'base64')
  const { sheet, encoding, delimiter, headingRow, columns } = input.choices
  const table = readTableFile(bytes, { sheet, encoding, delimiter })
  if (table.kind === 'unreadable') return table
  const book = listBook(reading)
  const guessed = guessLayout(table.rows, book.cropNames.words, headingRow, table.hiddenColumns)
  const kept = columns ?? rememberedColumns(reading.sqlite, headingsKey(guessed))
  const fits = kept !== null && kept.length === guessed.columns.length && kept.every(isColumnUse)
  if (columns !== undefined && !fits)
    refuse('list-unreadable', 'That does not say what each column of this list holds.', {
      field: 'choices.columns',
    })
  const layout = fits ? { ...guessed, columns: kept } : guessed
  const plan = planList(table.rows, layout, book, input.answers, reading.today)
  if (plan.fates.length === 0) return { because: 'No row of this file says anything. Is it the right sheet?' }
  return { table, layout, remembered: columns === undefined && fits, plan }
}

/** By what a list is known again: its headings, and where it has none, how many columns it has. */
function headingsKey({ headings, headingRow, columns }: ListLayout): string {
  return headingRow < 0 ? `${columns.length} columns` : headings.map(fold).join('\n')
}

function rememberColumns(writing: Writing, layout: ListLayout): void {
  const columns = JSON.stringify(layout.columns)
  const { entryId } = writing
  writing.db
    .insert(listColumns)
    .values({ headings: headingsKey(layout), columns, entryId })
    .onConflictDoUpdate({ target: listColumns.headings, set: { columns, entryId } })
    .run()
}

function digestOf({ content }: ListInput): string {
  return createHash('sha256').update(Buffer.from(content, 'base64')).digest('hex')
}

const FATES: readonly Fate[] = ['doubtful', 'refused', 'there', 'left-out', 'new']

function countsOf({ fates }: ListPlan): Record<Fate, number> {
  const counts = { new: 0, there: 0, doubtful: 0, refused: 0, 'left-out': 0 }
  for (const { fate } of fates) counts[fate] += 1
  return counts
}

function rowsInWords(count: number): string {
  return count === 1 ? 'One row is' : `${count} rows are`
}

function samplesOf({ rows }: Table, { headingRow }: ListLayout, index: number): string[] {
  const cells = rows
    .slice(headingRow + 1, headingRow + 200)
    .map((row) => (row[index] ?? '').trim().slice(0, 60))
  return [...new Set(cells.filter((cell) => cell !== ''))].slice(0, SAMPLED)
}

function fieldsFor({ passport }: ListLayout): { use: string; words: string }[] {
  const fields = LIST_FIELDS.map((use) => ({ use, words: FIELD_NAMES[use] }))
  const codes = passport
    ? DESCRIPTORS.map(({ code, name }) => ({ use: code, words: `${code}: ${name}` }))
    : []
  return [...fields, { use: 'leave-out', words: 'leave it out' }, ...codes]
}

function understoodInWords(reading: Reading, input: ListInput, planned: PlannedList): string[] {
  const { table, layout, remembered } = planned
  const { encoding, delimiter, sheet, sheets } = table
  const before = batchOfList(reading.sqlite, digestOf(input))
  const signs = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'bars' } as const
  return [
    ...(before === null ? [] : [`This very list is in the book already, as ‘${before}’.`]),
    ...(sheet === null ? [] : [`Sheet ‘${sheet}’${sheets.length > 1 ? `, one of ${sheets.length}` : ''}.`]),
    ...(encoding === null || delimiter === null
      ? []
      : [
          `A text in ${encoding}${table.encodingGuessed ? ', guessed: look whether the accents are right' : ''}, cells parted by ${signs[delimiter]}.`,
        ]),
    ...(table.quotesAsTheyStand
      ? ['A quotation mark is opened and never closed, so they are read as they stand.']
      : []),
    layout.headingRow < 0
      ? 'No headings are known in it: say what each column holds.'
      : `Headings in row ${layout.headingRow + 1}.`,
    ...(layout.passport
      ? [
          'The headings are those of the Multi-Crop Passport Descriptors; what has no place here is kept and goes out again.',
        ]
      : []),
    ...leftOutContact(layout),
    ...hiddenInWords(table, layout),
    ...(remembered ? ['The columns are as you said for such a list before.'] : []),
  ]
}

function leftOutContact({ headings, columns }: ListLayout): string[] {
  const reached = headings.filter(
    (heading, index) => columns[index] === 'leave-out' && isContactHeading(heading),
  )
  return reached.length === 0
    ? []
    : [`How people are reached is left out: ${reached.join(', ')}. Notes and stories go to others.`]
}

function hiddenInWords({ hiddenColumns, hiddenSheets }: Table, { headings, columns }: ListLayout): string[] {
  const hidden = headings.filter((_, index) => hiddenColumns.has(index) && columns[index] === 'leave-out')
  return [
    ...(hidden.length === 0
      ? []
      : [
          `Hidden in the workbook and left out: ${hidden.map((heading) => heading || 'a column').join(', ')}.`,
        ]),
    ...(hiddenSheets === 0
      ? []
      : [`${hiddenSheets === 1 ? '1 hidden sheet is' : `${hiddenSheets} hidden sheets are`} not read.`]),
  ]
}
