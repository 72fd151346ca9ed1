import { addDays, DAYS_IN_YEAR, daysBetween } from '../dates/day-arithmetic.ts'
import type { IsoDate } from '../dates/iso-date.ts'
import { type Band, chanceBelow, crossingBand, middlePace, type Threshold, viabilityBand } from './band.ts'
import type { PlacedTest } from './learner.ts'
import type { ViabilityPrior } from './prior.ts'
import { type Learnt, learnFromTests } from './test-sense.ts'

/** How a lot aged by the computed pace, and will where it lies now. */
export interface Ageing {
  readonly start: IsoDate
  /** Normal equivalent deviates lost from the start up to a day that is not after today. Never falls. */
  lostOn(day: IsoDate): number
  /** Deviates lost in a day from now on. */
  readonly dailyAhead: number
}

export interface DatedTest {
  readonly on: IsoDate
  readonly tested: number
  readonly sprouted: number
}

/** When a lot crosses its threshold: one in twenty earlier than `early`; null: not within {@link FAR_YEARS} years. */
export interface Crossing {
  readonly early: IsoDate | null
  readonly middle: IsoDate | null
  readonly late: IsoDate | null
}

/** What is thought of a lot today. */
export interface Forecast {
  readonly start: Band
  readonly today: Band
  readonly crossing: Crossing
  /** The chance that it is below its threshold today, 0 to 1. */
  readonly chanceBelow: number
  /** Deviates that it loses in a year where it lies now, as likely more as less. */
  readonly deviatesAYear: number
  readonly learnt: Learnt<DatedTest & PlacedTest>
}

/** Further ahead no date is told. */
export const FAR_YEARS = 200
const FAR_DAYS = FAR_YEARS * 365

/** Forecasts one lot from its tests, in any order, and how it was kept. */
export function forecastOf(
  prior: ViabilityPrior,
  tests: readonly DatedTest[],
  ageing: Ageing,
  threshold: Threshold,
  today: IsoDate,
): Forecast {
  const placed = tests
    .map((test) => ({ ...test, lost: ageing.lostOn(test.on) }))
    .toSorted((one, other) => one.lost - other.lost || (one.on < other.on ? -1 : 1))
  const learnt = learnFromTests(prior, placed)
  const lostToday = ageing.lostOn(today)
  const { low, middle, high } = crossingBand(learnt.posterior, threshold)
  const dayOf = (lost: number) => dayOfLoss(ageing, lost, lostToday, today)
  return {
    start: viabilityBand(learnt.posterior, 0),
    today: viabilityBand(learnt.posterior, lostToday),
    crossing: { early: dayOf(low), middle: dayOf(middle), late: dayOf(high) },
    chanceBelow: chanceBelow(learnt.posterior, threshold, lostToday),
    deviatesAYear: middlePace(learnt.posterior) * ageing.dailyAhead * DAYS_IN_YEAR,
    learnt,
  }
}

/** The day on which so much was or will be lost; null where that is too far ahead to tell. */
function dayOfLoss(ageing: Ageing, lost: number, lostToday: number, today: IsoDate): IsoDate | null {
  if (lost >= lostToday) {
    const ahead = Math.ceil((lost - lostToday) / ageing.dailyAhead)
    return ahead <= FAR_DAYS ? addDays(today, ahead) : null
  }
  let [from, to] = [0, Math.max(0, daysBetween(ageing.start, today))]
  while (to - from > 1) {
    const day = Math.floor((from + to) / 2)
    if (ageing.lostOn(addDays(ageing.start, day)) < lost) from = day
    else to = day
  }
  return addDays(ageing.start, lost <= 0 ? 0 : to)
}

/** One point of a drawn curve. */
export interface CurvePoint extends Band {
  readonly on: IsoDate
}

/** The share alive over time, from the start to a day ahead, at even steps of whole days. */
export function curveOf({ learnt }: Forecast, ageing: Ageing, today: IsoDate, until: IsoDate): CurvePoint[] {
  const steps = 48
  const days = Math.max(1, daysBetween(ageing.start, until))
  const lostToday = ageing.lostOn(today)
  return Array.from({ length: steps + 1 }, (_, step) => {
    const on = addDays(ageing.start, Math.round((days * step) / steps))
    const ahead = daysBetween(today, on)
    const lost = ahead > 0 ? lostToday + ahead * ageing.dailyAhead : ageing.lostOn(on)
    return { on, ...viabilityBand(learnt.posterior, lost) }
  })
}
