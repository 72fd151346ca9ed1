import type { LotForecast as ToldForecast } from '../../contract/care-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { DAYS_IN_YEAR } from '../../domain/dates/day-arithmetic.ts'
import type { IsoDate } from '../../domain/dates/iso-date.ts'
import { freezingCaution, freezingCautionOfMany } from '../../domain/moisture/moisture-words.ts'
import { type Band, crossingBand } from '../../domain/viability/band.ts'
import { yearsOfMany, yearsTold } from '../../domain/viability/years-ahead.ts'
import { type Message, message } from '../../messages/message.ts'
import { type CandidateRow, candidatePlaces } from '../../queries/forecast-rows.ts'
import { moistureOfLot } from '../../queries/lot-climate.ts'
import { lotFacts } from '../../queries/lot-facts.ts'
import { lotsInPlace } from '../../queries/place-readings.ts'
import type { Reading, Reads } from '../book/context.ts'
import { placeOrRefuse } from '../book/places.ts'
import { settingsOf } from '../book/settings.ts'
import { type PlaceAgeing, PlacesAgeing } from '../storage/place-ageing.ts'
import { forecastLots, type LotForecast } from './lot-forecast.ts'

type ShownForecast = Untold<ToldForecast>
type Computed = Extract<LotForecast, { kind: 'forecast' }>

const MOST_PLACES = 12
const MOST_LOTS = 500

/** Years from today until a lot is below its threshold, by the deviates that it loses in a day. */
function yearsOf({ forecast, ageing, threshold }: Computed, today: IsoDate): (daily: number) => Band {
  const { low, middle, high } = crossingBand(forecast.learnt.posterior, threshold)
  const lost = ageing.lostOn(today)
  return (daily) => {
    const years = (of: number) => Math.max(0, of - lost) / daily / DAYS_IN_YEAR
    return { low: years(low), middle: years(middle), high: years(high) }
  }
}

/** The places to which seed might be moved from where it lies: not there, nor to what that stands in and shares its air with. */
function placesElsewhere(
  reading: Reading,
  here: { readonly id: number; readonly path: string } | null,
  ageingAt: (placeId: number) => PlaceAgeing,
): CandidateRow[] {
  const candidates = candidatePlaces(reading.sqlite, MOST_PLACES)
  if (here === null) return candidates
  return candidates.filter(({ placeId, path }) => {
    if (placeId === here.id) return false
    return !here.path.startsWith(`${path} / `) || ageingAt(placeId) !== ageingAt(here.id)
  })
}

/** Years to the threshold where the lot lies and in every place that differs. */
export function movesOf(
  reading: Reading,
  computed: Computed,
  places: PlacesAgeing,
): Untold<ShownForecast>['places'] {
  const { crop, model, moisture, ageing, lotId } = computed
  const yearsAt = yearsOf(computed, reading.today)
  const placeId = lotFacts(reading.sqlite, lotId).placeId
  const here = placeId === null ? null : placeOrRefuse(reading, placeId, 'lotId')
  const at = (id: number) => places.of(id, crop, model, moisture)
  const row = (id: number | null, place: Message | string, daily: number, caution: Message | string) => {
    const years = yearsAt(daily)
    return { placeId: id, place, years, words: yearsTold(years), caution }
  }
  return [
    row(null, message('forecast.here'), ageing.dailyAhead, ''),
    ...placesElsewhere(reading, here, at).map(({ placeId, path, kind }) => {
      const there = at(placeId)
      const caution =
        kind === 'freezer'
          ? (freezingCaution(moistureOfLot(reading.sqlite, lotId)?.highPercent ?? null) ?? '')
          : ''
      if (there.refusedAhead === null) return row(placeId, path, there.daily, caution)
      return { placeId, place: path, years: null, words: there.refusedAhead, caution }
    }),
  ]
}

/** The same for all lots that lie in a place and inside it, added up. */
export const previewMoves: Reads<'place.preview-moves'> = (reading, input) => {
  const here = placeOrRefuse(reading, input.placeId, 'placeId')
  const lying = lotsInPlace(reading.sqlite, here.id, MOST_LOTS)
  const places = new PlacesAgeing(reading)
  const ids = lying.map(({ lotId }) => lotId)
  const told = forecastLots(reading, ids, settingsOf(reading), places).filter(
    (lot) => lot.kind === 'forecast',
  )
  const [first] = told
  if (first === undefined) return { lots: 0, notTold: lying.length, already: 0, places: [] }
  const lots = told.map((lot) => ({ lot, yearsAt: yearsOf(lot, reading.today) }))
  const row = (
    placeId: number | null,
    place: Message | string,
    years: readonly Band[],
    caution: Message | string,
  ) => {
    const { half, soon } = yearsOfMany(years)
    return {
      placeId,
      place,
      half,
      words: half === null ? message('forecast.all-below') : yearsTold(half),
      soon,
      notTold: told.length - years.length,
      caution,
    }
  }
  const now = lots.map(({ lot, yearsAt }) => yearsAt(lot.ageing.dailyAhead))
  const tooMoist = lying.filter(({ highPercent }) => freezingCaution(highPercent) !== null).length
  const elsewhere = placesElsewhere(reading, here, (id) =>
    places.of(id, first.crop, first.model, first.moisture),
  )
  return {
    lots: told.length,
    notTold: lying.length - told.length,
    already: yearsOfMany(now).already,
    places: [
      row(null, message('forecast.here-many'), now, ''),
      ...elsewhere.flatMap(({ placeId, path, kind }) => {
        const years = lots.flatMap(({ lot, yearsAt }) => {
          const there = places.of(placeId, lot.crop, lot.model, lot.moisture)
          return there.refusedAhead === null ? [yearsAt(there.daily)] : []
        })
        const caution = kind === 'freezer' ? (freezingCautionOfMany(tooMoist, lying.length) ?? '') : ''
        return years.length === 0 ? [] : [row(placeId, path, years, caution)]
      }),
    ],
  }
}
