import { message } from '../messages/message.ts'
import type { Texts } from '../messages/texts.ts'
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
const COLUMNS = [
  ['look', 0.24],
  ['fine', 0.08],
  ['found', 0.08],
  ['what', 0.6],
] as const

/** A PDF to tick on a round, each place kept on one page where it fits. Throws RangeError where there is none. */
export function roundSheet(wanted: RoundSheetWanted): Promise<PrintedDocument> {
  const { texts } = wanted
  const by = { day: TO_FILL, who: TO_FILL + TO_FILL }
  return ruledSheet(wanted, {
    name: message('paper.title-round'),
    document: message('paper.the-round-sheet'),
    columns: COLUMNS.map(([name, part]): RuledColumn => [texts.text(`paper.round-${name}`), part]),
    opening: [
      sheetText(texts.text('paper.round-walked-by', by), 6),
      ...wanted.meanings.map((meaning, index) => sheetText(meaning, index === 0 ? 6 : 0)),
      ...wanted.cautions.map((caution) => sheetText(caution, 4, { face: 'bold' })),
    ],
    parts: wanted.stops.map((stop) => partOf(stop, texts)),
    partsKept: true,
  })
}

function partOf({ path, standing, looks, lotNumbers }: SheetStop, { text }: Texts): RuledPart {
  const lots =
    lotNumbers.length === 0
      ? text('paper.round-no-lot')
      : lotNumbers.length > MOST_LISTED
        ? text('paper.round-many-lots', { lots: lotNumbers.length })
        : text('paper.round-lots', { lots: lotNumbers.join(', ') })
  return {
    heading: path,
    about: [sheetText(standing, 0), sheetText(lots, 1)],
    rows: looks.map((look) => [look]),
  }
}
