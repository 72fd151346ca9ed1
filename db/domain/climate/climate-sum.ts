import { type ClimateLimits, hasLimits, heatAndDampness } from './limits.ts'
import type { ClimateReading } from './reading.ts'
import { timeOutside } from './time-outside.ts'

/** What readings come to. Hundredths of a degree C, per mille of relative humidity; null where humidity was not read. */
export interface ClimateTotals {
  readonly readings: number
  readonly from: string
  readonly until: string
  readonly lowestCc: number
  readonly meanCc: number
  readonly highestCc: number
  readonly meanPm: number | null
  readonly highestPm: number | null
  /** Mean of degrees F plus percent of relative humidity. */
  readonly meanSum: number | null
  /** Part of the measured time beyond the limits, of one; null where there are none. */
  readonly shareOutside: number | null
}

/** Sums up readings in order of time; null where there is none. */
export function climateTotals(
  readings: readonly ClimateReading[],
  limits: ClimateLimits,
): ClimateTotals | null {
  const [first, last] = [readings[0], readings.at(-1)]
  if (first === undefined || last === undefined) return null
  let [lowest, highest, warmth] = [first.temperatureCc, first.temperatureCc, 0]
  let [humid, dampness, sums] = [0, 0, 0]
  let dampest: number | null = null
  for (const reading of readings) {
    lowest = Math.min(lowest, reading.temperatureCc)
    highest = Math.max(highest, reading.temperatureCc)
    warmth += reading.temperatureCc
    if (reading.humidityPm === null) continue
    humid += 1
    dampness += reading.humidityPm
    dampest = Math.max(dampest ?? 0, reading.humidityPm)
    sums += heatAndDampness(reading) ?? 0
  }
  return {
    readings: readings.length,
    from: first.at,
    until: last.at,
    lowestCc: lowest,
    meanCc: warmth / readings.length,
    highestCc: highest,
    meanPm: humid === 0 ? null : dampness / humid,
    highestPm: dampest,
    meanSum: humid === 0 ? null : sums / humid,
    shareOutside: hasLimits(limits) ? timeOutside(readings, limits).share : null,
  }
}

/** Quarters of the year that begin with December, so that each is one season wherever the place is. */
export const SEASONS = ['Dec to Feb', 'Mar to May', 'Jun to Aug', 'Sep to Nov'] as const
export type Season = (typeof SEASONS)[number]

/** The season in which a reading was taken. */
export function seasonOf({ at }: ClimateReading): Season {
  const month = Number(at.slice(5, 7))
  return SEASONS[Math.floor((month % 12) / 3)] as Season
}
