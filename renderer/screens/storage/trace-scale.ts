import type { ClimateDay } from '../../../db/contract/storage-operations.ts'

/** The drawing's size in its own units, and the field of one of its two halves. */
export const TRACE = { width: 640, left: 56, right: 628, bandHeight: 120, gap: 26, top: 12 } as const

/** Where values of one kind lie in the drawing. */
export interface TraceBand {
  readonly top: number
  readonly bottom: number
  readonly marks: readonly number[]
  y(value: number): number
}

/** A band of the drawing that holds some values, with round numbers to write beside it. */
export function traceBand(values: readonly number[], top: number): TraceBand {
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const step = [1, 2, 5, 10, 20, 50].find((size) => (most - least) / size <= 4) ?? 100
  const low = Math.floor(least / step) * step
  const high = Math.max(low + step, Math.ceil(most / step) * step)
  const bottom = top + TRACE.bandHeight
  return {
    top,
    bottom,
    marks: Array.from({ length: Math.round((high - low) / step) + 1 }, (_, index) => low + index * step),
    y: (value) => bottom - (TRACE.bandHeight * (value - low)) / (high - low),
  }
}

/** Where the day or month at an index lies, its middle. */
export function traceX(index: number, of: number): number {
  return TRACE.left + ((TRACE.right - TRACE.left) * (index + 0.5)) / of
}

/** The lowest and highest of each day as one closed outline, and the means as a line: SVG points. */
export function traceOutlines(
  days: readonly ClimateDay[],
  band: TraceBand,
  part: (day: ClimateDay) => { low: number | null; mean: number | null; high: number | null },
): { span: string; mean: string } {
  const points = (of: 'low' | 'mean' | 'high') =>
    days.flatMap((day, index) => {
      const value = part(day)[of]
      return value === null ? [] : [`${traceX(index, days.length).toFixed(1)},${band.y(value).toFixed(1)}`]
    })
  return {
    span: [...points('high'), ...points('low').toReversed()].join(' '),
    mean: points('mean').join(' '),
  }
}
