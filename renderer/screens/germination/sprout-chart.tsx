import { range } from 'd3-array'
import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { QUARTERS, ValueRuling } from '../../shared/chart/value-ruling.tsx'
import { useTexts } from '../../shared/format/use-texts.ts'
import { DRAWING, sproutScale, sproutsTold } from './sprouts.ts'

const MOST_DAY_MARKS = 10

/** Seedlings by day, each count a sprout as tall as the part that had come up by then; beneath it the same in words. */
export function SproutChart({ test }: { readonly test: TestRecord }) {
  const { days, x, y, sprouts, steps } = sproutScale(test)
  const { say, t } = useTexts()
  const parts = sproutsTold(test).map(say)
  const words = parts.length === 0 ? '' : `${parts.join('; ')}.`
  const { width, height, left, right, top, bottom } = DRAWING
  return (
    <figure>
      <svg
        className="chart"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={t('germination.chart', { reading: words })}
      >
        <ValueRuling marks={QUARTERS} words={(part) => `${100 * part} %`} {...{ y, left, right }} />
        {range(0, days + 1, Math.ceil(days / MOST_DAY_MARKS)).map((day) => (
          <text key={day} x={x(day)} y={height - 8} textAnchor="middle">
            {day === 0 ? t('germination.laid-out-mark') : day}
          </text>
        ))}
        {[test.firstDay, test.finalDay].map((day) =>
          day === null ? null : (
            <line key={day} className="sprouts-wanted" x1={x(day)} x2={x(day)} y1={top} y2={bottom} />
          ),
        )}
        <path className="sprouts-steps" d={steps} />
        {sprouts.map((sprout) => (
          <g key={sprout.day} className="chart-dot sprouts-one">
            <line x1={sprout.x} x2={sprout.x} y1={bottom} y2={sprout.y} />
            <path
              d={`M ${sprout.x} ${sprout.y} c -9 0 -12 -4 -13 -10 c 8 0 13 4 13 10 c 0 -6 5 -10 13 -10 c -1 6 -4 10 -13 10 Z`}
            />
          </g>
        ))}
      </svg>
      <figcaption>{words}</figcaption>
    </figure>
  )
}
