import { isPiece, MONTHS_WITHOUT_FIGURE } from '../../domain/crops/pieces.ts'
import { DAYS_IN_YEAR, daysBetween } from '../../domain/dates/day-arithmetic.ts'
import { type IsoDate, isoDate } from '../../domain/dates/iso-date.ts'
import type { AgeingLot } from '../../domain/needs/cost-of-waiting.ts'
import {
  aged,
  agedByForecast,
  beliefFromAssumption,
  beliefFromBand,
  beliefFromTest,
  type ViabilityBelief,
} from '../../domain/needs/outlook.ts'
import type { LifeRow } from '../../queries/lot-rows.ts'
import { countDoubt } from '../book/amounts.ts'
import { lifeOf } from '../book/living-stock.ts'

/**
 * What is believed of a lot's viability so many years from today: the one place that decides it.
 *
 * A forecast speaks of the day on which it was computed, up to a month ago, and ages from there.
 */
export function beliefIn(row: LifeRow, today: IsoDate): (years: number) => ViabilityBelief {
  if (isPiece(row.countedUnit)) return seasonBelief(row)
  const believed = lastBelief(row)
  const yearly = row.forecastAYear
  if (yearly === null || row.forecastOn === null) return (years) => aged(believed, years, row.storageYears)
  const since = Math.max(0, daysBetween(isoDate(row.forecastOn), today)) / DAYS_IN_YEAR
  return (years) => agedByForecast(believed, since + years, yearly)
}

/** Pieces are as sound as now within the months that they keep, and gone after. */
function seasonBelief(row: LifeRow): (years: number) => ViabilityBelief {
  const { viability } = lifeOf(row)
  const keeps = (row.keepsMonths ?? MONTHS_WITHOUT_FIGURE) / 12
  return (years) => ({ mean: years > keeps ? 0 : viability, deviation: 0 })
}

/** By its forecast, else by its last test, else as assumed; an assumption's doubt stays its own. */
function lastBelief(row: LifeRow): ViabilityBelief {
  const { basis, viability, viabilityRange } = lifeOf(row)
  if (basis !== 'tested' && basis !== 'forecast') return beliefFromAssumption(viability)
  if (row.forecastViability !== null) return beliefFromBand(viability, viabilityRange)
  return beliefFromTest(row.sprouted ?? 0, row.tested ?? 0)
}

/** A lot as the outlook of its accession sees it, with the origin that parts of its seed share. */
export function ageingLot(row: LifeRow, origin: number, today: IsoDate): AgeingLot {
  return { origin, seeds: row.balanceCount, countDoubt: countDoubt(row), beliefIn: beliefIn(row, today) }
}
