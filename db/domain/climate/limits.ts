import { type ClimateReading, fahrenheit } from './reading.ts'

/** What a place is meant for. */
export const PLACE_AIMS = ['short-term', 'medium-term', 'long-term', 'none'] as const
export type PlaceAim = (typeof PLACE_AIMS)[number]

/** The limits of a place; null: none. Hundredths of a degree C, per mille of relative humidity. */
export interface ClimateLimits {
  readonly highestCc: number | null
  readonly highestPm: number | null
  /** Degrees F plus percent of relative humidity. */
  readonly highestSum: number | null
}

/** Degrees F plus percent of relative humidity of a short-term place: common practice, seen in two storage guides. */
export const HIGHEST_SUM = 100

/** FAO Genebank Standards 2014, 4.2.4: working stock at 5 to 10 C. 4.2.3: long term at -18 C, give or take 3. Seen. */
const MEDIUM_TERM_CC = 1_000
const LONG_TERM_CC = -1_500

/** The limits of an aim, with the keeper's own in place of them where given. */
export function limitsOf(
  aim: PlaceAim,
  own: { readonly highestCc: number | null; readonly highestPm: number | null },
): ClimateLimits {
  const usual = usualLimits(aim)
  return {
    highestCc: own.highestCc ?? usual.highestCc,
    highestPm: own.highestPm ?? usual.highestPm,
    highestSum: usual.highestSum,
  }
}

function usualLimits(aim: PlaceAim): ClimateLimits {
  const none = { highestCc: null, highestPm: null, highestSum: null }
  switch (aim) {
    case 'short-term':
      return { ...none, highestSum: HIGHEST_SUM }
    case 'medium-term':
      return { ...none, highestCc: MEDIUM_TERM_CC }
    case 'long-term':
      return { ...none, highestCc: LONG_TERM_CC }
    case 'none':
      return none
  }
}

/** Whether there is anything to keep to. */
export function hasLimits({ highestCc, highestPm, highestSum }: ClimateLimits): boolean {
  return highestCc !== null || highestPm !== null || highestSum !== null
}

/** Degrees F plus percent of relative humidity; null where humidity was not read. */
export function heatAndDampness({ temperatureCc, humidityPm }: ClimateReading): number | null {
  return humidityPm === null ? null : fahrenheit(temperatureCc) + humidityPm / 10
}

/** In which way a reading is beyond the limits; both may be. */
export interface Beyond {
  readonly tooWarm: boolean
  readonly tooDamp: boolean
}

/**
 * Whether a reading is too warm or too damp. A sum above its limit is charged to the larger half of it: no more than half
 * of the sum should come from the temperature (the usual companion of the rule, from memory).
 */
export function beyond(reading: ClimateReading, limits: ClimateLimits): Beyond {
  const sum = heatAndDampness(reading)
  const overSum = limits.highestSum !== null && sum !== null && sum > limits.highestSum
  const heatLeads = fahrenheit(reading.temperatureCc) > HIGHEST_SUM / 2
  const dampLeads = (reading.humidityPm ?? 0) / 10 > HIGHEST_SUM / 2
  return {
    tooWarm:
      (limits.highestCc !== null && reading.temperatureCc > limits.highestCc) || (overSum && heatLeads),
    tooDamp:
      (limits.highestPm !== null && reading.humidityPm !== null && reading.humidityPm > limits.highestPm) ||
      (overSum && dampLeads),
  }
}
