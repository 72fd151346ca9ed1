import { POINTS_PER_MM } from './label-sheets.ts'
import type { Item } from './packet-blocks.ts'
import type { FaceName } from './packet-styles.ts'
import { type Faces, type Paragraph, type SetLine, setParagraphs } from './text-flow.ts'

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

/** A row of a grid: a rule beneath it, a rule between its cells, and what is printed in them. */
export function ruledRow({ cells, face, kept }: RuledRow, by: RuledBy): SetLine {
  let left = 0
  const items: Item[] = [{ kind: 'bar', x: 0, y: ROW_PT, width: by.width, height: RULE_PT }]
  for (const [index, [, part]] of by.columns.entries()) {
    const width = part * by.width
    if (index > 0) items.push({ kind: 'bar', x: left, y: 0, width: RULE_PT, height: ROW_PT })
    const cell: Paragraph = {
      text: cells[index] ?? '',
      face,
      size: CELL_PT,
      before: 0,
      indent: index > 0 ? 3 : 0,
    }
    const [set] = setParagraphs([cell], width, by.faces, by.missing)
    items.push(...(set?.items ?? []).map((item) => shifted(item, left)))
    left += width
  }
  return { items, before: 0, height: ROW_PT, kept }
}

/** An item moved right, and down to the middle of a row. */
function shifted(item: Item, right: number): Item {
  const down = (ROW_PT - CELL_PT * 1.34) / 2
  if (item.kind === 'text') return { ...item, x: item.x + right, baseline: item.baseline + down }
  return { ...item, x: item.x + right, y: item.y + down }
}
