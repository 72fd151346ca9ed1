import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { type Sprout, sproutPicture, sproutsInWords } from './sprouts.ts'

const WIDTH = 560
const HEIGHT = 200
const LEFT = 44
const RIGHT = 16
const TOP = 18
const BOTTOM = 26
const WIDE = WIDTH - LEFT - RIGHT
const TALL = HEIGHT - TOP - BOTTOM
const MOST_DAY_MARKS = 10

/** Seedlings by day, each count a sprout as tall as the part that had come up by then; beneath it the same in words. */
export function SproutChart({ test }: { readonly test: TestRecord }) {
  const { sprouts, days } = sproutPicture(test)
  const words = sproutsInWords(test)
  if (sprouts.length === 0) return null
  return (
    <figure>
      <svg
        className="chart"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Germination by day. ${words}`}
      >
        <Ruling days={days} />
        {[test.firstDay, test.finalDay].map((day) =>
          day === null ? null : (
            <line
              key={day}
              className="sprouts-wanted"
              x1={xAt(day / days)}
              x2={xAt(day / days)}
              y1={TOP}
              y2={yAt(0)}
            />
          ),
        )}
        <path className="sprouts-steps" d={stepsOf(sprouts)} />
        {sprouts.map((sprout) => (
          <OneSprout key={sprout.day} sprout={sprout} />
        ))}
      </svg>
      <figcaption>{words}</figcaption>
    </figure>
  )
}

const xAt = (part: number) => LEFT + part * WIDE
const yAt = (part: number) => TOP + (1 - part) * TALL

/** Ruled lines at each quarter, and the days beneath. */
function Ruling({ days }: { readonly days: number }) {
  const step = Math.ceil(days / MOST_DAY_MARKS)
  const marks = Array.from({ length: Math.floor(days / step) + 1 }, (_, index) => index * step)
  return (
    <g>
      {[0, 0.25, 0.5, 0.75, 1].map((part) => (
        <g key={part}>
          <line className="chart-rule" x1={LEFT} x2={LEFT + WIDE} y1={yAt(part)} y2={yAt(part)} />
          <text x={LEFT - 6} y={yAt(part) + 4} textAnchor="end">
            {100 * part} %
          </text>
        </g>
      ))}
      {marks.map((day) => (
        <text key={day} x={xAt(day / days)} y={HEIGHT - 8} textAnchor="middle">
          {day === 0 ? 'laid out' : day}
        </text>
      ))}
    </g>
  )
}

/** What is known between two counts: nothing new, so the line runs level. */
function stepsOf(sprouts: readonly Sprout[]): string {
  const steps = sprouts.map(({ x, y }) => `H ${xAt(x)} V ${yAt(y)}`)
  return `M ${xAt(0)} ${yAt(0)} ${steps.join(' ')}`
}

function OneSprout({ sprout }: { readonly sprout: Sprout }) {
  const x = xAt(sprout.x)
  const y = yAt(sprout.y)
  return (
    <g className="chart-dot sprouts-one">
      <line x1={x} x2={x} y1={yAt(0)} y2={y} />
      <path
        d={`M ${x} ${y} c -9 0 -12 -4 -13 -10 c 8 0 13 4 13 10 c 0 -6 5 -10 13 -10 c -1 6 -4 10 -13 10 Z`}
      />
    </g>
  )
}
