import { scaleLinear, scaleUtc } from 'd3-scale'
import { area, line } from 'd3-shape'
import type { LotForecast } from '../../../../db/contract/care-operations.ts'

/** The drawing's size in its own units, and the field that the curve has inside it. */
export const DRAWING = { width: 640, height: 300 } as const
const FIELD = { left: 52, right: 624, top: 14, bottom: 262 } as const
const DAY_MS = 86_400_000

/** Where days and parts alive lie in the drawing. */
export interface CurveScale {
  readonly field: typeof FIELD
  x(day: string): number
  y(part: number): number
  /** First days of years to write below, eight at most. */
  readonly years: readonly string[]
}

export function curveScale(forecast: LotForecast): CurveScale {
  const from = Date.parse(forecast.start)
  const to = Math.max(from + DAY_MS, Date.parse(forecast.curve.at(-1)?.on ?? forecast.on))
  const days = scaleUtc([from, to], [FIELD.left, FIELD.right])
  return {
    field: FIELD,
    x: (day) => days(Date.parse(day)),
    y: scaleLinear([0, 1], [FIELD.bottom, FIELD.top]),
    // A short span is divided by months, of which only the first of a year is written.
    years: days
      .ticks(5)
      .map((tick) => tick.toISOString())
      .filter((tick) => tick.endsWith('-01-01T00:00:00.000Z'))
      .map((tick) => tick.slice(0, 10)),
  }
}

/** The band as one closed outline, and the middle as a line: SVG paths. */
export function outlines({ curve }: LotForecast, { x, y }: CurveScale): { band: string; middle: string } {
  type Point = LotForecast['curve'][number]
  const at = ({ on }: Point) => x(on)
  return {
    band:
      area<Point>(
        at,
        ({ low }) => y(low),
        ({ high }) => y(high),
      )(curve) ?? '',
    middle: line<Point>(at, ({ middle }) => y(middle))(curve) ?? '',
  }
}
