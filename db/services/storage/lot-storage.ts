import type { ParsedInput, Result } from '../../contract/contract.ts'
import { storagePestCaution } from '../../domain/cautions/storage-pests.ts'
import { airInWords, warmth } from '../../domain/climate/climate-words.ts'
import type { CountedUnitName } from '../../domain/crops/counted-unit.ts'
import { isPiece } from '../../domain/crops/pieces.ts'
import type { BreakClass } from '../../domain/moisture/break-check.ts'
import { freezingCaution, moistureInWords } from '../../domain/moisture/moisture-words.ts'
import { type Message, message } from '../../messages/message.ts'
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
import { noteOf } from './round-notes.ts'

type LotStorage = Result<'lot.get-storage'>

interface StoredLot {
  readonly family: string
  readonly countedUnit: CountedUnitName
  /** The highest moisture that its last measurement leaves possible, percent of fresh weight; null: not measured. */
  readonly highPercent: number | null
  readonly freezes: boolean
}

/** Why a lot should not lie as it is where it does; '' where it may. */
export function storageCaution(reading: Reading, lotId: number, lot: StoredLot): Message | string {
  if (lot.freezes) return frozen(lot.countedUnit, lot.highPercent) ?? ''
  const container = containerOfLot(reading.sqlite, lotId)
  return container === null ? '' : (storagePestCaution(lot.family, container.pestProof === 1) ?? '')
}

/** Why a lot should not freeze; null where it may. Common practice, no source: frost kills cloves, bulbs and tubers. */
function frozen(unit: CountedUnitName, highPercent: number | null): Message | null {
  return isPiece(unit) ? message('pieces.freezing', { unit }) : freezingCaution(highPercent)
}

export function getLotStorage(reading: Reading, input: ParsedInput<'lot.get-storage'>): LotStorage {
  const row = lotOrRefuse(reading, input.lotId, 'lotId')
  const container = containerOfLot(reading.sqlite, row.lotId)
  const stays = climateOfLot(reading.sqlite, row.lotId, 'month')
  const here = stays.at(-1)
  const caution = storageCaution(reading, row.lotId, {
    family: familyOfLot(reading.sqlite, row.lotId),
    countedUnit: row.countedUnit,
    highPercent: moistureOfLot(reading.sqlite, row.lotId)?.highPercent ?? null,
    freezes: here !== undefined && freezes(reading.sqlite, here.placeId),
  })
  return {
    lotId: row.lotId,
    container: container === null ? null : shownContainer(container),
    moistures: moisturesOfLot(reading.sqlite, row.lotId).map(shownMoisture),
    cautions: caution === '' ? [] : [caution],
    stays: stays.map(({ readingsFrom: _, climate, ...stay }) => ({ ...stay, words: stayInWords(climate) })),
    findings: findingsOfLot(reading.sqlite, row.lotId).map((finding) => ({
      on: finding.on,
      place: finding.path,
      words: message('storage.finding', { look: finding.look, note: noteOf(finding) }),
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

function containerInWords(kind: ContainerRow['kind'], airtight: boolean, pestProof: boolean): Message {
  return message('storage.container', {
    kind,
    airtight: airtight ? 'yes' : 'no',
    pestProof: pestProof ? 'yes' : 'no',
  })
}

function shownMoisture(row: MoistureRow): LotStorage['moistures'][number] {
  const found = { percent: row.percent, low: row.lowPercent, high: row.highPercent }
  const moisture = moistureInWords(found)
  return {
    ...found,
    on: row.measuredOn,
    method: row.method,
    note: row.note,
    words:
      row.method === 'break-check'
        ? message('storage.moisture-by-break-check', { moisture, gives: givesInWords(row.observed) })
        : message(`storage.moisture-by-${row.method}`, { moisture }),
  }
}

function givesInWords(observed: string): Message {
  const { gives } = JSON.parse(observed) as { readonly gives: BreakClass }
  return message(`storage.gives-${gives}`)
}

function stayInWords(climate: StayClimate['climate']): Message | '' {
  const readings = climate.reduce((sum, month) => sum + month.readings, 0)
  if (readings === 0) return ''
  const mean = climate.reduce((sum, { meanCc, readings: count }) => sum + meanCc * count, 0) / readings
  const highest = Math.max(...climate.map(({ highCc }) => highCc))
  const humid = climate.flatMap(({ meanPm }) => (meanPm === null ? [] : [meanPm]))
  const humidityPm = humid.length === 0 ? null : humid.reduce((a, b) => a + b, 0) / humid.length
  return message('storage.stay', {
    air: airInWords({ temperatureCc: mean, humidityPm }),
    highest: warmth(highest),
  })
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
  const said = message('storage.container-said', {
    lots: rows.length,
    lot: rows[0]?.lotNumber ?? '',
    container: containerInWords(kind, airtight, pestProof),
  })
  return { said, undoable: true }
}

export function previewMove(
  reading: Reading,
  input: Pick<ParsedInput<'lot.preview-move'>, 'lotIds' | 'placeId'>,
): Pick<Result<'lot.preview-move'>, 'cautions'> {
  const place = placeOrRefuse(reading, input.placeId, 'placeId')
  if (!freezes(reading.sqlite, place.id)) return { cautions: [] }
  return {
    cautions: [...new Set(input.lotIds)].flatMap((id, index) => {
      const { lotId, lotNumber, countedUnit } = lotOrRefuse(reading, id, `lotIds.${index}`)
      const highest = moistureOfLot(reading.sqlite, lotId)?.highPercent ?? null
      const sentence = frozen(countedUnit, highest)
      return sentence === null ? [] : [{ lotId, lotNumber, sentence }]
    }),
  }
}
