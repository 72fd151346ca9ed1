import type { PrintedDocument } from './drawing/paper-document.ts'
import { CELL_PT, type RuledColumn } from './drawing/ruled-row.ts'
import { type RuledPart, ruledSheet, type SheetWanted } from './drawing/ruled-sheet.ts'
import type { Paragraph } from './drawing/text-flow.ts'

/** A place as the round sheet shows it. */
export interface SheetStop {
  readonly path: string
  /** When it was walked to last and is due, in one line. */
  readonly standing: string
  /** What is looked at there, by name; a reading has room of its own. */
  readonly looks: readonly string[]
  /** The numbers of the lots that lie there. */
  readonly lotNumbers: readonly string[]
}

export interface RoundSheetWanted extends SheetWanted {
  readonly stops: readonly SheetStop[]
  /** What each look means, a line each. */
  readonly meanings: readonly string[]
  readonly cautions: readonly string[]
}

/** More lots than this are counted, not listed: nobody finds a number among more. */
const MOST_LISTED = 60
/** A line to write on: white alone would be set as one space. */
const TO_FILL = '_'.repeat(24)
const COLUMNS: readonly RuledColumn[] = [
  ['Look for', 0.24],
  ['Fine', 0.08],
  ['Found', 0.08],
  ['What, and in which lots', 0.6],
]

/** A PDF to tick on a round, each place kept on one page where it fits. Throws RangeError where there is none. */
export async function roundSheet(wanted: RoundSheetWanted): Promise<PrintedDocument> {
  if (wanted.stops.length === 0) throw new RangeError('Choose at least one place to print.')
  return ruledSheet(wanted, {
    name: 'Round sheet',
    columns: COLUMNS,
    opening: openingOf(wanted),
    parts: wanted.stops.map(partOf),
    partsKept: true,
  })
}

function openingOf({ meanings, cautions }: RoundSheetWanted): Paragraph[] {
  const text = (words: string, face: 'regular' | 'bold', before: number): Paragraph => ({
    text: words,
    face,
    size: CELL_PT,
    before,
  })
  return [
    text(`Walked on ${TO_FILL} by ${TO_FILL}${TO_FILL}`, 'regular', 6),
    ...meanings.map((meaning, index) => text(meaning, 'regular', index === 0 ? 6 : 0)),
    ...cautions.map((caution) => text(caution, 'bold', 4)),
  ]
}

function partOf({ path, standing, looks, lotNumbers }: SheetStop): RuledPart {
  const lots =
    lotNumbers.length === 0
      ? 'No lot with seed lies there.'
      : lotNumbers.length > MOST_LISTED
        ? `${lotNumbers.length} lots.`
        : `Lots: ${lotNumbers.join(', ')}`
  return {
    head: [
      { text: path, face: 'semibold', size: 12, before: 14 },
      { text: standing, face: 'regular', size: CELL_PT, before: 0 },
      { text: lots, face: 'regular', size: CELL_PT, before: 1 },
    ],
    rows: looks.map((look) => [look]),
  }
}
