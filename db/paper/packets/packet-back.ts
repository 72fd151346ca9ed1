import { type Message, message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { POINTS_PER_MM } from '../drawing/page-sizes.ts'
import { lackedLetters } from '../drawing/printable-text.ts'
import {
  cutToHeight,
  type Faces,
  heightOf,
  type Paragraph,
  paragraphsIn,
  type SetLine,
  setParagraphs,
} from '../drawing/text-flow.ts'
import type { Cell } from './label-sheets.ts'
import type { PacketLabel } from './packet-text.ts'
import type { PacketParts } from './sheet-marks.ts'

/** White inside a packet's parts, mm. */
export const PART_MARGIN_MM = 4
/** The largest and the smallest type on the back, points. */
const LARGEST_PT = 9
const SMALLEST_PT = 6.5
const FLAP_PT = 6

/** Text set for a part of a packet, from the part's top left corner inside its margin. */
export interface SetPart {
  readonly part: keyof PacketParts
  readonly lines: readonly SetLine[]
}

/** What stands beside a packet's front: how to keep it, its story, and how it is folded. Cut texts are in the warnings. */
export function packetBack(
  label: PacketLabel,
  parts: PacketParts,
  faces: Faces,
  texts: Texts,
): { readonly parts: readonly SetPart[]; readonly warnings: readonly Message[] } {
  const missing = new Set<string>()
  const room = roomOf(parts.back)
  const at = (size: number) => setParagraphs(backParagraphs(label, size, texts), room.width, faces, missing)
  const sizes = [LARGEST_PT, 8.5, 8, 7.5, 7, SMALLEST_PT]
  const fitting = sizes.map(at).find((lines) => heightOf(lines) <= room.height)
  const back = fitting ?? cutToHeight(at(SMALLEST_PT), room, faces)
  const flap = (text: string, part: 'bottom' | 'top'): SetPart => ({
    part,
    lines: setParagraphs([paragraphsIn(FLAP_PT)(text, 0)], roomOf(parts[part]).width, faces, missing),
  })
  return {
    parts: [
      { part: 'back', lines: back },
      flap(texts.text('paper.packet-fold'), 'bottom'),
      flap(texts.text('paper.packet-close'), 'top'),
    ],
    warnings: [
      ...lackedLetters(message('paper.the-back', { lot: label.lotNumber }), missing),
      ...(fitting === undefined ? [message('paper.back-cut', { lot: label.lotNumber })] : []),
    ],
  }
}

function roomOf(part: Cell): { readonly width: number; readonly height: number } {
  const inside = (size: number) => Math.max(0, size - 2 * PART_MARGIN_MM) * POINTS_PER_MM
  return { width: inside(part.width), height: inside(part.height) }
}

function backParagraphs(
  { known = [], pieces = false }: PacketLabel,
  size: number,
  { text: told }: Texts,
): Paragraph[] {
  const text = paragraphsIn(size)
  return [
    text(told('paper.packet-keep'), 0, { face: 'semibold', unbrokenWithNext: true }),
    text(told(pieces ? 'pieces.care' : 'paper.care'), 1),
    text(told('paper.for-sowing'), 4, { face: 'bold' }),
    ...known.map((fact, index) => text(fact, index === 0 ? 6 : 2, { ruled: index === 0 })),
  ]
}
