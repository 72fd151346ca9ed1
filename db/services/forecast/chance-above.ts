import { addDays } from '../../domain/dates/day-arithmetic.ts'
import type { LotOnTheDay } from '../../domain/germination/result-told.ts'
import { chanceBelow } from '../../domain/viability/band.ts'
import type { DatedTest } from '../../domain/viability/forecast.ts'
import { learnFromTests } from '../../domain/viability/test-sense.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { PlacesAgeing } from '../storage/place-ageing.ts'
import { forecastLots, type LotForecast } from './lot-forecast.ts'

/** What the forecast of a lot says of the day of one of its tests. */
export type LotOnDayOf = (test: DatedTest) => LotOnTheDay

/** A forecast is told as of today for so many days; a test before that was then. */
const HOLDS_DAYS = 30

/** What the forecasts of some lots, each computed once, say of the days of their tests. */
export function lotsOnTheDay(reading: Reading, lotIds: readonly number[]): (lotId: number) => LotOnDayOf {
  const places = new PlacesAgeing(reading)
  const forecasts = forecastLots(reading, [...new Set(lotIds)], settingsOf(reading), places)
  const byLot = new Map(forecasts.map((forecast) => [forecast.lotId, forecast]))
  return (lotId) => (test) => {
    const lot = byLot.get(lotId)
    const chanceAbove = lot === undefined || lot.kind === 'refused' ? null : chanceOn(lot, test)
    return { chanceAbove, longAgo: test.on < addDays(reading.today, -HOLDS_DAYS) }
  }
}

type Told = Extract<LotForecast, { kind: 'forecast' }>

/** A test that is not finished, or is looked at as counted otherwise, stands in place of the one of its day and size. */
function chanceOn(lot: Told, test: DatedTest): number {
  const { ageing, threshold, forecast } = lot
  const known = [...forecast.learnt.used, ...forecast.learnt.setAside]
  const asKnown = known.find(({ on, tested }) => on === test.on && tested === test.tested)
  const lost = ageing.lostOn(test.on)
  const posterior =
    asKnown?.sprouted === test.sprouted || lot.merged !== null
      ? forecast.learnt.posterior
      : learnFromTests(
          lot.prior,
          [...known.filter((one) => one !== asKnown), { ...test, lost }].toSorted((a, b) => a.lost - b.lost),
        ).posterior
  return 1 - chanceBelow(posterior, threshold, lost)
}
