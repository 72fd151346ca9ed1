import type { LotStorage } from '../../contract/care-operations.ts'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { storagePestCaution } from '../../domain/cautions/storage-pests.ts'
import { celsiusInWords, humidityInWords } from '../../domain/climate/climate-words.ts'
import { breakInWords, freezingCautions, moistureInWords } from '../../domain/moisture/moisture-words.ts'
import { inspectionName } from '../../domain/rounds/inspection.ts'
import {
  type ContainerRow,
  climateOfLot,
  containerOfLot,
  type MoistureRow,
  moistureOfLot,
  moisturesOfLot,
  type StayClimate,
} from '../../queries/lot-climate.ts'
import { familyOfLot, freezes } from '../../queries/place-readings.ts'
import { findingsOfLot } from '../../queries/round-rows.ts'
import { lotContainer } from '../../schema/climate-tables.ts'
import type { Reading, Writes } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { placeOrRefuse } from '../book/places.ts'

interface StoredLot {
  readonly family: string
  /** The highest moisture that its last measurement leaves possible, percent of fresh weight; null: not measured. */
  readonly highPercent: number | null
  readonly freezes: boolean
}

/** Why a lot should not lie as it is where it does. */
export function storageCautions(reading: Reading, lotId: number, lot: StoredLot): string[] {
  if (lot.freezes) return freezingCautions(lot.highPercent)
  const container = containerOfLot(reading.sqlite, lotId)
  const pests = container === null ? '' : storagePestCaution(lot.family, container.pestProof === 1)
  return pests === '' ? [] : [pests]
}

export function getLotStorage(reading: Reading, input: ParsedInput<'lot.get-storage'>): LotStorage {
  const row = lotOrRefuse(reading, input.lotId, 'lotId')
  const container = containerOfLot(reading.sqlite, row.lotId)
  const stays = climateOfLot(reading.sqlite, row.lotId, 'month')
  const here = stays.at(-1)
  return {
    lotId: row.lotId,
    container: container === null ? null : shownContainer(container),
    moistures: moisturesOfLot(reading.sqlite, row.lotId).map(shownMoisture),
    cautions: storageCautions(reading, row.lotId, {
      family: familyOfLot(reading.sqlite, row.lotId),
      highPercent: moistureOfLot(reading.sqlite, row.lotId)?.highPercent ?? null,
      freezes: here !== undefined && freezes(reading.sqlite, here.placeId),
    }),
    stays: stays.map(({ readingsFrom: _, climate, ...stay }) => ({ ...stay, words: stayInWords(climate) })),
    findings: findingsOfLot(reading.sqlite, row.lotId).map(({ on, path, look, note }) => ({
      on,
      place: path,
      words: `${inspectionName(look)}: ${note}`,
    })),
  }
}

function shownContainer(row: ContainerRow): NonNullable<LotStorage['container']> {
  const [airtight, pestProof] = [row.airtight === 1, row.pestProof === 1]
  return {
    kind: row.kind,
    airtight,
    pestProof,
    since: row.since,
    note: row.note,
    words: containerInWords(row.kind, airtight, pestProof),
  }
}

function containerInWords(kind: ContainerRow['kind'], airtight: boolean, pestProof: boolean): string {
  const name = kind === 'other' ? 'another container' : kind
  return `${name}, ${airtight ? 'airtight' : 'not airtight'}, ${pestProof ? 'proof against insects and rodents' : 'not proof against insects and rodents'}`
}

const METHOD_WORDS = {
  oven: 'oven',
  'sealed-jar': 'air in a closed jar',
  'break-check': 'in the hand',
  meter: 'meter',
} as const

function shownMoisture(row: MoistureRow): LotStorage['moistures'][number] {
  const found = { percent: row.percent, low: row.lowPercent, high: row.highPercent }
  const observed = JSON.parse(row.observed)
  const how =
    row.method === 'break-check'
      ? `${breakInWords(observed.gives)} ${METHOD_WORDS[row.method]}`
      : METHOD_WORDS[row.method]
  return {
    ...found,
    on: row.measuredOn,
    method: row.method,
    note: row.note,
    words: `${moistureInWords(found)} (${how})`,
  }
}

function stayInWords(climate: StayClimate['climate']): string {
  const readings = climate.reduce((sum, month) => sum + month.readings, 0)
  if (readings === 0) return ''
  const mean = climate.reduce((sum, { meanCc, readings: count }) => sum + meanCc * count, 0) / readings
  const highest = Math.max(...climate.map(({ highCc }) => highCc))
  const humid = climate.flatMap(({ meanPm }) => (meanPm === null ? [] : [meanPm]))
  const damp =
    humid.length === 0 ? '' : `, ${humidityInWords(humid.reduce((a, b) => a + b, 0) / humid.length)} humidity`
  return `${celsiusInWords(mean)}${damp} on average, ${celsiusInWords(highest)} at most`
}

export const noteContainer: Writes<'lot.change-container'> = (writing, input) => {
  const { kind, airtight, pestProof, since, note } = input
  const rows = [...new Set(input.lotIds)].map((id, index) => lotOrRefuse(writing, id, `lotIds.${index}`))
  for (const { lotId } of rows) {
    writing.db
      .insert(lotContainer)
      .values({ lotId, kind, airtight, pestProof, since, note, entryId: writing.entryId })
      .run()
  }
  const what = rows.length === 1 ? rows[0]?.lotNumber : `${rows.length} lots`
  return { said: `${what}: ${containerInWords(kind, airtight, pestProof)}`, undoable: true }
}

export function previewMove(
  reading: Reading,
  input: Pick<ParsedInput<'lot.preview-move'>, 'lotIds' | 'placeId'>,
): Pick<Result<'lot.preview-move'>, 'cautions'> {
  const place = placeOrRefuse(reading, input.placeId, 'placeId')
  if (!freezes(reading.sqlite, place.id)) return { cautions: [] }
  return {
    cautions: [...new Set(input.lotIds)].flatMap((id, index) => {
      const { lotId, lotNumber } = lotOrRefuse(reading, id, `lotIds.${index}`)
      const highest = moistureOfLot(reading.sqlite, lotId)?.highPercent ?? null
      return freezingCautions(highest).map((sentence) => ({ lotId, lotNumber, sentence }))
    }),
  }
}
