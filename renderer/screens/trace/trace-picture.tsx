import { linkHorizontal } from 'd3-shape'
import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react'
import { useLocation } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import type { TracedLot } from '../../../db/contract/recall-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { BOX, type DrawnStep, lotByKey, type PlacedLot, placeLots } from './trace-tree.ts'

type Trace = Pick<Value<'lot.trace'>, 'lotId' | 'lots' | 'steps'>

/** The lots of a trace as a picture that is gone through with arrows. The table below it says the same. */
export function TracePicture({ lotId, lots, steps }: Trace) {
  const { t, direction } = useTexts()
  const [, go] = useLocation()
  const [here, setHere] = useState(lotId)
  const picture = useRef<HTMLDivElement>(null)
  const { placed, drawn, width, height } = useMemo(
    () =>
      placeLots(
        lots.map((lot) => lot.lotId),
        steps,
      ),
    [lots, steps],
  )
  // A long family is wider than the window: the lot that was asked for is in view.
  useEffect(() => {
    picture.current
      ?.querySelector(`[data-lot="${lotId}"]`)
      ?.scrollIntoView({ block: 'nearest', inline: 'center' })
  }, [lotId])
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') return go(lotAddress(here))
    const next = lotByKey(placed, here, event.key, direction)
    if (next === undefined) return
    event.preventDefault()
    setHere(next)
    const box = picture.current?.querySelector<SVGGElement>(`[data-lot="${next}"]`)
    box?.focus()
    box?.scrollIntoView({ block: 'nearest', inline: 'nearest' })
  }
  return (
    <figure className="stack-2">
      <div
        ref={picture}
        className="trace-frame"
        role="tree"
        aria-label={t('trace.picture')}
        tabIndex={-1}
        onKeyDown={onKeyDown}
      >
        <svg
          className="chart"
          style={{ width, maxWidth: 'none' }}
          viewBox={`0 0 ${width} ${height}`}
          role="none"
        >
          <g>
            {drawn.map((step) => (
              <StepLine key={`${step.fromLotId} ${step.toLotId} ${step.by}`} step={step} placed={placed} />
            ))}
          </g>
          {placed.map((place) => {
            const lot = lots.find((one) => one.lotId === place.lotId)
            return (
              lot !== undefined && (
                <LotBox
                  key={lot.lotId}
                  lot={lot}
                  place={place}
                  isStop={lot.lotId === here}
                  onStop={() => setHere(lot.lotId)}
                  onOpen={() => go(lotAddress(lot.lotId))}
                />
              )
            )
          })}
        </svg>
      </div>
      <figcaption className="soft">{t('trace.picture-hint')}</figcaption>
    </figure>
  )
}

interface LotBoxProps {
  readonly lot: TracedLot
  readonly place: PlacedLot
  /** Whether Tab comes to this one. */
  readonly isStop: boolean
  readonly onStop: () => void
  readonly onOpen: () => void
}

function LotBox({ lot, place, isStop, onStop, onOpen }: LotBoxProps) {
  const { t } = useTexts()
  const kin = t(`trace.kin-${lot.kin}`)
  return (
    <g
      className="trace-lot"
      data-lot={lot.lotId}
      data-kin={lot.kin}
      role="treeitem"
      aria-level={place.level}
      aria-current={lot.kin === 'itself'}
      tabIndex={isStop ? 0 : -1}
      transform={`translate(${place.x} ${place.y})`}
      onClick={onOpen}
      onFocus={onStop}
    >
      <rect width={BOX.width} height={BOX.height} rx="3" />
      <text className="trace-number" x="10" y="20">
        {lot.lotNumber}
      </text>{' '}
      <text x="10" y="38">
        {lot.quarantined ? t('trace.kin-quarantined', { kin }) : kin}
      </text>{' '}
      <text x="10" y="56">
        {lot.quantity.words}
      </text>
    </g>
  )
}

interface StepLineProps {
  readonly step: DrawnStep
  readonly placed: readonly PlacedLot[]
}

function StepLine({ step: { fromLotId, toLotId, isBranch }, placed }: StepLineProps) {
  const from = placed.find(({ lotId }) => lotId === fromLotId)
  const to = placed.find(({ lotId }) => lotId === toLotId)
  if (from === undefined || to === undefined) return null
  const [x, y] = farSide(to)
  return (
    <>
      <path className="trace-step" data-branch={isBranch} d={lineOf(from, to, isBranch)} />
      {!isBranch && <circle className="chart-dot" cx={x} cy={y} r="5" />}
    </>
  )
}

type Point = readonly [x: number, y: number]

const branch = linkHorizontal<{ readonly source: Point; readonly target: Point }, Point>()
  .x(([x]) => x)
  .y(([, y]) => y)

/** From the far side of a box: along a branch to the near side of the next, or across to the far side of one that stands already. */
function lineOf(from: PlacedLot, to: PlacedLot, isBranch: boolean): string {
  const [x, y] = farSide(from)
  const [toX, toY] = farSide(to)
  if (isBranch) return branch({ source: [x, y], target: [to.x, toY] }) ?? ''
  const out = Math.max(x, toX) + BOX.swing
  return `M${x},${y}C${out},${y},${out},${toY},${toX},${toY}`
}

function farSide({ x, y }: PlacedLot): Point {
  return [x + BOX.width, y + BOX.height / 2]
}
