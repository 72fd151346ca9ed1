import type { Texts } from '../../messages/texts.ts'
import type { Item } from '../drawing/items.ts'
import { POINTS_PER_MM } from '../drawing/page-sizes.ts'
import { type QrCode, QUIET_MODULES } from '../drawing/qr-squares.ts'
import type { FaceName, Typeface } from '../drawing/typeface.ts'
import { type Carries, INSIDE_MARGIN_MM } from './label-sheets.ts'
import type { Job, LabelText, Room } from './packet-blocks.ts'
import { bodyOf } from './packet-body.ts'
import { footOf, headOf } from './packet-head-and-foot.ts'
import { PLANS, type Plan } from './packet-plans.ts'
import { stylesFor } from './packet-styles.ts'
import type { PacketLabel } from './packet-text.ts'

/** A label laid out, and what had to give way. */
export interface Layout {
  readonly items: readonly Item[]
  readonly plan: Plan
  /** The texts that were cut and end in an ellipsis. */
  readonly cut: readonly LabelText[]
  /** The type size of the cautions, points; null where none is printed. */
  readonly cautionSize: number | null
  /** The side of one module of the QR code, points. */
  readonly module: number
}

/** QR modules are whole dots of a 600 dpi printer: 12 dots are 0.508 mm, 8 dots 0.339 mm; large labels get more. */
const DOT = 72 / 600
const USUAL_DOTS = 12
const FEWEST_DOTS = 8
/** The part of a label's width that the QR code takes at most, and of its height on a large label. */
const WIDTH_SHARE = 0.27
const HEIGHT_SHARE = 0.33
const STEPS = 12

/** Lays out one label: the richest plan that fits, then the largest type that fits it. */
export function layoutPacket(
  label: PacketLabel,
  code: QrCode,
  room: Room,
  carries: Carries,
  faces: Readonly<Record<FaceName, Typeface>>,
  texts: Texts,
): Layout {
  const module = moduleFor(code, room)
  const quiet = QUIET_MODULES * module
  const codeSide = code.modules * module + Math.max(0, quiet - INSIDE_MARGIN_MM * POINTS_PER_MM)
  const styles = stylesFor(room.width, room.height, carries)
  const job: Job = { label, texts, room, carries, faces, styles, codeSide, quiet }
  const codeItem: Item = { kind: 'code', code, module, x: room.width - codeSide, y: room.height - codeSide }
  for (const plan of PLANS[carries]) {
    if (!tryPlan(job, plan, plan.smallest)) continue
    for (let step = STEPS; step >= 0; step--) {
      const fitted = tryPlan(job, plan, plan.smallest + ((1 - plan.smallest) * step) / STEPS)
      if (fitted) return { ...fitted, plan, module, items: [...fitted.items, codeItem] }
    }
  }
  throw new RangeError(
    `Label ${label.lotNumber} does not fit a room of ${room.width} by ${room.height} points.`,
  )
}

function moduleFor(code: QrCode, room: Room): number {
  const largest = Math.max(USUAL_DOTS * DOT * code.modules, room.height * HEIGHT_SHARE)
  const side = Math.min(largest, room.height, room.width * WIDTH_SHARE)
  const dots = Math.max(FEWEST_DOTS, Math.floor(side / code.modules / DOT))
  return Math.min(dots * DOT, room.height / code.modules)
}

type Fitted = Pick<Layout, 'items' | 'cut' | 'cautionSize'>

function tryPlan(job: Job, plan: Plan, place: number): Fitted | null {
  const foot = footOf(job, plan, place)
  const head = foot && headOf(job, plan, place, foot.top)
  if (!head) return null
  const body = bodyOf(job, plan, place, head.bottom, foot.top)
  if (!body || body.bottom > foot.top) return null
  return {
    items: [...head.items, ...body.items, ...foot.items],
    cut: [...head.cut, ...body.cut, ...foot.cut],
    cautionSize: body.cautionSize,
  }
}
