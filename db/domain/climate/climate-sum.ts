import { type ClimateLimits, hasLimits, heatAndDampness } from './limits.ts'
import type { ClimateReading } from './reading.ts'
import { minutesEach, timeOutside } from './time-outside.ts'

/** What readings come to; means are of the measured time, not of the readings. Hundredths of a degree C, per mille of relative humidity; null where humidity was not read. */
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
  const minutes = minutesEach(readings)
  // One reading alone stands for no time at all: then each counts alike.
  const weight = (index: number) => (last.at === first.at ? 1 : (minutes[index] ?? 0))
  let [lowest, highest] = [first.temperatureCc, first.temperatureCc]
  const [warmth, dampness, sums] = [new Mean(), new Mean(), new Mean()]
  let dampest: number | null = null
  for (const [index, reading] of readings.entries()) {
    lowest = Math.min(lowest, reading.temperatureCc)
    highest = Math.max(highest, reading.temperatureCc)
    warmth.add(reading.temperatureCc, weight(index))
    if (reading.humidityPm === null) continue
    dampness.add(reading.humidityPm, weight(index))
    dampest = Math.max(dampest ?? 0, reading.humidityPm)
    sums.add(heatAndDampness(reading) ?? 0, weight(index))
  }
  return {
    readings: readings.length,
    from: first.at,
    until: last.at,
    lowestCc: lowest,
    meanCc: warmth.value ?? first.temperatureCc,
    highestCc: highest,
    meanPm: dampness.value,
    highestPm: dampest,
    meanSum: sums.value,
    shareOutside: hasLimits(limits) ? timeOutside(readings, limits).share : null,
  }
}

/** A mean of figures by the time that each stands for; null where none stands for any. */
class Mean {
  #sum = 0
  #weight = 0

  add(figure: number, weight: number): void {
    this.#sum += figure * weight
    this.#weight += weight
  }

  get value(): number | null {
    return this.#weight === 0 ? null : this.#sum / this.#weight
  }
}

/** Quarters of the year that begin with December, so that each is one season wherever the place is. */
export const SEASONS = ['dec-feb', 'mar-may', 'jun-aug', 'sep-nov'] as const
export type Season = (typeof SEASONS)[number]

/** The season in which a reading was taken. */
export function seasonOf({ at }: ClimateReading): Season {
  const month = Number(at.slice(5, 7))
  return SEASONS[Math.floor((month % 12) / 3)] as Season
}
