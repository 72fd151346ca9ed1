/** From one number up to another, both taken in. */
export interface Span {
  readonly from: number
  readonly to: number
}

/** The nearest number inside a span. */
export function within(value: number, { from, to }: Span): number {
  return Math.min(Math.max(value, from), to)
}
