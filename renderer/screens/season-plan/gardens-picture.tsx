import { extent } from 'd3-array'
import { scaleLinear } from 'd3-scale'
import type { Value } from '../../../db/contract/contract.ts'
import type { GrowingSite, PlanLine } from '../../../db/contract/regeneration-operations.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { clashingGardens } from './clashing-gardens.ts'

interface GardensPictureProps {
  readonly sites: readonly GrowingSite[]
  readonly lines: readonly PlanLine[]
  readonly clashes: Value<'season-plan.check'>['clashes']
}

const SIZE = 560
const EDGE = 56

/** Gardens where they lie, by their numbers, a circle as wide as the farthest isolation of what grows open there. What clashes is struck through: a line between two gardens, a cross beside one. */
export function GardensPicture({ sites, lines, clashes }: GardensPictureProps) {
  const { t } = useTexts()
  const placed = sites.flatMap((site) => (site.position === null ? [] : [{ ...site, at: site.position }]))
  if (placed.length === 0) return <p className="soft">{t('season.none-placed')}</p>
  const [west = 0, east = 0] = extent(placed, ({ at }) => at.east)
  const [south = 0, north = 0] = extent(placed, ({ at }) => at.north)
  const wide = Math.max(east - west, north - south, 100)
  const scale = (SIZE - 2 * EDGE) / wide
  const x = scaleLinear([west, west + wide], [EDGE, SIZE - EDGE])
  const y = scaleLinear([south, south + wide], [SIZE - EDGE, EDGE])
  const clashing = clashingGardens(clashes, lines).map((gardens) => ({
    key: gardens.join(' '),
    at: gardens.flatMap((siteId) => placed.find((site) => site.siteId === siteId) ?? []),
  }))
  const missing = sites.length - placed.length
  const words = t('season.picture', {
    gardens: placed.length,
    metres: Math.round(wide),
    clashes: clashes.length,
  })
  return (
    <>
      <svg className="chart map plan-picture" viewBox={`0 0 ${SIZE} ${SIZE}`} role="img" aria-label={words}>
        {placed.map((site) => {
          const open = lines.filter((line) => line.siteId === site.siteId && line.way !== 'covered')
          const widest = Math.max(0, ...open.map(({ isolationM }) => isolationM))
          return (
            <circle
              key={site.siteId}
              className="plan-circle"
              cx={x(site.at.east)}
              cy={y(site.at.north)}
              r={Math.min(widest * scale, SIZE)}
            />
          )
        })}
        {clashing.map(({ key, at: [a, b] }) =>
          a === undefined || b === undefined ? null : (
            <line
              key={key}
              className="plan-between"
              x1={x(a.at.east)}
              y1={y(a.at.north)}
              x2={x(b.at.east)}
              y2={y(b.at.north)}
            />
          ),
        )}
        {placed.map((site) => (
          <g key={site.siteId} className="plan-spot">
            <path d={`M${x(site.at.east) - 11} ${y(site.at.north) - 11} h22 v22 h-22 Z`} />
            <text x={x(site.at.east)} y={y(site.at.north) + 5}>
              {sites.findIndex(({ siteId }) => siteId === site.siteId) + 1}
            </text>
          </g>
        ))}
        {clashing.map(({ key, at: [a, b] }) => {
          if (a === undefined) return null
          const [mx, my] =
            b === undefined
              ? [x(a.at.east) + 22, y(a.at.north)]
              : [(x(a.at.east) + x(b.at.east)) / 2, (y(a.at.north) + y(b.at.north)) / 2]
          return (
            <g key={key} className="plan-struck">
              <path d={`M${mx - 8} ${my - 8} l16 16 m0 -16 l-16 16`} />
              <text x={mx + 12} y={my - 6}>
                {t('season.clash')}
              </text>
            </g>
          )
        })}
        <g className="plan-scale">
          <path d={`M${EDGE} ${SIZE - 12} h${roundLength(wide) * scale}`} />
          <text x={EDGE} y={SIZE - 18}>
            {roundLength(wide)} m
          </text>
        </g>
      </svg>
      {missing > 0 && <p className="soft">{t('season.not-drawn', { gardens: missing })}</p>}
    </>
  )
}

/** A round length of about a third of the picture. */
function roundLength(wide: number): number {
  const third = wide / 3
  const ten = 10 ** Math.floor(Math.log10(third))
  return Math.max(1, Math.floor(third / ten) * ten)
}
