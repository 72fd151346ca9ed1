import { isPiece, keptTold, keptUntil } from '../../domain/crops/pieces.ts'
import { type IsoDate, isoDate } from '../../domain/dates/iso-date.ts'
import type { Threshold } from '../../domain/viability/band.ts'
import { type PaceRemark, WORKING } from '../../domain/viability/equation.ts'
import { type Ageing, type DatedTest, type Forecast, forecastOf } from '../../domain/viability/forecast.ts'
import { type AgeingCrop, type PaceModel, paceModelOf } from '../../domain/viability/pace-model.ts'
import { extrapolatesBy, leastSold, priorOf, type ViabilityPrior } from '../../domain/viability/prior.ts'
import { regrowThreshold } from '../../domain/viability/regrow-threshold.ts'
import { type Message, message } from '../../messages/message.ts'
import {
  type AgeingRow,
  ageingRows,
  type ForecastTestRow,
  forecastTests,
  type MergedRow,
  type MoistureOnRow,
  mergedRows,
  moistureRows,
  type StayRow,
  stayRows,
} from '../../queries/forecast-rows.ts'
import type { Reading } from '../book/context.ts'
import type { CollectionPolicy } from '../book/living-stock.ts'
import type { LotMoisture, PlaceAgeing, PlacesAgeing } from '../storage/place-ageing.ts'

/** A lot as it is forecast: what was computed and what it rests on. */
export type LotForecast =
  | {
      readonly kind: 'forecast'
      readonly lotId: number
      readonly model: PaceModel
      readonly crop: AgeingCrop
      readonly moisture: LotMoisture
      readonly ageing: Ageing
      /** What is thought of it before its own tests. */
      readonly prior: ViabilityPrior
      readonly forecast: Forecast
      readonly threshold: Threshold
      readonly measured: boolean
      /** Whether it lies or lay in a place with readings, whose usual day stands for time without any. */
      readonly usualDays: boolean
      /** The years that seed of the crop is said to keep, where they were weighed in; else null. */
      readonly yearsWeighedIn: AgeingCrop['years']
      readonly harvestKnown: boolean
      readonly remarks: readonly PaceRemark[]
      /** Of a lot that others were poured into: all of them, and which is thought least alive and stands for it; else null. */
      readonly merged: Merged | null
    }
  | {
      readonly kind: 'refused'
      readonly lotId: number
      readonly because: Message
      /** Of pieces, which have no equation: the last day of their season. */
      readonly keptUntil?: IsoDate
    }

/** Lots that were poured together, by their numbers. */
export interface Merged {
  readonly numbers: readonly string[]
  readonly weakest: string
}

/** Forecasts some lots as of today. `places` may be shared by all that are computed at one moment. */
export function forecastLots(
  reading: Reading,
  lotIds: readonly number[],
  policy: CollectionPolicy,
  places: PlacesAgeing,
): LotForecast[] {
  const merged = Map.groupBy(mergedRows(reading.sqlite, lotIds), (row) => row.lotId)
  const partIds = [...merged.values()].flat().map((row) => row.partId)
  const ids = [...new Set([...lotIds, ...partIds])]
  const stays = Map.groupBy(stayRows(reading.sqlite, ids), (row) => row.lotId)
  const moistures = Map.groupBy(moistureRows(reading.sqlite, ids), (row) => row.lotId)
  const tests = Map.groupBy(forecastTests(reading.sqlite, ids), (row) => row.lotId)
  const historyOf = (id: number): LotHistory => ({
    stays: stays.get(id) ?? [],
    moistures: moistures.get(id) ?? [],
    tests: tests.get(id) ?? [],
  })
  const rows = new Map(ageingRows(reading.sqlite, ids).map((row) => [row.lotId, row]))
  const wanted = lotIds.map((id) => rows.get(id)).filter((row) => row !== undefined)
  return wanted.map((row) => {
    const own = historyOf(row.lotId)
    const whole = forecastLot(row, own, policy, places, reading.today)
    const parts = (merged.get(row.lotId) ?? []).flatMap((of) => {
      const part = rows.get(of.partId)
      if (part === undefined) return []
      const { receivedOn, harvestFrom, harvestTo, lotNumber } = part
      const asPart = { ...row, receivedOn, harvestFrom, harvestTo, lotNumber }
      const history = mergedHistory(historyOf(of.partId), own, row, of)
      return [{ lotNumber, forecast: forecastLot(asPart, history, policy, places, reading.today) }]
    })
    return parts.length === 0 ? whole : weakestOf([{ lotNumber: row.lotNumber, forecast: whole }, ...parts])
  })
}

/** A lot's history up to the day on which it was poured into another, and that one's from then on. */
function mergedHistory(part: LotHistory, whole: LotHistory, row: AgeingRow, of: MergedRow): LotHistory {
  const day = of.joinedOn
  const placeThen = whole.stays.findLast(({ since }) => since <= day)?.placeId ?? row.placeId
  const then = placeThen === null ? [] : [{ lotId: row.lotId, placeId: placeThen, since: day }]
  return {
    stays: [
      ...part.stays.filter(({ since }) => since < day),
      ...then,
      ...whole.stays.filter(({ since }) => since > day),
    ],
    moistures: [
      ...part.moistures.filter(({ measuredOn }) => measuredOn <= day),
      ...whole.moistures.filter(({ measuredOn }) => measuredOn > day),
    ],
    tests: [
      ...part.tests.filter(({ testedOn }) => testedOn <= day),
      ...whole.tests.filter(({ testedOn, entryId }) => testedOn >= day && entryId > of.entryId),
    ],
  }
}

/**
 * The forecast of lots that were poured together: of the one that is thought least alive today.
 *
 * Nobody knows of a seed which of them it came from, and a test of one says nothing of the others: the mean of them would
 * promise what part of the seed cannot keep. A test of the whole counts for each.
 */
function weakestOf(
  parts: readonly { readonly lotNumber: string; readonly forecast: LotForecast }[],
): LotForecast {
  const [first] = parts.toSorted((one, other) => aliveOf(one.forecast) - aliveOf(other.forecast))
  if (first === undefined) throw new Error('No lots were poured together')
  const numbers = parts.map(({ lotNumber }) => lotNumber)
  return first.forecast.kind === 'refused'
    ? first.forecast
    : { ...first.forecast, merged: { numbers, weakest: first.lotNumber } }
}

/** Of what nothing can be said nothing good is thought. */
function aliveOf(forecast: LotForecast): number {
  return forecast.kind === 'refused' ? -1 : forecast.forecast.today.middle
}

/** What was noted of a lot over time, each in order of time. */
interface LotHistory {
  readonly stays: readonly StayRow[]
  readonly moistures: readonly MoistureOnRow[]
  readonly tests: readonly ForecastTestRow[]
}

function forecastLot(
  row: AgeingRow,
  { stays, moistures, tests }: LotHistory,
  policy: CollectionPolicy,
  places: PlacesAgeing,
  today: IsoDate,
): LotForecast {
  if (isPiece(row.countedUnit)) {
    const until = keptUntil(startOf(row, stays, tests), row.keepsMonths)
    const because = keptTold(row.countedUnit, until, today)
    return { kind: 'refused', lotId: row.lotId, because, keptUntil: until }
  }
  const crop = cropOf(row)
  const model = paceModelOf(crop)
  if (model === null) {
    return {
      kind: 'refused',
      lotId: row.lotId,
      because: message('forecast.nothing-known'),
    }
  }
  const spans = moistureSpans(row, moistures)
  const moisture = spans.at(-1)?.moisture ?? IN_THE_AIR
  const at = (placeId: number | null, damp: LotMoisture) => places.of(placeId, crop, model, damp)
  const now = at(row.placeId, moisture)
  const parts = partsOf(startOf(row, stays, tests), stays, spans, row.placeId)
  const ageing = ageingOf(parts, now, at)
  const lain = parts
    .filter(({ noted }) => noted)
    .map(({ placeId, moisture: damp, from, until }) => ({
      place: at(placeId, damp),
      from,
      until: earlier(until, today),
    }))
  const refusals = lain.map(({ place, from, until }) => place.refused(from, until))
  const refused = [now.refusedAhead, ...refusals].find((because) => because !== null)
  if (refused !== undefined) return { kind: 'refused', lotId: row.lotId, because: refused }
  const remarks = [
    ...new Set([
      ...now.remarksAhead,
      ...lain.flatMap(({ place, from, until }) => place.remarks(from, until)),
    ]),
  ]
  const seen = [now, ...lain.map(({ place }) => place)]
  const measured = seen.every((place) => place.measured)
  const threshold = regrowThreshold(row.ownThreshold, policy)
  const logPaceByYears = seen.every((place) => place.usual) ? model.logPaceByYears : null
  const prior = priorOf({
    leastSold: crop.leastSold,
    basis: model.basis,
    keepingMeasured: measured,
    extrapolates: extrapolatesBy(remarks),
    logPaceByYears,
  })
  const dated: DatedTest[] = tests.map((test) => ({
    on: isoDate(test.testedOn),
    tested: test.tested,
    sprouted: test.sprouted,
  }))
  const forecast = forecastOf(prior, dated, ageing, threshold, today)
  return {
    kind: 'forecast',
    lotId: row.lotId,
    model,
    crop,
    moisture,
    ageing,
    prior,
    forecast,
    threshold,
    measured,
    usualDays: seen.some((place) => place.read),
    yearsWeighedIn: logPaceByYears === null ? null : crop.years,
    harvestKnown: row.harvestTo !== null,
    remarks,
    merged: null,
  }
}

function cropOf(row: AgeingRow): AgeingCrop {
  const { oilLow, oilHigh, yearsLow, yearsHigh } = row
  return {
    cropId: row.cropId,
    constants: row.viabilityConstants === null ? null : JSON.parse(row.viabilityConstants),
    oil: oilLow === null || oilHigh === null ? null : (oilLow + oilHigh) / 200,
    years: yearsLow === null || yearsHigh === null ? null : [yearsLow, yearsHigh],
    leastSold: leastSold(row.federalMinimumPercent ?? row.stateMinimumPercent),
  }
}

/**
 * When a lot began to age: on the first of October of its harvest year, the middle one of a span, or on the first day that
 * it is known of where that is earlier or the year is not known.
 */
function startOf(row: AgeingRow, stays: readonly StayRow[], tests: readonly ForecastTestRow[]): IsoDate {
  const known = [row.receivedOn, ...stays.map(({ since }) => since), ...tests.map((test) => test.testedOn)]
  const first = isoDate(known.toSorted()[0] ?? row.receivedOn)
  if (row.harvestFrom === null || row.harvestTo === null) return first
  const year = Math.floor((row.harvestFrom + row.harvestTo) / 2)
  return earlier(isoDate(`${String(year).padStart(4, '0')}-10-01`), first)
}

const LAST_DAY = isoDate('9999-12-31')

/** How damp a lot was from a day on. */
interface MoistureSpan {
  readonly from: IsoDate
  readonly moisture: LotMoisture
}

/** Seed of which nothing was noted yet follows the air around it. */
const IN_THE_AIR: LotMoisture = { measured: null, airtight: null }
const FIRST_DAY = isoDate('1000-01-01')

/**
 * How damp a lot was: as measured from then on, since it was closed in airtight for the first measurement, and before that
 * as the air left it. Drying seed does not give back what it lost while it was damp.
 */
function moistureSpans(row: AgeingRow, moistures: readonly MoistureOnRow[]): MoistureSpan[] {
  const airtight = row.airtight === null ? null : row.airtight === 1
  const closedIn = airtight === true && row.containedSince !== null ? isoDate(row.containedSince) : LAST_DAY
  const last = moistures.length - 1
  const measured = moistures.map(({ measuredOn, percent }, index) => ({
    from: index === 0 ? earlier(isoDate(measuredOn), closedIn) : isoDate(measuredOn),
    // What was too wet for any figure and was dried since aged as the wettest that has one.
    moisture: { measured: index < last ? Math.min(percent, WORKING.moistest) : percent, airtight },
  }))
  return [{ from: FIRST_DAY, moisture: { ...IN_THE_AIR, airtight } }, ...measured]
}

/** A stretch of time in which a lot lay in one place, as damp as it was; `noted`: whether the book knows the place. */
interface LotPart {
  readonly from: IsoDate
  readonly until: IsoDate
  readonly placeId: number | null
  readonly moisture: LotMoisture
  readonly noted: boolean
}

/** A lot's time from its start on, cut where it was moved or measured: in a room before the first stay. */
function partsOf(
  start: IsoDate,
  stays: readonly StayRow[],
  spans: readonly MoistureSpan[],
  placeId: number | null,
): LotPart[] {
  const cuts = [start, ...stays.map(({ since }) => isoDate(since)), ...spans.map(({ from }) => from)]
  const days = [...new Set(cuts.filter((day) => day >= start))].toSorted()
  return days.map((from, index) => {
    const stay = stays.findLast(({ since }) => since <= from)
    return {
      from,
      until: days[index + 1] ?? LAST_DAY,
      placeId: stay?.placeId ?? (stays.length === 0 ? placeId : null),
      moisture: spans.findLast((span) => span.from <= from)?.moisture ?? IN_THE_AIR,
      noted: stay !== undefined,
    }
  })
}

/** A lot's ageing over its parts, and where it lies now from today on. */
function ageingOf(
  parts: readonly LotPart[],
  now: PlaceAgeing,
  at: (placeId: number | null, moisture: LotMoisture) => PlaceAgeing,
): Ageing {
  const lain = parts.map(({ placeId, moisture, from, until }) => ({
    place: at(placeId, moisture),
    from,
    until,
  }))
  return {
    start: parts[0]?.from ?? LAST_DAY,
    dailyAhead: now.daily,
    lostOn(day) {
      let lost = 0
      for (const { place, from, until } of lain) {
        if (from >= day) break
        lost += place.lost(from, earlier(until, day))
      }
      return lost
    },
  }
}

function earlier(one: IsoDate, other: IsoDate): IsoDate {
  if (one < other) return one
  return other
}
