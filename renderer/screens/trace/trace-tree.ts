import { hierarchy, tree } from 'd3-hierarchy'
import type { Value } from '../../../db/contract/contract.ts'

type Step = Value<'lot.trace'>['steps'][number]

/** The box of a lot and the room around it, in pixels; `swing` is how far a line swings out that leads across. */
export const BOX = { width: 228, height: 66, across: 52, down: 16, edge: 8, swing: 44 } as const

/** A lot where it stands in the picture. */
export interface PlacedLot {
  readonly lotId: number
  /** The lot that it branches off from; null: none. */
  readonly parentId: number | null
  /** How many steps from the beginning, from 1. */
  readonly level: number
  /** The corner of its box before which nothing stands, pixels. */
  readonly x: number
  readonly y: number
}

/** A step that is drawn as a line: along a branch, or across to where a lot stands already. */
export interface DrawnStep extends Step {
  readonly isBranch: boolean
}

interface Branch {
  readonly lotId: number | null
  readonly branches: readonly Branch[]
}

/**
 * The lots of a trace as branches, each once and in reading order, older before younger, and the steps between them. A lot branches
 * off from the first that it was split off or grown from; what was poured into it leads across.
 */
export function placeLots(lotIds: readonly number[], steps: readonly Step[]) {
  const madeBy = new Map<number, Step>()
  for (const step of steps) {
    if (step.by !== 'merged' && !madeBy.has(step.toLotId)) madeBy.set(step.toLotId, step)
  }
  const branchOf = (lotId: number): Branch => ({
    lotId,
    branches: [...madeBy.values()]
      .filter(({ fromLotId }) => fromLotId === lotId)
      .map(({ toLotId }) => branchOf(toLotId)),
  })
  const beginnings = lotIds.filter((lotId) => !madeBy.has(lotId)).toSorted((one, other) => one - other)
  const whole: Branch = { lotId: null, branches: beginnings.map(branchOf) }
  const laid = tree<Branch>()
    .nodeSize([BOX.height + BOX.down, BOX.width + BOX.across])
    .separation(() => 1)(hierarchy(whole, ({ branches }) => branches))
  const nodes: { lotId: number; parentId: number | null; level: number; across: number; down: number }[] = []
  laid.eachBefore(({ data: { lotId }, parent, depth, x, y }) => {
    if (lotId === null) return
    nodes.push({ lotId, parentId: parent?.data.lotId ?? null, level: depth, across: y, down: x })
  })
  const top = Math.min(...nodes.map(({ down }) => down))
  const first = Math.min(...nodes.map(({ across }) => across))
  const placed = nodes.map(
    ({ across, down, ...node }): PlacedLot => ({
      ...node,
      x: across - first + BOX.edge,
      y: down - top + BOX.edge,
    }),
  )
  const drawn = steps.map((step): DrawnStep => ({ ...step, isBranch: madeBy.get(step.toLotId) === step }))
  const beyond = drawn.every(({ isBranch }) => isBranch) ? BOX.edge : BOX.swing
  return {
    placed,
    drawn,
    width: Math.max(...placed.map(({ x }) => x)) + BOX.width + beyond,
    height: Math.max(...placed.map(({ y }) => y)) + BOX.height + BOX.edge,
  }
}

/** The lot that a key goes to in the picture, or undefined: up and down in reading order, on to a branch, back to where it is from. */
export function lotByKey(
  placed: readonly PlacedLot[],
  lotId: number,
  key: string,
  direction: 'ltr' | 'rtl',
): number | undefined {
  const at = placed.findIndex((lot) => lot.lotId === lotId)
  const [on, back] = direction === 'rtl' ? ['ArrowLeft', 'ArrowRight'] : ['ArrowRight', 'ArrowLeft']
  switch (key) {
    case 'ArrowDown':
      return placed[at + 1]?.lotId
    case 'ArrowUp':
      return placed[at - 1]?.lotId
    case 'Home':
      return placed[0]?.lotId
    case 'End':
      return placed.at(-1)?.lotId
    case on:
      return placed.find(({ parentId }) => parentId === lotId)?.lotId
    case back:
      return placed[at]?.parentId ?? undefined
    default:
      return undefined
  }
}
