/** A day of a place and a figure of it, such as how fast seed aged on it. */
export interface DayFigure {
  /** Days since any one day. */
  readonly number: number
  readonly figure: number
}

/** How many days before and after one make the month that it is judged by. Judgement. */
const DAYS_TO_EITHER_SIDE = 15

/**
 * What a day of a place usually comes to: the median of the month around each day measured, and the mean of these.
 *
 * The median leaves out a door left open and a week that failed; the months keep summer and winter apart, each with the
 * days that were measured of it. Where most of a month was out of the ordinary, that is taken for the ordinary. Days in
 * order of time; 0 where there is none.
 */
export function usualDay(days: readonly DayFigure[]): number {
  let [sum, first, end] = [0, 0, 0]
  for (const { number } of days) {
    while ((days[first]?.number ?? number) < number - DAYS_TO_EITHER_SIDE) first += 1
    while ((days[end]?.number ?? Number.POSITIVE_INFINITY) <= number + DAYS_TO_EITHER_SIDE) end += 1
    sum += medianOf(days.slice(first, end))
  }
  return sum / Math.max(1, days.length)
}

function medianOf(days: readonly DayFigure[]): number {
  const sorted = Float64Array.from(days, ({ figure }) => figure).sort()
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]]
  return ((low ?? 0) + (high ?? 0)) / 2
}
