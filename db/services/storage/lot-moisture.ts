import type { Measured } from '../../contract/care-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import { fromFahrenheit } from '../../domain/climate/reading.ts'
import { BREAK_SPANS } from '../../domain/moisture/break-check.ts'
import { planDrying } from '../../domain/moisture/drying.ts'
import {
  ANY_OIL,
  DOUBT_POINTS,
  equilibriumMoisture,
  nearestEquilibrium,
} from '../../domain/moisture/equilibrium.ts'
import { ovenMoisture } from '../../domain/moisture/moisture-basis.ts'
import {
  DRYING_ASSUMPTIONS,
  dryingInWords,
  GEL_CAUTIONS,
  type MoistureFound,
  moistureAdvice,
  moistureInWords,
} from '../../domain/moisture/moisture-words.ts'
import { type Message, message } from '../../messages/message.ts'
import { type AgeingRow, ageingRows } from '../../queries/forecast-rows.ts'
import { seedMoisture } from '../../schema/climate-tables.ts'
import type { Reading, Reads, Writes } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { refusePieces } from '../book/pieces.ts'

const FIELDS = { fresh: 'freshGrams', dry: 'dryGrams', dish: 'dishGrams' } as const

export const readMoisture: Reads<'moisture.preview'> = (reading, input) => {
  refusePieces(lotOrRefuse(reading, input.lotId, 'lotId'), 'lotId')
  const found = moistureOf(reading, input.lotId, input.measured)
  return { ...found, words: wordsOf(input.measured, found), advice: moistureAdvice(found) }
}

export const noteMoisture: Writes<'moisture.record'> = (writing, input) => {
  const { lotNumber } = lotOrRefuse(writing, input.lotId, 'lotId')
  const moisture = readMoisture(writing, input)
  const { method, ...observed } = input.measured
  writing.db
    .insert(seedMoisture)
    .values({
      lotId: input.lotId,
      measuredOn: input.on,
      method,
      percent: moisture.percent,
      lowPercent: moisture.low,
      highPercent: moisture.high,
      observed: JSON.stringify(observed),
      note: input.note,
      entryId: writing.entryId,
    })
    .run()
  const said = message('storage.moisture-said', { lot: lotNumber, moisture: moistureInWords(moisture) })
  return { moisture, said, undoable: true }
}

function wordsOf(measured: Measured, found: MoistureFound): Message {
  const moisture = moistureInWords(found)
  return measured.method === 'break-check'
    ? message('storage.moisture-in-hand', { gives: message(`storage.gives-${measured.gives}`), moisture })
    : moisture
}

function moistureOf(reading: Reading, lotId: number, measured: Measured): MoistureFound {
  switch (measured.method) {
    case 'oven': {
      const masses = { fresh: measured.freshGrams, dry: measured.dryGrams, dish: measured.dishGrams }
      const found = ovenMoisture(masses)
      if (found.kind === 'refused')
        return refuse('moisture-unfit', found.because, { field: `measured.${FIELDS[found.field]}` })
      if (found.percent === 0)
        return refuse('moisture-unfit', message('storage.oven-same'), { field: 'measured.dryGrams' })
      return { percent: found.percent, low: found.percent, high: found.percent }
    }
    case 'sealed-jar':
      return jarMoisture(reading, lotId, measured)
    case 'break-check': {
      const { low, high } = BREAK_SPANS[measured.gives]
      return { percent: (low + high) / 2, low, high }
    }
    case 'meter':
      return doubted(measured.percent, measured.percent, measured.percent)
  }
}

function jarMoisture(
  reading: Reading,
  lotId: number,
  measured: Extract<Measured, { method: 'sealed-jar' }>,
): MoistureFound {
  const temperature =
    measured.unit === 'F' ? fromFahrenheit(measured.temperature) / 100 : measured.temperature
  const air = { humidity: measured.humidity / 100, temperature }
  const [row] = ageingRows(reading.sqlite, [lotId])
  const oil = oilOf(row)
  const found = equilibriumMoisture({ ...air, oil: (oil.low + oil.high) / 2 })
  if (found.kind === 'outside')
    return refuse('moisture-unfit', found.because, { field: `measured.${found.field}` })
  const rich = nearestEquilibrium({ ...air, oil: oil.high }).wetPercent
  const starchy = nearestEquilibrium({ ...air, oil: oil.low }).wetPercent
  return doubted(found.wetPercent, rich, starchy)
}

function oilOf(row: AgeingRow | undefined): { readonly low: number; readonly high: number } {
  if (row === undefined || row.oilLow === null || row.oilHigh === null) return ANY_OIL
  return { low: row.oilLow / 100, high: row.oilHigh / 100 }
}

function doubted(percent: number, low: number, high: number): MoistureFound {
  return {
    percent,
    low: Math.max(0, Math.min(percent, low) - DOUBT_POINTS),
    high: Math.min(100, Math.max(percent, high) + DOUBT_POINTS),
  }
}

export const planLotDrying: Reads<'moisture.plan-drying'> = (_reading, input) => {
  const plan = planDrying(input)
  const words = dryingInWords(plan, input)
  return { plan, words, assumptions: [...DRYING_ASSUMPTIONS], cautions: [...GEL_CAUTIONS] }
}
