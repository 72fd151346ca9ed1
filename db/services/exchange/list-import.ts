import { createHash } from 'node:crypto'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import type { Fate, ListPreview } from '../../contract/intake-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import { fold } from '../../domain/shared/fold.ts'
import { csvOf } from '../../exchange/csv.ts'
import { isContactHeading, LIST_FIELDS, type ListField } from '../../exchange/list-fields.ts'
import { guessLayout, type ListLayout } from '../../exchange/list-layout.ts'
import { isColumnUse, listRow } from '../../exchange/list-row.ts'
import { checkPassport, gatherFindings } from '../../exchange/mcpd-check.ts'
import { DESCRIPTORS } from '../../exchange/mcpd-table.ts'
import { readTableFile, type TableFile } from '../../exchange/table-file.ts'
import { isMessage, type Message, message } from '../../messages/message.ts'
import { textsOf } from '../../messages/texts-of.ts'
import type { Sqlite } from '../../migrations/connection.ts'
import { batchOfList, rememberedColumns } from '../../queries/list-rows.ts'
import { prepared } from '../../queries/prepared.ts'
import { listBatch, listColumns } from '../../schema/list-tables.ts'
import type { Reading, Writes, Writing } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
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
export async function previewList(reading: Reading, input: ListInput): Promise<Untold<ListPreview>> {
  const { say } = await textsOf(settingsOf(reading))
  const planned = plannedList(reading, input, say)
  if ('because' in planned) return { kind: 'unreadable', because: planned.because }
  const { table, layout, plan } = planned
  const questions = plan.questions.listed()
  return {
    kind: 'read',
    understood: howUnderstood(reading, input, planned),
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
      return row === null || isMessage(row) ? [] : [{ at: row.row, findings: checkPassport(row.passport) }]
    }),
  )
}

/** The rows that would not come in, as CSV. Refuses a file that cannot be read. */
export async function refusedRows(
  reading: Reading,
  input: ListInput,
): Promise<Result<'import.list-refused'>> {
  const { say } = await textsOf(settingsOf(reading))
  const planned = plannedList(reading, input, say)
  if ('because' in planned) return refuse('list-unreadable', planned.because, { field: 'content' })
  const { table, layout, plan } = planned
  const left = plan.fates.filter(({ fate }) => fate !== 'new')
  const csv = csvOf(
    [
      [say(message('import.row-in-list')), ({ row }: ListPlan['fates'][number]) => row],
      [say(message('import.why-not')), ({ because }) => (because === '' ? '' : say(because))],
      ...layout.columns.map(
        (use, index) =>
          [
            layout.headings[index] || say(nameOf(use, index)),
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
export const takeListIn: Writes<'import.record'> = (writing, input) => {
  const digest = digestOf(input)
  const before = batchOfList(writing.sqlite, digest)
  if (before !== null)
    refuse('already-there', message('import.there-already', { file: before }), {
      field: 'content',
      todo: message('import.there-already-todo'),
    })
  const planned = plannedList(writing, input, writing.say)
  if ('because' in planned) return refuse('list-unreadable', planned.because, { field: 'content' })
  const { plan, layout } = planned
  const counts = countsOf(plan)
  if (counts.doubtful > 0)
    refuse('rows-undecided', message('import.undecided', { rows: counts.doubtful }), {
      field: 'answers',
      todo: message('import.undecided-todo'),
    })
  if (counts.refused > 0 && !input.leaveOut)
    refuse('rows-refused', message('import.cannot-come-in', { rows: counts.refused }), {
      field: 'leaveOut',
      todo: message('import.cannot-come-in-todo'),
    })
  if (plan.gifts.length === 0) refuse('nothing-new', message('import.nothing-new'), { field: 'content' })
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
  return {
    taken: written.length,
    leftOut,
    firstLotId: first?.lotId ?? 0,
    firstNumber: first?.number ?? '',
    lastNumber: last?.number ?? '',
    said: message('import.said', { gifts: written.length, file: input.fileName, leftOut }),
    undoable: true,
  }
}

type Planned = PlannedList | { readonly because: Message }

/** The list of each collection that was looked at last: it is mostly taken in next, as it was looked at. */
const lastPlanned = new WeakMap<Sqlite, { readonly of: string; readonly planned: Planned }>()

function plannedList(
  reading: Reading,
  { content, choices, answers }: ListInput,
  say: (told: Message) => string,
): Planned {
  const of = JSON.stringify([lastEntry(reading), reading.today, choices, answers, content])
  const last = lastPlanned.get(reading.sqlite)
  if (last?.of === of) return last.planned
  const planned = planNow(reading, { content, choices, answers }, say)
  lastPlanned.set(reading.sqlite, { of, planned })
  return planned
}

/** The latest entry of the book, the one that is being written left out. */
function lastEntry(reading: Reading | Writing): number {
  const own = 'entryId' in reading ? reading.entryId : 0
  return prepared(reading.sqlite, 'SELECT max(id) FROM entry WHERE id <> ?').pluck().get(own) as number
}

function planNow(
  reading: Reading,
  input: Pick<ListInput, 'content' | 'choices' | 'answers'>,
  say: (told: Message) => string,
): Planned {
  const bytes = Buffer.from(input.content, 'base64')
  const { sheet, encoding, delimiter, headingRow, columns } = input.choices
  const table = readTableFile(bytes, { sheet, encoding, delimiter })
  if (table.kind === 'unreadable') return table
  const book = listBook(reading)
  const guessed = guessLayout(table.rows, book.cropNames.words, headingRow, table.hiddenColumns)
  const kept = columns ?? rememberedColumns(reading.sqlite, headingsKey(guessed))
  const fits = kept !== null && kept.length === guessed.columns.length && kept.every(isColumnUse)
  if (columns !== undefined && !fits)
    refuse('list-unreadable', message('import.columns-unfit'), {
      field: 'choices.columns',
    })
  const layout = fits ? { ...guessed, columns: kept } : guessed
  const plan = planList(table.rows, layout, book, input.answers, reading.today, say)
  if (plan.fates.length === 0) return { because: message('import-file.says-nothing') }
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

function samplesOf({ rows }: Table, { headingRow }: ListLayout, index: number): string[] {
  const cells = rows
    .slice(headingRow + 1, headingRow + 200)
    .map((row) => (row[index] ?? '').trim().slice(0, 60))
  return [...new Set(cells.filter((cell) => cell !== ''))].slice(0, SAMPLED)
}

function isField(use: string): use is ListField {
  return LIST_FIELDS.some((field) => field === use)
}

function nameOf(use: string, index: number): Message {
  return isField(use) ? message(`import.field.${use}`) : message('import.column', { number: index + 1 })
}

function fieldsFor({ passport }: ListLayout): { use: string; words: Message | string }[] {
  const fields = LIST_FIELDS.map((use) => ({ use, words: message(`import.field.${use}`) }))
  const codes = passport
    ? DESCRIPTORS.map(({ code, name }) => ({ use: code, words: `${code}: ${name}` }))
    : []
  return [...fields, { use: 'leave-out', words: message('import.field.leave-out') }, ...codes]
}

function howUnderstood(reading: Reading, input: ListInput, planned: PlannedList): Message[] {
  const { table, layout, remembered } = planned
  const { encoding, delimiter, sheet, sheets } = table
  const before = batchOfList(reading.sqlite, digestOf(input))
  const signs = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar' } as const
  return [
    ...(before === null ? [] : [message('import.there-already', { file: before })]),
    ...(sheet === null ? [] : [message('import.sheet', { sheet, sheets: sheets.length })]),
    ...(encoding === null || delimiter === null
      ? []
      : [
          message('import.encoding', {
            encoding,
            guessed: table.encodingGuessed ? 'yes' : 'no',
            sign: signs[delimiter],
          }),
        ]),
    ...(table.quotesAsTheyStand ? [message('import.quotes')] : []),
    layout.headingRow < 0
      ? message('import.no-headings')
      : message('import.headings-in', { row: layout.headingRow + 1 }),
    ...(layout.passport ? [message('import.passport-headings')] : []),
    ...leftOutContact(layout),
    ...whatIsHidden(table, layout),
    ...(remembered ? [message('import.remembered')] : []),
  ]
}

function leftOutContact({ headings, columns }: ListLayout): Message[] {
  const reached = headings.filter(
    (heading, index) => columns[index] === 'leave-out' && isContactHeading(heading),
  )
  return reached.length === 0 ? [] : [message('import.contact-left-out', { columns: reached.join(', ') })]
}

function whatIsHidden({ hiddenColumns, hiddenSheets }: Table, { headings, columns }: ListLayout): Message[] {
  const hidden = headings.filter((_, index) => hiddenColumns.has(index) && columns[index] === 'leave-out')
  return [
    ...(hidden.length === 0
      ? []
      : [
          message('import.hidden-left-out', {
            columns: { list: hidden.map((heading) => heading || message('import.hidden-column')) },
          }),
        ]),
    ...(hiddenSheets === 0 ? [] : [message('import.hidden-sheets', { sheets: hiddenSheets })]),
  ]
}
