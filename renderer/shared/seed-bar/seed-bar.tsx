import { type SVGProps, useId } from 'react'
import type { NeedState } from '../../../db/domain/needs/need.ts'
import { useTexts } from '../format/use-texts.ts'
import './seed-bar.css'
import { type SeedBarFacts, type SeedBarParts, seedBarParts } from './seed-bar-scale.ts'

interface SeedBarProps extends SeedBarFacts {
  /** What the bar says in words, such as 'about 180 living seeds of the 225 to keep'. */
  readonly sentence: string
  /** How the accession stands: the living part has the colour of its mark, so that bar and word agree. */
  readonly state: NeedState
  readonly large?: boolean
}

/** Living seeds against what must be kept: solid living, hatched dead, a notch at keep, a whisker for the doubt. */
export function SeedBar({ sentence, state, large = false, ...facts }: SeedBarProps) {
  const hatch = useId()
  const { t } = useTexts()
  const parts = seedBarParts(facts)
  const { low, high } = facts
  const words =
    low === undefined || high === undefined || high <= low
      ? sentence
      : t('needs.bar', { sentence, low: Math.round(low), high: Math.round(high) })
  const height = large ? 34 : 20
  const bar = large ? { top: 6, tall: 16 } : { top: 4, tall: 9 }
  const { top, tall } = bar
  return (
    <svg
      className={`seed-bar seed-bar-${state}${large ? ' seed-bar-large' : ''}`}
      width="100%"
      height={height}
      role="img"
      aria-label={words}
    >
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className="seed-bar-hatch" x1="1" y1="0" x2="1" y2="5" />
        </pattern>
      </defs>
      <line className="seed-bar-ground" x1="0" x2="100%" y1={top + tall} y2={top + tall} />
      <Segment className="seed-bar-dead" from={parts.elsewhere} to={parts.total} {...bar} />
      <Segment fill={`url(#${hatch})`} from={parts.elsewhere} to={parts.total} {...bar} />
      <Segment className="seed-bar-elsewhere" from={parts.living} to={parts.elsewhere} {...bar} />
      <Segment className="seed-bar-living" from={0} to={parts.living} {...bar} />
      {parts.goesOn && <Break {...bar} />}
      {parts.notch > 0 && (
        <>
          <Upright className="seed-bar-notch-halo" at={parts.notch} y1={top - 4} y2={top + tall + 2} />
          <Upright className="seed-bar-notch" at={parts.notch} y1={top - 4} y2={top + tall + 2} />
        </>
      )}
      {parts.high > parts.low && <Whisker parts={parts} y={top + tall + (large ? 6 : 3.5)} />}
    </svg>
  )
}

interface BarProps {
  readonly top: number
  readonly tall: number
}

interface SegmentProps extends BarProps, Pick<SVGProps<SVGRectElement>, 'className' | 'fill'> {
  readonly from: number
  readonly to: number
}

function Segment({ from, to, top, tall, ...look }: SegmentProps) {
  if (to <= from) return null
  return <rect x={percent(from)} width={percent(to - from)} y={top} height={tall} {...look} />
}

/** Two slanted cuts near the end: the bar goes on further than it is drawn. */
function Break({ top, tall }: BarProps) {
  return (
    <svg x="100%" width="1" overflow="visible" aria-hidden="true">
      {[-9, -15].map((x) => (
        <line key={x} className="seed-bar-break" x1={x - 3} x2={x + 3} y1={top + tall + 1} y2={top - 1} />
      ))}
    </svg>
  )
}

function Whisker({ parts, y }: { readonly parts: SeedBarParts; readonly y: number }) {
  const ends = { y1: y - 2.5, y2: y + 2.5 }
  return (
    <g className="seed-bar-whisker">
      <line x1={percent(parts.low)} x2={percent(parts.high)} y1={y} y2={y} />
      <Upright at={parts.low} {...ends} />
      {parts.high < 1 && <Upright at={parts.high} {...ends} />}
    </g>
  )
}

function Upright({ at, ...line }: SVGProps<SVGLineElement> & { readonly at: number }) {
  return <line x1={percent(at)} x2={percent(at)} {...line} />
}

function percent(part: number): string {
  return `${(100 * part).toFixed(2)}%`
}
