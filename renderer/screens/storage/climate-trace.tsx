import { useId } from 'react'
import type { ClimateDay, PlaceClimate } from '../../../db/contract/storage-operations.ts'
import { ValueRuling } from '../../shared/chart/value-ruling.tsx'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
  const { trace, traceBy, limits } = climate
  const humid = trace.some(({ meanHumidity }) => meanHumidity !== null)
  const warmth = traceBand(
    trace.flatMap(({ low, high }) => [low, high]),
    limits.highestCelsius,
    TRACE.top,
  )
  const damp = traceBand(
    trace.flatMap(({ lowHumidity, highHumidity }) => [lowHumidity, highHumidity]),
    limits.highestHumidity,
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
        <title id={id}>{`${t(`storage.trace-by-${traceBy}`)} ${climate.words.join(' ')}`}</title>
        <Band trace={trace} band={warmth} part={temperatureOf} unit="°C" />
        {humid && <Band trace={trace} band={damp} part={humidityOf} unit="%" />}
        <Days trace={trace} y={last.bottom + 20} />
      </svg>
      <figcaption className="soft">
        {t('storage.trace-means', { drawn: humid ? 'both' : 'temperature', by: traceBy })}
      </figcaption>
    </figure>
  )
}

interface BandProps {
  readonly trace: readonly ClimateDay[]
  readonly band: TraceBand
  readonly part: typeof humidityOf
  readonly unit: string
}

function Band({ trace, band, part, unit }: BandProps) {
  const { t } = useTexts()
  const { limit } = band
  const { span, mean } = traceOutlines(trace, band, part)
  return (
    <g>
      <ValueRuling
        marks={band.marks}
        y={band.y}
        left={TRACE.left}
        right={TRACE.right}
        words={(mark) => `${mark < 0 ? '−' : ''}${Math.abs(mark)} ${unit}`}
      />
      <path className="trace-span" d={span} />
      <path className="trace-mean" d={mean} />
      {trace.length === 1 && trace[0] !== undefined && part(trace[0]).mean !== null && (
        <circle className="trace-one" cx={traceX(0, 1)} cy={band.y(part(trace[0]).mean ?? 0)} r="4" />
      )}
      {limit !== null && (
        <g className="chart-limit">
          <line x1={TRACE.left} x2={TRACE.right} y1={band.y(limit)} y2={band.y(limit)} />
          <text x={TRACE.right} y={band.y(limit) - 5} textAnchor="end">
            {t('storage.trace-limit')}
          </text>
        </g>
      )}
    </g>
  )
}

function Days({ trace, y }: { readonly trace: readonly ClimateDay[]; readonly y: number }) {
  const format = useFormat()
  const last = trace.length - 1
  const shown = [...new Set([0, Math.floor(last / 2), last])]
  return (
    <g>
      {shown.map((index) => {
        const anchor = index === 0 && last > 0 ? 'start' : index === last && last > 0 ? 'end' : 'middle'
        return (
          <text key={index} x={traceX(index, trace.length)} y={y} textAnchor={anchor}>
            {format.day(trace[index]?.on ?? '')}
          </text>
        )
      })}
    </g>
  )
}
