import { beyond, type ClimateLimits } from './limits.ts'
import { type ClimateReading, minuteOf } from './reading.ts'

/** How long one reading may stand for the time after it, minutes: a longer gap is time that nobody measured. */
const STANDS_FOR_AT_MOST = 26 * 60

/** A stretch of time beyond the limits without a reading inside them. */
export interface Spell {
  readonly from: string
  /** The first reading inside the limits again; where time follows that nobody measured, or nothing, the last beyond them. */
  readonly until: string
  readonly hours: number
  readonly highestCc: number
  readonly highestPm: number | null
}

/** The measured time of a series and how much of it was beyond the limits; hours. */
export interface TimeOutside {
  readonly measuredHours: number
  readonly outsideHours: number
  readonly tooWarmHours: number
  readonly tooDampHours: number
  /** A part of one; null where no time was measured. */
  readonly share: number | null
  /** Longest first. */
  readonly spells: readonly Spell[]
}

/**
 * How long a place was beyond its limits. Each reading stands until the next, for a day and two hours at most; the last
 * stands for as long as the one before it. Readings in order of time.
 */
export function timeOutside(readings: readonly ClimateReading[], limits: ClimateLimits): TimeOutside {
  const lengths = minutesEach(readings)
  const spells: Spell[] = []
  let measured = 0
  let warm = 0
  let damp = 0
  let outside = 0
  let open: Spell | null = null
  for (const [index, reading] of readings.entries()) {
    const minutes = lengths[index] ?? 0
    const { tooWarm, tooDamp } = beyond(reading, limits)
    measured += minutes
    if (tooWarm) warm += minutes
    if (tooDamp) damp += minutes
    if (!tooWarm && !tooDamp) {
      open = null
      continue
    }
    outside += minutes
    const next = readings[index + 1]?.at ?? reading.at
    // A gap that nobody measured ends a spell: what went on in it is not known.
    const gap = minuteOf(next) - minuteOf(reading.at) > minutes
    if (open !== null) spells.pop()
    open = longer(open, reading, gap ? reading.at : next, minutes / 60)
    spells.push(open)
    if (gap) open = null
  }
  return {
    measuredHours: measured / 60,
    outsideHours: outside / 60,
    tooWarmHours: warm / 60,
    tooDampHours: damp / 60,
    share: measured === 0 ? null : outside / measured,
    spells: spells.toSorted((a, b) => b.hours - a.hours),
  }
}

function longer(open: Spell | null, reading: ClimateReading, until: string, hours: number): Spell {
  const damp = [open?.highestPm, reading.humidityPm].filter((value) => typeof value === 'number')
  return {
    from: open?.from ?? reading.at,
    until,
    hours: (open?.hours ?? 0) + hours,
    highestCc: Math.max(open?.highestCc ?? reading.temperatureCc, reading.temperatureCc),
    highestPm: damp.length === 0 ? null : Math.max(...damp),
  }
}

/** For how many minutes each reading stands: until the next, for a day and two hours at most. Readings in order of time. */
export function minutesEach(readings: readonly ClimateReading[]): number[] {
  const minutes = readings.map(({ at }) => minuteOf(at))
  const gaps = minutes
    .slice(1)
    .map((minute, index) => Math.min(minute - (minutes[index] ?? minute), STANDS_FOR_AT_MOST))
  return [...gaps, gaps.at(-1) ?? 0].slice(0, readings.length)
}
