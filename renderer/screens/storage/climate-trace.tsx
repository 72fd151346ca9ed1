import { useId } from 'react'
import type { ClimateDay, PlaceClimate } from '../../../db/contract/storage-operations.ts'
import type { Format } from '../../shared/format/format.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { TRACE, type TraceBand, traceBand, traceOutlines, traceX } from './trace-scale.ts'

const temperatureOf = ({ low, mean, high }: ClimateDay) => ({ low, mean, high })
const humidityOf = (day: ClimateDay) => ({
  low: day.lowHumidity,
  mean: day.meanHumidity,
  high: day.highHumidity,
})

/** Temperature and humidity day by day: the mean as a line, the lowest and highest as a soft field, the limit ruled. */
export function ClimateTrace({ climate }: { readonly climate: PlaceClimate }) {
  const id = useId()
  const format = useFormat()
  const { trace, limits } = climate
  const humid = trace.some(({ meanHumidity }) => meanHumidity !== null)
  const warmth = traceBand(
    [...trace.flatMap(({ low, high }) => [low, high]), ...known(limits.highestCelsius)],
    TRACE.top,
  )
  const damp = traceBand(
    [
      ...trace.flatMap(({ lowHumidity, highHumidity }) => [...known(lowHumidity), ...known(highHumidity)]),
      ...known(limits.highestHumidity),
    ],
    warmth.bottom + TRACE.gap,
  )
  const last = humid ? damp : warmth
  return (
    <figure className="stack-2">
      <svg
        className="chart"
        viewBox={`0 0 ${TRACE.width} ${last.bottom + 28}`}
        role="img"
        aria-labelledby={id}
      >
        <title id={id}>{`Climate by ${climate.traceBy}. ${climate.words.join(' ')}`}</title>
        <Band trace={trace} band={warmth} part={temperatureOf} unit="°C" limit={limits.highestCelsius} />
        {humid && (
          <Band trace={trace} band={damp} part={humidityOf} unit="%" limit={limits.highestHumidity} />
        )}
        <Days trace={trace} below={last.bottom} format={format} />
      </svg>
      <figcaption className="soft">
        {humid ? 'Temperature above, humidity below: ' : 'Temperature: '}
        the line is the mean of each {climate.traceBy}, the field goes from its lowest to its highest.
      </figcaption>
    </figure>
  )
}

function known(value: number | null): number[] {
  return value === null ? [] : [value]
}

interface BandProps {
  readonly trace: readonly ClimateDay[]
  readonly band: TraceBand
  readonly part: typeof humidityOf
  readonly unit: string
  readonly limit: number | null
}

function Band({ trace, band, part, unit, limit }: BandProps) {
  const { span, mean } = traceOutlines(trace, band, part)
  return (
    <g>
      {band.marks.map((mark) => (
        <g key={mark}>
          <line className="chart-rule" x1={TRACE.left} x2={TRACE.right} y1={band.y(mark)} y2={band.y(mark)} />
          <text x={TRACE.left - 8} y={band.y(mark) + 5} textAnchor="end">
            {`${mark < 0 ? '−' : ''}${Math.abs(mark)} ${unit}`}
          </text>
        </g>
      ))}
      <polygon className="trace-span" points={span} />
      <polyline className="trace-mean" points={mean} />
      {trace.length === 1 && trace[0] !== undefined && part(trace[0]).mean !== null && (
        <circle className="trace-one" cx={traceX(0, 1)} cy={band.y(part(trace[0]).mean ?? 0)} r="4" />
      )}
      {limit !== null && (
        <g className="chart-limit">
          <line x1={TRACE.left} x2={TRACE.right} y1={band.y(limit)} y2={band.y(limit)} />
          <text x={TRACE.right} y={band.y(limit) - 5} textAnchor="end">
            at most
          </text>
        </g>
      )}
    </g>
  )
}

function Days({
  trace,
  below,
  format,
}: {
  readonly trace: readonly ClimateDay[]
  readonly below: number
  readonly format: Format
}) {
  const last = trace.length - 1
  const shown = [...new Set([0, Math.floor(last / 2), last])]
  return (
    <g>
      {shown.map((index) => {
        const anchor = index === 0 && last > 0 ? 'start' : index === last && last > 0 ? 'end' : 'middle'
        return (
          <text key={index} x={traceX(index, trace.length)} y={below + 20} textAnchor={anchor}>
            {format.day(trace[index]?.on ?? '')}
          </text>
        )
      })}
    </g>
  )
}
