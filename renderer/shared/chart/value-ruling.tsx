interface ValueRulingProps {
  readonly marks: readonly number[]
  /** Where a value lies in the drawing. */
  readonly y: (value: number) => number
  readonly left: number
  readonly right: number
  readonly words: (value: number) => string
}

/** Lines across a chart at some values, each with its words before it. */
export function ValueRuling({ marks, y, left, right, words }: ValueRulingProps) {
  return marks.map((mark) => (
    <g key={mark}>
      <line className="chart-rule" x1={left} x2={right} y1={y(mark)} y2={y(mark)} />
      <text x={left - 8} y={y(mark)} dy="0.35em" textAnchor="end">
        {words(mark)}
      </text>
    </g>
  ))
}

/** The quarters of a whole, as parts of it. */
export const QUARTERS = [0, 0.25, 0.5, 0.75, 1]
