import type { LotForecast } from '../../../../db/contract/care-operations.ts'

/** The drawing's size in its own units, and the field that the curve has inside it. */
export const DRAWING = { width: 640, height: 300 } as const
const FIELD = { left: 52, right: 624, top: 14, bottom: 262 } as const

const dayNumber = (day: string) => Date.parse(`${day}T00:00:00Z`) / 86_400_000

/** Where days and parts alive lie in the drawing. */
export interface CurveScale {
  readonly field: typeof FIELD
  x(day: string): number
  y(part: number): number
  /** First days of years to write below, eight at most. */
  readonly years: readonly string[]
}

export function curveScale(forecast: LotForecast): CurveScale {
  const from = dayNumber(forecast.start)
  const to = Math.max(from + 1, dayNumber(forecast.curve.at(-1)?.on ?? forecast.on))
  const x = (day: string) => FIELD.left + ((FIELD.right - FIELD.left) * (dayNumber(day) - from)) / (to - from)
  const y = (part: number) => FIELD.bottom - (FIELD.bottom - FIELD.top) * part
  return { field: FIELD, x, y, years: yearsBetween(forecast.start, forecast.curve.at(-1)?.on ?? forecast.on) }
}

function yearsBetween(from: string, to: string): string[] {
  const [first, last] = [Number(from.slice(0, 4)) + 1, Number(to.slice(0, 4))]
  const step = [1, 2, 5, 10, 20, 50].find((years) => (last - first) / years <= 7) ?? 100
  const begin = Math.ceil(first / step) * step
  const years = Array.from(
    { length: Math.max(0, Math.floor((last - begin) / step) + 1) },
    (_, index) => begin + index * step,
  )
  return years.map((year) => `${year}-01-01`)
}

/** The band as one closed outline, and the middle as a line: SVG points. */
export function outlines({ curve }: LotForecast, { x, y }: CurveScale): { band: string; middle: string } {
  const at = (part: (point: LotForecast['curve'][number]) => number) =>
    curve.map((point) => `${x(point.on).toFixed(1)},${y(part(point)).toFixed(1)}`)
  return {
    band: [...at(({ high }) => high), ...at(({ low }) => low).toReversed()].join(' '),
    middle: at(({ middle }) => middle).join(' '),
  }
}
