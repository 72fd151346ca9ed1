import { type IsoDate, isoDate } from '../domain/dates/iso-date.ts'
import type { Threshold } from '../domain/viability/band.ts'
import type { PaceRemark } from '../domain/viability/equation.ts'
import { type Ageing, type DatedTest, type Forecast, forecastOf } from '../domain/viability/forecast.ts'
import { type AgeingCrop, type PaceModel, paceModelOf } from '../domain/viability/pace-model.ts'
import { leastSold, priorOf } from '../domain/viability/prior.ts'
import {
  type AgeingRow,
  ageingRows,
  type ForecastTestRow,
  forecastTests,
  type StayRow,
  stayRows,
} from '../queries/forecast-rows.ts'
import type { Reading } from './context.ts'
import type { CollectionPolicy } from './living-stock.ts'
import type { LotMoisture, PlaceAgeing, PlacesAgeing } from './place-ageing.ts'

/** A lot as it is forecast: what was reckoned and what it rests on. */
export type LotForecast =
  | {
      readonly kind: 'forecast'
      readonly lotId: number
      readonly model: PaceModel
      readonly crop: AgeingCrop
      readonly moisture: LotMoisture
      readonly ageing: Ageing
      readonly forecast: Forecast
      readonly threshold: Threshold
      readonly measured: boolean
      readonly harvestKnown: boolean
      readonly remarks: readonly PaceRemark[]
    }
  | { readonly kind: 'refused'; readonly lotId: number; readonly because: string }

/** Forecasts some lots as of today. `places` may be shared by all that are reckoned at one moment. */
export function forecastLots(
  reading: Reading,
  lotIds: readonly number[],
  policy: CollectionPolicy,
  places: PlacesAgeing,
): LotForecast[] {
  const stays = Map.groupBy(stayRows(reading.sqlite, lotIds), (row) => row.lot_id)
  const tests = Map.groupBy(forecastTests(reading.sqlite, lotIds), (row) => row.lot_id)
  return ageingRows(reading.sqlite, lotIds).map((row) =>
    forecastLot(row, stays.get(row.lot_id) ?? [], tests.get(row.lot_id) ?? [], policy, places, reading.today),
  )
}

function forecastLot(
  row: AgeingRow,
  stays: readonly StayRow[],
  tests: readonly ForecastTestRow[],
  policy: CollectionPolicy,
  places: PlacesAgeing,
  today: IsoDate,
): LotForecast {
  const crop = cropOf(row)
  const model = paceModelOf(crop)
  if (model === null) {
    return {
      kind: 'refused',
      lotId: row.lot_id,
      because: 'Nothing is known of how long seed of this crop keeps.',
    }
  }
  const moisture: LotMoisture = {
    measured: row.moisture,
    airtight: row.airtight === null ? null : row.airtight === 1,
  }
  const at = (placeId: number | null) => places.of(placeId, crop, model, moisture)
  const now = at(row.place_id)
  const ageing = ageingOf(startOf(row, stays, tests), stays, now, at)
  const lain = [now, ...stays.map(({ place_id }) => at(place_id))]
  const refused = lain.find((place) => place.refused !== null)?.refused ?? null
  if (refused !== null) return { kind: 'refused', lotId: row.lot_id, because: refused }
  const remarks = [...new Set(lain.flatMap((place) => [...place.remarks]))]
  const measured = lain.every((place) => place.measured)
  const threshold: Threshold = {
    part: row.own_threshold ?? policy.viabilityThreshold,
    of: policy.viabilityThresholdOf,
  }
  const prior = priorOf({
    leastSold: crop.leastSold,
    basis: model.basis,
    keepingMeasured: measured,
    extrapolates: remarks.some((remark) => remark.endsWith('-than-fitted')),
  })
  const dated: DatedTest[] = tests.map((test) => ({
    on: isoDate(test.tested_on),
    tested: test.tested,
    sprouted: test.sprouted,
  }))
  const forecast = forecastOf(prior, dated, ageing, threshold, today)
  return {
    kind: 'forecast',
    lotId: row.lot_id,
    model,
    crop,
    moisture,
    ageing,
    forecast,
    threshold,
    measured,
    harvestKnown: row.harvest_to !== null,
    remarks,
  }
}

function cropOf(row: AgeingRow): AgeingCrop {
  const { oil_low, oil_high, years_low, years_high } = row
  return {
    cropId: row.crop_id,
    oil: oil_low === null || oil_high === null ? null : (oil_low + oil_high) / 200,
    years: years_low === null || years_high === null ? null : [years_low, years_high],
    leastSold: leastSold(row.federal_minimum_percent ?? row.state_minimum_percent),
  }
}

/**
 * When a lot began to age: on the first of October of its harvest year, the middle one of a span, or on the first day that
 * it is known of where that is earlier or the year is not known.
 */
function startOf(row: AgeingRow, stays: readonly StayRow[], tests: readonly ForecastTestRow[]): IsoDate {
  const known = [stays[0]?.since, tests[0]?.tested_on, stays.length === 0 ? row.received_on : undefined]
  const first = isoDate(known.filter((day) => day !== undefined).toSorted()[0] ?? row.received_on)
  if (row.harvest_from === null || row.harvest_to === null) return first
  const year = Math.floor((row.harvest_from + row.harvest_to) / 2)
  return earlier(isoDate(`${String(year).padStart(4, '0')}-10-01`), first)
}

const LAST_DAY = isoDate('9999-12-31')

/** A lot's ageing over its stays, in a room before the first, and where it lies now from today on. */
function ageingOf(
  start: IsoDate,
  stays: readonly StayRow[],
  now: PlaceAgeing,
  at: (placeId: number | null) => PlaceAgeing,
): Ageing {
  const since = stays.map((stay) => isoDate(stay.since))
  const parts = [
    { place: stays.length === 0 ? now : at(null), from: start, until: since[0] ?? LAST_DAY },
    ...stays.map(({ place_id }, index) => ({
      place: at(place_id),
      from: since[index] ?? start,
      until: since[index + 1] ?? LAST_DAY,
    })),
  ]
  return {
    start,
    dailyAhead: now.daily,
    lostOn(day) {
      let lost = 0
      for (const { place, from, until } of parts) {
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
