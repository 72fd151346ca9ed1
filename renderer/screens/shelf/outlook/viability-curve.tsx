import { useId } from 'react'
import type { LotForecast } from '../../../../db/contract/care-operations.ts'
import { QUARTERS, ValueRuling } from '../../../shared/chart/value-ruling.tsx'
import { useFormat } from '../../../shared/format/use-format.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import { type CurveScale, curveScale, DRAWING, outlines } from './curve-scale.ts'
import './viability-curve.css'

interface ViabilityCurveProps {
  readonly forecast: LotForecast
  /** What the drawing says, for those who do not see it. */
  readonly reading: string
}

/** The part alive over the years: a soft band, tests with their intervals, the threshold as a ruled line, today as a mark. */
export function ViabilityCurve({ forecast, reading }: ViabilityCurveProps) {
  const id = useId()
  const scale = curveScale(forecast)
  const { band, middle } = outlines(forecast, scale)
  return (
    <svg
      className="chart curve"
      viewBox={`0 0 ${DRAWING.width} ${DRAWING.height}`}
      role="img"
      aria-labelledby={id}
      preserveAspectRatio="xMidYMid meet"
    >
      <title id={id}>{reading}</title>
      <Ruling scale={scale} />
      <path className="chart-band" d={band} />
      <Threshold forecast={forecast} scale={scale} />
      <path className="chart-line" d={middle} />
      <Today forecast={forecast} scale={scale} />
      {forecast.tests.map((test) => (
        <Test key={`${test.on} ${test.tested} ${test.sprouted}`} test={test} scale={scale} />
      ))}
    </svg>
  )
}

function Ruling({ scale: { field, x, y, years } }: { readonly scale: CurveScale }) {
  const format = useFormat()
  return (
    <g className="chart-rule">
      <ValueRuling marks={QUARTERS} y={y} left={field.left} right={field.right} words={format.percent} />
      {years.map((day) => (
        <g key={day}>
          <line x1={x(day)} x2={x(day)} y1={field.bottom} y2={field.bottom + 5} />
          <text x={x(day)} y={field.bottom + 23} textAnchor="middle">
            {day.slice(0, 4)}
          </text>
        </g>
      ))}
    </g>
  )
}

interface PartProps {
  readonly forecast: LotForecast
  readonly scale: CurveScale
}

function Threshold({ forecast, scale: { field, x, y } }: PartProps) {
  const { line, crossing, thresholdWords } = forecast
  const [from, to] = [crossing.early, crossing.late ?? forecast.curve.at(-1)?.on ?? null]
  const inside = (day: string) => Math.min(Math.max(x(day), field.left), field.right)
  const shown = crossing.middle !== null && x(crossing.middle) <= field.right
  return (
    <g className="chart-limit">
      <line x1={field.left} x2={field.right} y1={y(line)} y2={y(line)} />
      <text x={field.right} y={y(line) - 7} textAnchor="end">
        {thresholdWords}
      </text>
      {from !== null && to !== null && (
        <line className="curve-crossing" x1={inside(from)} x2={inside(to)} y1={y(line)} y2={y(line)} />
      )}
      {shown && crossing.middle !== null && (
        <path
          className="curve-crossing-middle"
          d={`M ${inside(crossing.middle)} ${y(line) - 8} l 7 8 l -7 8 l -7 -8 z`}
        />
      )}
    </g>
  )
}

function Today({ forecast, scale: { field, x } }: PartProps) {
  const { t } = useTexts()
  const at = x(forecast.on)
  const left = at > (field.left + field.right) / 2
  return (
    <g className="curve-today">
      <line x1={at} x2={at} y1={field.top} y2={field.bottom} />
      <text x={left ? at - 6 : at + 6} y={field.bottom - 8} textAnchor={left ? 'end' : 'start'}>
        {t('forecast.today')}
      </text>
    </g>
  )
}

function Test({
  test,
  scale: { x, y },
}: {
  readonly test: LotForecast['tests'][number]
  readonly scale: CurveScale
}) {
  const at = x(test.on)
  return (
    <g className={test.setAside ? 'curve-test curve-test-aside' : 'curve-test'}>
      <line x1={at} x2={at} y1={y(test.low)} y2={y(test.high)} />
      {[test.low, test.high].map((end) => (
        <line key={end} x1={at - 5} x2={at + 5} y1={y(end)} y2={y(end)} />
      ))}
      <circle cx={at} cy={y(test.middle)} r="5" />
    </g>
  )
}
