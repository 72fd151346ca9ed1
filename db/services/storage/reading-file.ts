import { createHash } from 'node:crypto'
import type { ParsedInput } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { ReadFile } from '../../contract/storage-operations.ts'
import { celsiusInWords, humidityInWords } from '../../domain/climate/climate-words.ts'
import type { ClimateReading } from '../../domain/climate/reading.ts'
import { addDays } from '../../domain/dates/day-arithmetic.ts'
import {
  type LoggerColumns,
  type LoggerFile,
  type RefusedRow,
  readLoggerFile,
} from '../../exchange/logger-file.ts'
import { batchOfFile, minutesRead, writeReadings } from '../../queries/place-readings.ts'
import { climateBatch } from '../../schema/climate-tables.ts'
import type { Reading, Writes } from '../book/context.ts'
import { placeOrRefuse } from '../book/places.ts'

type FileInput = ParsedInput<'reading.preview-file'>

const MOST_REFUSED_SHOWN = 100
const SAMPLED = 5

interface Sorted {
  readonly columns: LoggerColumns
  readonly fresh: readonly ClimateReading[]
  readonly already: number
  readonly refused: readonly RefusedRow[]
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
    sample: fresh.slice(0, SAMPLED).map((one) => ({ at: one.at, words: readingInWords(one) })),
  }
}

export const importFile: Writes<'reading.import-file'> = (writing, input) => {
  const place = placeOrRefuse(writing, input.placeId, 'placeId')
  const digest = createHash('sha256').update(input.text).digest('hex')
  const before = batchOfFile(writing.sqlite, digest)
  if (before !== undefined)
    refuse(
      'already-there',
      `The readings of this file are in the book already, as ‘${before.fileName}’ of ${before.place}.`,
      {
        field: 'text',
        todo: 'Take that back first if it belongs to another place.',
      },
    )
  const file = readLoggerFile(input.text, input.choices)
  if (file.kind !== 'read') return refuse('file-unreadable', file.because, { field: 'text' })
  const { fresh, already, refused } = sorted(writing, place.id, file)
  if (fresh.length === 0)
    refuse('nothing-new', 'No reading of this file is new. Nothing was written.', { field: 'text' })
  if (refused.length > 0 && !input.leaveOut) {
    const rows = refused.length === 1 ? 'One row' : `${refused.length} rows`
    refuse('rows-refused', `${rows} cannot be read. Nothing was written.`, {
      field: 'leaveOut',
      todo: 'Look at them, then say that they may be left out.',
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
  const without = leftOut === 0 ? '' : `, ${leftOut === 1 ? 'one row' : `${leftOut} rows`} left out`
  return {
    readings: fresh.length,
    leftOut,
    said: `Took in ${fresh.length} ${fresh.length === 1 ? 'reading' : 'readings'} of ${place.path} from ${input.fileName}${without}`,
    undoable: true,
  }
}

/** Readings in order of time, without those that are in the book or have not come yet. */
function sorted(reading: Reading, placeId: number, file: Extract<LoggerFile, { kind: 'read' }>): Sorted {
  const readings = file.readings.toSorted((a, b) => (a.at < b.at ? -1 : 1))
  const tomorrow = addDays(reading.today, 1)
  const come = readings.filter(({ at }) => at < tomorrow)
  const late: RefusedRow[] =
    come.length === readings.length
      ? []
      : readings.slice(come.length).map(({ at }) => ({
          row: 0,
          text: at.replace('T', ' '),
          because: 'it has not come yet: was the logger’s clock right, and day and month in this sequence?',
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

function columnName(headings: readonly string[], column: number): string {
  const heading = headings[column] ?? ''
  return heading === '' ? `column ${column + 1}` : `‘${heading}’`
}

function toChoose({ headings, numeric }: Pick<LoggerColumns, 'headings' | 'numeric'>) {
  return numeric.map((column) => ({ column, name: columnName(headings, column) }))
}

function understoodInWords(columns: LoggerColumns): string[] {
  const { headings, linesAbove, moment, time, temperature, humidity, unit, unitFrom, order } = columns
  const named = (column: number) => columnName(headings, column)
  const guessed = unitFrom === 'guess' ? ', guessed from the numbers: change it if that is wrong' : ''
  const when = time === null ? named(moment) : `${named(moment)} and ${named(time)}`
  return [
    `When: ${when}, ${order === 'day-first' ? 'day before month where both are numbers' : 'month before day'}.`,
    `Temperature: ${named(temperature)}, in °${unit}${guessed}.`,
    humidity === null ? 'Humidity: none.' : `Humidity: ${named(humidity)}, in %.`,
    ...(linesAbove > 1 ? [`The first ${linesAbove} lines are taken for a heading.`] : []),
  ]
}

function readingInWords({ temperatureCc, humidityPm }: ClimateReading): string {
  const damp = humidityPm === null ? '' : `, ${humidityInWords(humidityPm)} humidity`
  return `${celsiusInWords(temperatureCc)}${damp}`
}
