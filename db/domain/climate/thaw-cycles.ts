import { type ClimateReading, minuteOf } from './reading.ts'

/** Warm peaks that come back by the clock, as a frost-free freezer makes them when it melts its ice. */
export interface ThawCycles {
  readonly peaks: number
  /** The usual time from one to the next, hours. */
  readonly everyHours: number
  /** How far the usual peak rises above the usual temperature, hundredths of a degree C. */
  readonly riseCc: number
}

/** Readings further apart than this miss peaks that last half an hour, minutes. */
const CLOSE_ENOUGH_MINUTES = 30
/** A peak rises so far above the usual and is over so soon; as regular as this, and so many. Common practice, no source. */
const RISE_CC = 300
const LASTS_AT_MOST_MINUTES = 180
const LEAST_PEAKS = 4
const MOST_UNEVEN = 0.35

/**
 * The defrosting cycles of a freezer, or null where the trace shows none.
 *
 * Seen only where the usual temperature is below 0 C and readings come at least every half hour. A single long thaw, an
 * opened door now and then and a failed week are no cycles. Readings in order of time.
 */
export function thawCycles(readings: readonly ClimateReading[]): ThawCycles | null {
  const usual = median(readings.map(({ temperatureCc }) => temperatureCc))
  const apart = median(gapsOf(readings.map(({ at }) => minuteOf(at))))
  if (usual === null || usual >= 0 || apart === null || apart > CLOSE_ENOUGH_MINUTES) return null
  const peaks = peaksAbove(readings, usual + RISE_CC)
  const every = gapsOf(peaks.map(({ minute }) => minute))
  const usualGap = median(every)
  if (peaks.length < LEAST_PEAKS || usualGap === null) return null
  const unevenness = median(every.map((gap) => Math.abs(gap - usualGap))) ?? 0
  if (unevenness > MOST_UNEVEN * usualGap) return null
  const highest = median(peaks.map(({ highestCc }) => highestCc)) ?? usual
  return { peaks: peaks.length, everyHours: usualGap / 60, riseCc: highest - usual }
}

interface Peak {
  readonly minute: number
  readonly highestCc: number
}

/** Short rises above a line; one that lasts longer is no peak. */
function peaksAbove(readings: readonly ClimateReading[], line: number): Peak[] {
  const peaks: Peak[] = []
  let began: number | null = null
  let highest: { minute: number; highestCc: number } | null = null
  for (const { at, temperatureCc } of readings) {
    const minute = minuteOf(at)
    if (temperatureCc > line) {
      began ??= minute
      if (highest === null || temperatureCc > highest.highestCc)
        highest = { minute, highestCc: temperatureCc }
      continue
    }
    if (highest !== null && began !== null && minute - began <= LASTS_AT_MOST_MINUTES) peaks.push(highest)
    began = null
    highest = null
  }
  return peaks
}

function gapsOf(minutes: readonly number[]): number[] {
  return minutes.slice(1).map((minute, index) => minute - (minutes[index] ?? minute))
}

function median(values: readonly number[]): number | null {
  if (values.length === 0) return null
  const sorted = values.toSorted((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? null
}
