import { type Message, message } from '../../messages/message.ts'
import { wetFromDry } from './moisture-basis.ts'

/** Oil of seed whose crop's is not in the table, parts of the dry weight: anything from starchy to rich. */
export const ANY_OIL = { low: 0.02, high: 0.45 } as const

/** How far a sealed jar and a meter may be off, points of moisture. Common practice, no source. */
export const DOUBT_POINTS = 1

/** Air that seed has come to rest with, and the seed's oil. */
export interface SealedAir {
  /** Relative humidity, a part of one. */
  readonly humidity: number
  /** Degrees C. */
  readonly temperature: number
  /** Oil as a part of the dry weight. */
  readonly oil: number
}

export type EquilibriumMoisture =
  | { readonly kind: 'moisture'; readonly dryPercent: number; readonly wetPercent: number }
  | { readonly kind: 'outside'; readonly field: 'humidity' | 'temperature'; readonly because: Message }

/** Where the relation was fitted: 10 to 70 % humidity; starchy seed 0 to 40 C, oily seed 15 to 25 C. */
const HUMIDITY = { from: 0.1, to: 0.7 } as const
const STARCHY = { from: 0, to: 40 } as const
const OILY = { from: 15, to: 25 } as const
/** From how much oil on seed counts as oily here. The source draws no line; common practice, no source. */
export const OILY_FROM = 0.1

/**
 * Moisture of seed at rest with the air around it, as in a jar that was closed for days.
 *
 * Cromarty, Ellis and Roberts 1982, Design of Seed Storage Facilities for Genetic Conservation, seen as quoted in a
 * secondary page: Me = (1 - oil) sqrt(-440 ln(1 - R)) / (1.1 + T / 90), percent of the dry weight. Answers 'outside'
 * beyond the ranges it was fitted over, rather than extrapolate.
 */
export function equilibriumMoisture({ humidity, temperature, oil }: SealedAir): EquilibriumMoisture {
  const oily = oil >= OILY_FROM
  const fitted = oily ? OILY : STARCHY
  if (!(humidity >= HUMIDITY.from && humidity <= HUMIDITY.to)) {
    const because =
      humidity > HUMIDITY.to
        ? message('storage.jar-too-damp', { most: 100 * HUMIDITY.to })
        : message('storage.jar-too-dry', { least: 100 * HUMIDITY.from })
    return { kind: 'outside', field: 'humidity', because }
  }
  if (!(temperature >= fitted.from && temperature <= fitted.to)) {
    const because = message('storage.jar-temperature', { seed: oily ? 'oily' : 'starchy', ...fitted })
    return { kind: 'outside', field: 'temperature', because }
  }
  return { kind: 'moisture', ...cromarty({ humidity, temperature, oil }) }
}

/** Moisture of seed that air would bring it to, and which of the air's figures the relation had to be asked without. */
export interface NearestMoisture {
  readonly dryPercent: number
  readonly wetPercent: number
  /** Whether humidity or temperature lay outside what the relation was fitted over, and the nearest inside was taken. */
  readonly beyondRange: boolean
}

/**
 * The same relation asked at the nearest humidity and temperature that it was fitted over, for air that changes and cannot
 * be refused, such as a place's. A figure with `beyondRange` must be shown as a rough one.
 */
export function nearestEquilibrium({ humidity, temperature, oil }: SealedAir): NearestMoisture {
  const fitted = oil >= OILY_FROM ? OILY : STARCHY
  const inside = {
    humidity: Math.min(Math.max(humidity, HUMIDITY.from), HUMIDITY.to),
    temperature: Math.min(Math.max(temperature, fitted.from), fitted.to),
  }
  const beyondRange = inside.humidity !== humidity || inside.temperature !== temperature
  return { ...cromarty({ ...inside, oil }), beyondRange }
}

function cromarty({ humidity, temperature, oil }: SealedAir): { dryPercent: number; wetPercent: number } {
  const dryPercent = ((1 - oil) * Math.sqrt(-440 * Math.log(1 - humidity))) / (1.1 + temperature / 90)
  return { dryPercent, wetPercent: wetFromDry(dryPercent) }
}
