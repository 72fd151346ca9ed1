interface IntervalBarProps {
  readonly share: number
  readonly low: number
  readonly high: number
  readonly threshold: number
  /** The same in words. */
  readonly words: string
}

const WIDTH = 560
const EDGE = 16
const at = (part: number) => EDGE + part * (WIDTH - 2 * EDGE)

/** How alive the lot may be: a whisker from low to high, the share found, and the threshold as a ruled line. */
export function IntervalBar({ share, low, high, threshold, words }: IntervalBarProps) {
  return (
    <svg className="chart" viewBox={`0 0 ${WIDTH} 58`} role="img" aria-label={words}>
      {[0, 0.25, 0.5, 0.75, 1].map((part) => (
        <g key={part}>
          <line className="chart-rule" x1={at(part)} x2={at(part)} y1={22} y2={38} />
          <text x={at(part)} y={54} textAnchor="middle">
            {100 * part} %
          </text>
        </g>
      ))}
      <line className="chart-rule" x1={at(0)} x2={at(1)} y1={30} y2={30} />
      <line className="chart-limit" x1={at(threshold)} x2={at(threshold)} y1={14} y2={42} />
      <text x={at(threshold)} y={11} textAnchor={threshold > 0.8 ? 'end' : 'middle'}>
        threshold {Math.round(100 * threshold)} %
      </text>
      <path
        className="interval-whisker"
        d={`M ${at(low)} 24 V 36 M ${at(low)} 30 H ${at(high)} M ${at(high)} 24 V 36`}
      />
      <path
        className="interval-seed"
        d={`M ${at(share)} 22 c 5 4 6 8 4 12 c -1 3 -2 4 -4 4 c -2 0 -3 -1 -4 -4 c -2 -4 -1 -8 4 -12 Z`}
      />
    </svg>
  )
}
