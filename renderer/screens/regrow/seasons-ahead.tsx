import { scaleLinear } from 'd3-scale'
import { area, line } from 'd3-shape'
import type { NeedRecord } from '../../../db/contract/regeneration-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'

interface SeasonsAheadProps {
  readonly need: NeedRecord
  readonly nextYear: number
}

const WIDTH = 560
const HEIGHT = 190
const LEFT = 8
const RIGHT = 150
const TOP = 14
const BOTTOM = 26

/** Living seeds at each sowing to come if nothing is regrown: a picture, and the same as a table. */
export function SeasonsAhead({ need, nextYear }: SeasonsAheadProps) {
  const format = useFormat()
  const cost = need.outlook.find(({ year }) => year === nextYear)?.cost ?? need.cost
  return (
    <section className="pane-part" aria-label="If you wait">
      <h3>If you wait</h3>
      <LivingPicture need={need} />
      <RowTable
        className="need-seasons"
        label="What is left, sowing by sowing"
        rowHeads
        rows={need.outlook}
        keyOf={({ year }) => year}
        rowProps={({ year }) => ({ 'data-coming': year === nextYear || undefined })}
        columns={[
          ['Sowing of', ({ year }) => year],
          [`living ${need.stock.unit}, about`, ({ living }) => format.number(living)],
          ['likely between', ({ low, high }) => `${format.number(low)} to ${format.number(high)}`],
          ['no full regrowing', (season) => format.percent(season.cost)],
        ]}
      />
      <p className="soft">
        Waiting a season: {format.percent(cost)} chance that {nextYear} finds too few. Ageing is a rule of
        thumb from the years that the crop’s seed keeps; members are thought to go on taking what can be
        spared.
      </p>
    </section>
  )
}

function LivingPicture({ need }: { readonly need: NeedRecord }) {
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
    { at: stock.keep, words: `${Math.ceil(stock.keep)} to keep` },
    ...(need.regrowings > 1 ? [{ at: one, words: `${Math.ceil(one)} for one regrowing` }] : []),
  ]
  const words = `Living ${stock.unit} at the sowings of ${outlook.map(({ year, living }) => `${year}: about ${living}`).join(', ')}`
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
