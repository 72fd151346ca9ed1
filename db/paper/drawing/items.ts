import type { QrCode } from './qr-squares.ts'
import type { Line } from './text-fitting.ts'
import type { FaceName } from './typeface.ts'

/** A line of text, in points from the top left corner of its room, downwards. */
export interface TextItem {
  readonly kind: 'text'
  readonly face: FaceName
  readonly size: number
  readonly x: number
  readonly baseline: number
  readonly line: Line
}

/** Ink, in points from the top left corner of its room, downwards. */
export type Item =
  | TextItem
  | {
      readonly kind: 'bar'
      readonly x: number
      readonly y: number
      readonly width: number
      readonly height: number
    }
  | {
      readonly kind: 'code'
      readonly x: number
      readonly y: number
      readonly module: number
      readonly code: QrCode
    }

/** An item moved right and down, points. */
export function moved(item: Item, right: number, down: number): Item {
  if (item.kind === 'text') return { ...item, x: item.x + right, baseline: item.baseline + down }
  return { ...item, x: item.x + right, y: item.y + down }
}
