import { extent } from 'd3-array'
import { type ScaleLinear, scaleLinear } from 'd3-scale'
import { area, line } from 'd3-shape'
import type { ClimateDay } from '../../../db/contract/storage-operations.ts'

/** The drawing's size in its own units, and the field of one of its two halves. */
export const TRACE = { width: 640, left: 56, right: 628, bandHeight: 120, gap: 26, top: 12 } as const

/** Where values of one kind lie in the drawing. */
export interface TraceBand {
  readonly bottom: number
  readonly marks: readonly number[]
  /** The highest that is wanted, ruled as well. */
  readonly limit: number | null
  readonly y: ScaleLinear<number, number>
}

/** A band of the drawing that holds some values and their limit, with round numbers to write beside it. */
export function traceBand(values: readonly (number | null)[], limit: number | null, top: number): TraceBand {
  const [least = 0, most = 0] = extent([...values, limit].filter((value) => value !== null))
  const low = Math.floor(least)
  const bottom = top + TRACE.bandHeight
  const y = scaleLinear([low, Math.max(low + 1, Math.ceil(most))], [bottom, top]).nice(3)
  return { bottom, limit, marks: y.ticks(3).filter(Number.isInteger), y }
}

/** Where the day or month at an index lies, its middle. */
export function traceX(index: number, of: number): number {
  return scaleLinear([0, of], [TRACE.left, TRACE.right])(index + 0.5)
}

/** The lowest and highest of each day as one closed outline, and the means as a line: SVG paths. */
export function traceOutlines(
  days: readonly ClimateDay[],
  { y }: TraceBand,
  part: (day: ClimateDay) => { low: number | null; mean: number | null; high: number | null },
): { span: string; mean: string } {
  const known = days.flatMap((day, index) => {
    const { low, mean, high } = part(day)
    return low === null || mean === null || high === null
      ? []
      : [{ x: traceX(index, days.length), low, mean, high }]
  })
  type Point = (typeof known)[number]
  const at = ({ x }: Point) => x
  return {
    span:
      area<Point>(
        at,
        ({ low }) => y(low),
        ({ high }) => y(high),
      )(known) ?? '',
    mean: line<Point>(at, ({ mean }) => y(mean))(known) ?? '',
  }
}
