import type { PrintedDocument } from './drawing/paper-document.ts'
import type { RuledColumn } from './drawing/ruled-row.ts'
import { type RuledPart, ruledSheet, type SheetWanted, sheetText } from './drawing/ruled-sheet.ts'

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
export function roundSheet(wanted: RoundSheetWanted): Promise<PrintedDocument> {
  return ruledSheet(wanted, {
    name: 'Round sheet',
    columns: COLUMNS,
    opening: [
      sheetText(`Walked on ${TO_FILL} by ${TO_FILL}${TO_FILL}`, 6),
      ...wanted.meanings.map((meaning, index) => sheetText(meaning, index === 0 ? 6 : 0)),
      ...wanted.cautions.map((caution) => sheetText(caution, 4, { face: 'bold' })),
    ],
    parts: wanted.stops.map(partOf),
    partsKept: true,
  })
}

function partOf({ path, standing, looks, lotNumbers }: SheetStop): RuledPart {
  const lots =
    lotNumbers.length === 0
      ? 'No lot with seed lies there.'
      : lotNumbers.length > MOST_LISTED
        ? `${lotNumbers.length} lots.`
        : `Lots: ${lotNumbers.join(', ')}`
  return {
    heading: path,
    about: [sheetText(standing, 0), sheetText(lots, 1)],
    rows: looks.map((look) => [look]),
  }
}
