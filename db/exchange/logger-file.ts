import papaparse from 'papaparse'
import { type ClimateReading, fromFahrenheit } from '../domain/climate/reading.ts'
import { isMessage, type Message, message } from '../messages/message.ts'
import {
  type DayMonthOrder,
  dayOfMoment,
  orderOf,
  readMoment,
  readTime,
  type WrittenMoment,
} from './logger-dates.ts'

/** What the keeper says of a file where it does not tell by itself, or tells wrongly. */
export interface LoggerChoices {
  readonly unit?: 'C' | 'F' | undefined
  readonly order?: DayMonthOrder | undefined
  /** Columns counted from 0. */
  readonly temperature?: number | undefined
  /** Null: leave humidity out. */
  readonly humidity?: number | null | undefined
}

export interface RefusedRow {
  /** As a spreadsheet numbers it: the first line is 1. */
  readonly row: number
  readonly text: string
  readonly because: Message
}

/** How a file is understood. Columns counted from 0. */
export interface LoggerColumns {
  readonly headings: readonly string[]
  /** The columns that hold numbers. */
  readonly numeric: readonly number[]
  readonly linesAbove: number
  readonly moment: number
  /** Where the time stands apart from the day. */
  readonly time: number | null
  readonly temperature: number
  readonly humidity: number | null
  readonly unit: 'C' | 'F'
  readonly unitFrom: 'choice' | 'file' | 'guess'
  readonly order: DayMonthOrder
  readonly delimiter: string
}

export type LoggerFile =
  | {
      readonly kind: 'read'
      readonly columns: LoggerColumns
      readonly readings: readonly ClimateReading[]
      readonly refused: readonly RefusedRow[]
    }
  /** Something that only the keeper knows. */
  | {
      readonly kind: 'ask'
      readonly about: 'order' | 'unit' | 'columns'
      readonly because: Message
      readonly headings: readonly string[]
      readonly numeric: readonly number[]
    }
  | { readonly kind: 'unreadable'; readonly because: Message }

const SAMPLED = 200
const NUMBER = /^([-−+]?\d+(?:[.,]\d+)?)\s*(?:°\s*)?(C|F|%|%\s*RH|%\s*rF)?$/i

/**
 * Reads what a data logger wrote: a column of moments or two of day and time, one of temperatures, one of humidity or none.
 *
 * Delimiter, decimal mark, date form, unit and columns are found by looking; a row that cannot be read is refused with why.
 */
export function readLoggerFile(text: string, choices: LoggerChoices = {}): LoggerFile {
  const plain = text.replace(/^\uFEFF/, '')
  const delimiter = delimiterOf(plain)
  const rows = papaparse.parse<string[]>(plain, { delimiter, skipEmptyLines: false }).data
  const seen = findColumns(rows, choices)
  if (seen === null) return { kind: 'unreadable', because: message('logger.no-columns') }
  const { headings, numeric, temperature } = seen
  if (temperature === undefined)
    return {
      kind: 'ask',
      about: 'columns',
      because: message('logger.which-temperature'),
      headings,
      numeric,
    }
  const found = { ...seen, temperature }
  const written = rows.map((row) => writtenAt(row, found))
  const order = choices.order ?? orderOf(written.filter((moment) => moment !== null))
  if (order === null)
    return {
      kind: 'ask',
      about: 'order',
      headings,
      numeric,
      because: message('logger.which-first'),
    }
  const unit = unitOf(rows, found, choices)
  if (unit === null)
    return {
      kind: 'ask',
      about: 'unit',
      headings,
      numeric,
      because: message('logger.which-unit'),
    }
  const columns = { ...found, ...unit, order, delimiter }
  return { kind: 'read', columns, ...readRows(rows, written, columns) }
}

/** A sign that stands in nearly every line. A comma comes last: it may be a decimal mark. */
function delimiterOf(text: string): string {
  const lines = text.split(/\r?\n/, SAMPLED).filter((line) => line.trim() !== '')
  const later = lines.slice(Math.floor(lines.length / 2))
  return ['\t', ';', '|'].find((sign) => later.every((line) => line.includes(sign))) ?? ','
}

type Found = Pick<
  LoggerColumns,
  'headings' | 'numeric' | 'linesAbove' | 'moment' | 'time' | 'temperature' | 'humidity'
>
/** As found, where perhaps no column can be told to hold temperatures. */
type Seen = Omit<Found, 'temperature'> & { readonly temperature: number | undefined }

function findColumns(rows: readonly string[][], choices: LoggerChoices): Seen | null {
  const linesAbove = rows.findIndex((row) => row.some(isMoment) && row.some(isNumber))
  if (linesAbove < 0) return null
  const sample = rows.slice(linesAbove, linesAbove + SAMPLED).filter((row) => row.length > 1)
  const width = Math.max(...sample.map((row) => row.length))
  const all = Array.from({ length: width }, (_, index) => index)
  const share = (index: number, fits: (cell: string) => boolean) =>
    sample.filter((row) => fits(row[index] ?? '')).length / sample.length
  const moment = all.find((index) => share(index, isMoment) > 0.5)
  if (moment === undefined) return null
  const apart = sample.every((row) => (readMoment(cell(row, moment))?.time ?? null) === null)
  const time = apart ? (all.find((index) => share(index, isTime) > 0.5) ?? null) : null
  if (apart && time === null) return null
  const headings = (rows[linesAbove - 1] ?? []).map((heading) => heading.trim())
  const numeric = all.filter((index) => index !== moment && index !== time && share(index, isNumber) > 0.5)
  const temperature = choices.temperature ?? temperatureAmong(numeric, headings, sample)
  if (numeric.length === 0) return null
  const humidity =
    choices.humidity === undefined ? humidityAmong(numeric, headings, temperature) : choices.humidity
  return { headings, numeric, linesAbove, moment, time, temperature, humidity }
}

const TEMPERATURE = /temp|°|celsius|fahrenheit|\b[cf]\b/i
const HUMIDITY = /hum|rh\b|r\.h|%|feucht|hr\b/i
const OTHER = /dew|taupunkt|ros[ée]e|batt|volt|light|lux|press|#|^no\.?$|index|record/i

function temperatureAmong(
  numeric: readonly number[],
  headings: readonly string[],
  sample: readonly string[][],
): number | undefined {
  const named = numeric.find(
    (index) => TEMPERATURE.test(headings[index] ?? '') && !OTHER.test(headings[index] ?? ''),
  )
  return named ?? numeric.find((index) => !OTHER.test(headings[index] ?? '') && !countsUp(sample, index))
}

function humidityAmong(
  numeric: readonly number[],
  headings: readonly string[],
  temperature: number | undefined,
): number | null {
  const others = numeric.filter((index) => index !== temperature && !OTHER.test(headings[index] ?? ''))
  const named = others.find((index) => HUMIDITY.test(headings[index] ?? ''))
  // Without headings the number after the temperature is humidity by custom.
  const unnamed = headings.every((heading) => heading === '')
    ? others.find((index) => temperature !== undefined && index > temperature)
    : undefined
  return named ?? unnamed ?? null
}

/** Whether a column only numbers the rows. */
function countsUp(sample: readonly string[][], index: number): boolean {
  if (sample.length < 3) return false
  const numbers = sample.map((row) => numberIn(cell(row, index)))
  return numbers.slice(1).every((number, at) => number !== null && number - (numbers[at] ?? Number.NaN) === 1)
}

function unitOf(
  rows: readonly string[][],
  { headings, linesAbove, temperature }: Found,
  choices: LoggerChoices,
): Pick<LoggerColumns, 'unit' | 'unitFrom'> | null {
  if (choices.unit !== undefined) return { unit: choices.unit, unitFrom: 'choice' }
  const heading = headings[temperature] ?? ''
  if (/°\s*F|fahrenheit|\bF\b/i.test(heading)) return { unit: 'F', unitFrom: 'file' }
  if (/°\s*C|celsius|\bC\b/i.test(heading)) return { unit: 'C', unitFrom: 'file' }
  const sample = rows.slice(linesAbove, linesAbove + SAMPLED)
  const sign = NUMBER.exec(cell(sample[0] ?? [], temperature))?.[2]?.toUpperCase()
  if (sign === 'C' || sign === 'F') return { unit: sign, unitFrom: 'file' }
  const numbers = sample.flatMap((row) => numberIn(cell(row, temperature)) ?? []).toSorted((a, b) => a - b)
  const middle = numbers[Math.floor(numbers.length / 2)] ?? 0
  // A store is seldom between 30 and 45 in either unit; above, only F makes sense, and below, C.
  if (middle > 45) return { unit: 'F', unitFrom: 'guess' }
  return middle < 30 ? { unit: 'C', unitFrom: 'guess' } : null
}

function readRows(
  rows: readonly string[][],
  written: readonly (WrittenMoment | null)[],
  columns: LoggerColumns,
): { readings: ClimateReading[]; refused: RefusedRow[] } {
  const readings: ClimateReading[] = []
  const refused: RefusedRow[] = []
  const rowOf = new Map<string, number>()
  for (let index = columns.linesAbove; index < rows.length; index += 1) {
    const row = rows[index] as string[]
    if (row.every((text) => text.trim() === '')) continue
    const reading = readRow(row, written[index] ?? null, columns)
    const earlier = isMessage(reading) ? undefined : rowOf.get(reading.at)
    if (isMessage(reading) || earlier !== undefined) {
      const because = isMessage(reading) ? reading : message('logger.same-minute', { row: earlier ?? 0 })
      refused.push({ row: index + 1, text: row.join(columns.delimiter), because })
      continue
    }
    rowOf.set(reading.at, index + 1)
    readings.push(reading)
  }
  return { readings, refused }
}

function readRow(
  row: readonly string[],
  moment: WrittenMoment | null,
  columns: LoggerColumns,
): ClimateReading | Message {
  const day = moment === null ? null : dayOfMoment(moment, columns.order)
  if (moment === null || day === null || moment.time === null)
    return message('logger.no-moment', { cell: cell(row, columns.moment) })
  const temperature = numberIn(cell(row, columns.temperature))
  if (temperature === null) return message('logger.no-temperature', { cell: cell(row, columns.temperature) })
  const temperatureCc = columns.unit === 'F' ? fromFahrenheit(temperature) : Math.round(100 * temperature)
  if (Math.abs(temperatureCc) > 10_000)
    return message('logger.impossible-temperature', { degrees: temperature, unit: columns.unit })
  const humid = columns.humidity === null ? '' : cell(row, columns.humidity)
  const humidity = humid === '' ? null : numberIn(humid)
  if (humid !== '' && humidity === null) return message('logger.no-humidity', { cell: humid })
  if (humidity !== null && (humidity < 0 || humidity > 100))
    return message('logger.impossible-humidity', { humidity })
  return {
    at: `${day}T${moment.time}`,
    temperatureCc,
    humidityPm: humidity === null ? null : Math.round(10 * humidity),
  }
}

function writtenAt(row: readonly string[], { moment, time }: Found): WrittenMoment | null {
  const found = readMoment(cell(row, moment))
  return found === null || time === null ? found : { ...found, time: readTime(cell(row, time)) }
}

function cell(row: readonly string[], index: number): string {
  return (row[index] ?? '').trim()
}

function isMoment(text: string): boolean {
  return readMoment(text.trim()) !== null
}

function isTime(text: string): boolean {
  return readTime(text.trim()) !== null
}

function isNumber(text: string): boolean {
  return numberIn(text.trim()) !== null
}

function numberIn(text: string): number | null {
  const found = NUMBER.exec(text)
  return found === null ? null : Number((found[1] ?? '').replace(',', '.').replace('−', '-'))
}
