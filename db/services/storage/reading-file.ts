import { createHash } from 'node:crypto'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { airInWords } from '../../domain/climate/climate-words.ts'
import type { ClimateReading } from '../../domain/climate/reading.ts'
import { addDays } from '../../domain/dates/day-arithmetic.ts'
import { type LoggerColumns, type LoggerFile, readLoggerFile } from '../../exchange/logger-file.ts'
import { type Message, message } from '../../messages/message.ts'
import { batchOfFile, minutesRead, writeReadings } from '../../queries/place-readings.ts'
import { climateBatch } from '../../schema/climate-tables.ts'
import type { Reading, Writes } from '../book/context.ts'
import { placeOrRefuse } from '../book/places.ts'

type FileInput = ParsedInput<'reading.preview-file'>
type ReadFile = Result<'reading.preview-file'>
type Refused = Extract<ReadFile, { kind: 'read' }>['refused'][number]

const MOST_REFUSED_SHOWN = 100
const SAMPLED = 5

interface Sorted {
  readonly columns: LoggerColumns
  readonly fresh: readonly ClimateReading[]
  readonly already: number
  readonly refused: readonly Refused[]
}

export function previewFile(reading: Reading, input: FileInput): ReadFile {
  placeOrRefuse(reading, input.placeId, 'placeId')
  const file = readLoggerFile(input.text, input.choices)
  if (file.kind === 'unreadable') return file
  if (file.kind === 'ask')
    return { kind: 'ask', about: file.about, because: file.because, columns: toChoose(file) }
  const { columns, fresh, already, refused } = sorted(reading, input.placeId, file)
  return {
    kind: 'read',
    understood: understoodInWords(columns),
    columns: toChoose(columns),
    temperature: columns.temperature,
    humidity: columns.humidity,
    unit: columns.unit,
    order: columns.order,
    readings: fresh.length,
    from: fresh[0]?.at ?? null,
    until: fresh.at(-1)?.at ?? null,
    already,
    refused: refused.slice(0, MOST_REFUSED_SHOWN),
    refusedRows: refused.length,
    sample: fresh.slice(0, SAMPLED).map((one) => ({ at: one.at, words: airInWords(one) })),
  }
}

export const importFile: Writes<'reading.import-file'> = (writing, input) => {
  const place = placeOrRefuse(writing, input.placeId, 'placeId')
  const digest = createHash('sha256').update(input.text).digest('hex')
  const before = batchOfFile(writing.sqlite, digest)
  if (before !== undefined)
    refuse(
      'already-there',
      message('storage.file-there', { file: before.fileName ?? '', place: before.place }),
      { field: 'text', todo: message('storage.file-there-todo') },
    )
  const file = readLoggerFile(input.text, input.choices)
  if (file.kind !== 'read') return refuse('file-unreadable', file.because, { field: 'text' })
  const { fresh, already, refused } = sorted(writing, place.id, file)
  if (fresh.length === 0) refuse('nothing-new', message('storage.file-nothing-new'), { field: 'text' })
  if (refused.length > 0 && !input.leaveOut) {
    refuse('rows-refused', message('storage.file-rows-refused', { rows: refused.length }), {
      field: 'leaveOut',
      todo: message('storage.file-rows-refused-todo'),
    })
  }
  const leftOut = already + refused.length
  const { id } = writing.db
    .insert(climateBatch)
    .values({
      placeId: place.id,
      fileName: input.fileName,
      digest,
      readings: fresh.length,
      leftOut,
      note: '',
      entryId: writing.entryId,
    })
    .returning({ id: climateBatch.id })
    .get()
  writeReadings(writing.sqlite, place.id, id, fresh)
  return {
    readings: fresh.length,
    leftOut,
    said: message('storage.file-said', {
      readings: fresh.length,
      place: place.path,
      file: input.fileName,
      leftOut,
    }),
    undoable: true,
  }
}

/** Readings in order of time, without those that are in the book or have not come yet. */
function sorted(reading: Reading, placeId: number, file: Extract<LoggerFile, { kind: 'read' }>): Sorted {
  const readings = file.readings.toSorted((a, b) => (a.at < b.at ? -1 : 1))
  const tomorrow = addDays(reading.today, 1)
  const come = readings.filter(({ at }) => at < tomorrow)
  const late: Refused[] =
    come.length === readings.length
      ? []
      : readings.slice(come.length).map(({ at }) => ({
          row: 0,
          text: at.replace('T', ' '),
          because: message('storage.row-not-come'),
        }))
  const there = minutesRead(reading.sqlite, placeId, come[0]?.at ?? '', come.at(-1)?.at ?? '')
  const fresh = there.size === 0 ? come : come.filter(({ at }) => !there.has(at))
  return {
    columns: file.columns,
    fresh,
    already: come.length - fresh.length,
    refused: [...file.refused, ...late],
  }
}

function columnName(headings: readonly string[], column: number): Message | string {
  const heading = headings[column] ?? ''
  return heading === '' ? message('storage.column', { number: column + 1 }) : `‘${heading}’`
}

function toChoose({ headings, numeric }: Pick<LoggerColumns, 'headings' | 'numeric'>) {
  return numeric.map((column) => ({ column, name: columnName(headings, column) }))
}

function understoodInWords(columns: LoggerColumns): Message[] {
  const { headings, linesAbove, moment, time, temperature, humidity, unit, unitFrom, order } = columns
  const named = (column: number) => columnName(headings, column)
  const first = order === 'day-first' ? 'day' : 'month'
  return [
    time === null
      ? message('storage.file-when', { column: named(moment), first })
      : message('storage.file-when-apart', { day: named(moment), time: named(time), first }),
    message('storage.file-temperature', { column: named(temperature), unit, unitFrom }),
    humidity === null
      ? message('storage.file-no-humidity')
      : message('storage.file-humidity', { column: named(humidity) }),
    ...(linesAbove > 1 ? [message('storage.file-heading', { lines: linesAbove })] : []),
  ]
}
