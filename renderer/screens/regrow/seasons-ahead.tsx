import type { NeedRecord } from '../../../db/contract/regrow-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'

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
      <table className="plain-table need-seasons" aria-label="What is left, sowing by sowing">
        <thead>
          <tr>
            <th scope="col">Sowing of</th>
            <th scope="col">living {need.stock.unit}, about</th>
            <th scope="col">likely between</th>
            <th scope="col">no full regrowing</th>
          </tr>
        </thead>
        <tbody>
          {need.outlook.map((season) => (
            <tr key={season.year} {...(season.year === nextYear ? { 'data-coming': '' } : {})}>
              <th scope="row">{season.year}</th>
              <td>{format.number(season.living)}</td>
              <td>
                {format.number(season.low)} to {format.number(season.high)}
              </td>
              <td>{format.percent(season.cost)}</td>
            </tr>
          ))}
        </tbody>
      </table>
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
  const x = (index: number) => LEFT + 18 + (index * (WIDTH - LEFT - RIGHT - 36)) / (outlook.length - 1)
  const y = (seeds: number) => HEIGHT - BOTTOM - (Math.min(seeds, most) / most) * (HEIGHT - TOP - BOTTOM)
  const band = [
    ...outlook.map(({ high }, index) => `${x(index)},${y(high)}`),
    ...outlook.map(({ low }, index) => `${x(index)},${y(low)}`).toReversed(),
  ].join(' ')
  const rules = [
    { at: stock.keep, words: `${Math.ceil(stock.keep)} to keep` },
    ...(need.regrowings > 1 ? [{ at: one, words: `${Math.ceil(one)} for one regrowing` }] : []),
  ]
  const words = `Living ${stock.unit} at the sowings of ${outlook.map(({ year, living }) => `${year}: about ${living}`).join(', ')}`
  return (
    <svg className="chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words}>
      <line className="chart-rule" x1={LEFT} x2={WIDTH - RIGHT} y1={y(0)} y2={y(0)} />
      {outlook.some(({ high }) => high > 0) && <polygon className="chart-band" points={band} />}
      {rules.map(({ at, words }) => (
        <g key={words}>
          <line className="need-rule" x1={LEFT} x2={WIDTH - RIGHT} y1={y(at)} y2={y(at)} />
          <text x={WIDTH - RIGHT + 6} y={y(at) + 5}>
            {words}
          </text>
        </g>
      ))}
      <polyline
        className="chart-line"
        points={outlook.map(({ living }, index) => `${x(index)},${y(living)}`).join(' ')}
      />
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
