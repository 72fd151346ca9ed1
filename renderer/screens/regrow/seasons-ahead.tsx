import { scaleLinear } from 'd3-scale'
import { area, line } from 'd3-shape'
import type { NeedRecord } from '../../../db/contract/regeneration-operations.ts'
import { message } from '../../../db/messages/message.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'

interface SeasonsAheadProps {
  readonly need: NeedRecord
  readonly nextYear: number
}

const WIDTH = 560
const HEIGHT = 190
const LEFT = 8
const RIGHT = 184
const TOP = 14
const BOTTOM = 26

/** Living seeds at each sowing to come if nothing is regrown: a picture, and the same as a table. */
export function SeasonsAhead({ need, nextYear }: SeasonsAheadProps) {
  const format = useFormat()
  const { t } = useTexts()
  const cost = need.outlook.find(({ year }) => year === nextYear)?.cost ?? need.cost
  return (
    <section className="pane-part" aria-label={t('needs.if-you-wait')}>
      <h3>{t('needs.if-you-wait')}</h3>
      <LivingPicture need={need} />
      <RowTable
        className="need-seasons"
        label={t('needs.sowing-by-sowing')}
        rowHeads
        rows={need.outlook}
        keyOf={({ year }) => year}
        rowProps={({ year }) => ({ 'data-coming': year === nextYear || undefined })}
        columns={[
          [t('needs.sowing-of'), ({ year }) => year],
          [t('needs.living-about-column', { unit: need.stock.unit }), ({ living }) => format.number(living)],
          [t('needs.likely-between'), ({ low, high }) => t('needs.low-to-high', { low, high })],
          [t('needs.no-full'), (season) => format.percent(season.cost)],
        ]}
      />
      <p className="soft">{t('needs.waiting', { cost: { part: cost }, year: String(nextYear) })}</p>
    </section>
  )
}

function LivingPicture({ need }: { readonly need: NeedRecord }) {
  const { t } = useTexts()
  const { outlook, stock } = need
  const one = stock.keep / need.regrowings
  const most = Math.max(stock.keep, ...outlook.map(({ high }) => Math.min(high, 2.5 * stock.keep))) * 1.05
  const x = scaleLinear([0, outlook.length - 1], [LEFT + 18, WIDTH - RIGHT - 18])
  const y = scaleLinear([0, most], [HEIGHT - BOTTOM, TOP]).clamp(true)
  type Season = NeedRecord['outlook'][number]
  const at = (_: Season, index: number) => x(index)
  const band =
    area<Season>(
      at,
      ({ low }) => y(low),
      ({ high }) => y(high),
    )(outlook) ?? ''
  const living = line<Season>(at, (season) => y(season.living))(outlook) ?? ''
  const rules = [
    { at: stock.keep, words: t('needs.to-keep-rule', { keep: Math.ceil(stock.keep) }) },
    ...(need.regrowings > 1 ? [{ at: one, words: t('needs.for-one-rule', { seeds: Math.ceil(one) }) }] : []),
  ]
  const words = t('needs.living-picture', {
    unit: stock.unit,
    sowings: {
      list: outlook.map(({ year, living }) => message('needs.living-at', { year: String(year), living })),
    },
  })
  return (
    <svg className="chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words}>
      <line className="chart-rule" x1={LEFT} x2={WIDTH - RIGHT} y1={y(0)} y2={y(0)} />
      {outlook.some(({ high }) => high > 0) && <path className="chart-band" d={band} />}
      {rules.map(({ at, words }) => (
        <g key={words}>
          <line className="need-rule" x1={LEFT} x2={WIDTH - RIGHT} y1={y(at)} y2={y(at)} />
          <text x={WIDTH - RIGHT + 6} y={y(at) + 5}>
            {words}
          </text>
        </g>
      ))}
      <path className="chart-line" d={living} />
      {outlook.map(({ year, living }, index) => (
        <g key={year}>
          <circle className="chart-dot" cx={x(index)} cy={y(living)} r="4" />
          <text x={x(index)} y={HEIGHT - 6}>
            {year}
          </text>
        </g>
      ))}
    </svg>
  )
}
