import { type Item, moved } from './items.ts'
import { POINTS_PER_MM } from './page-sizes.ts'
import { type Faces, type Paragraph, type SetLine, setParagraphs } from './text-flow.ts'
import type { FaceName } from './typeface.ts'

/** Room for what is written by hand: 7 mm, as ruled paper has (common practice, no source). */
const ROW_PT = 7 * POINTS_PER_MM
const RULE_PT = 0.5
export const CELL_PT = 9

/** What a column is called, and its part of the width. */
export type RuledColumn = readonly [heading: string, part: number]

export interface RuledRow {
  readonly cells: readonly string[]
  readonly face: FaceName
  /** Whether a page may not end after it. */
  readonly kept: boolean
}

/** What rows are set with. */
export interface RuledBy {
  readonly columns: readonly RuledColumn[]
  readonly width: number
  readonly faces: Faces
  readonly missing: Set<string>
}

/** A row of a grid: a rule beneath it, a rule between its cells, and what is printed in them; as high as that needs. */
export function ruledRow({ cells, face, kept }: RuledRow, by: RuledBy): SetLine {
  const set = by.columns.map(([, part], index) => {
    const cell: Paragraph = {
      text: cells[index] ?? '',
      face,
      size: CELL_PT,
      before: 0,
      indent: index > 0 ? 3 : 0,
    }
    return setParagraphs([cell], part * by.width, by.faces, by.missing)
  })
  const lines = Math.max(1, ...set.map(({ length }) => length))
  const height = ROW_PT + (lines - 1) * LINE_PT
  const items: Item[] = [{ kind: 'bar', x: 0, y: height, width: by.width, height: RULE_PT }]
  let left = 0
  for (const [index, [, part]] of by.columns.entries()) {
    if (index > 0) items.push({ kind: 'bar', x: left, y: 0, width: RULE_PT, height })
    for (const [line, { items: texts }] of (set[index] ?? []).entries()) {
      items.push(...texts.map((item) => moved(item, left, (ROW_PT - LINE_PT) / 2 + line * LINE_PT)))
    }
    left += part * by.width
  }
  return { items, before: 0, height, kept }
}

/** From one line of a cell to the next. */
const LINE_PT = CELL_PT * 1.34
