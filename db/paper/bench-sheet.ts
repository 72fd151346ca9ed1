import type { PrintedDocument } from './drawing/paper-document.ts'
import type { RuledColumn } from './drawing/ruled-row.ts'
import { type RuledPart, ruledSheet, type SheetWanted, sheetText } from './drawing/ruled-sheet.ts'

/** A test as the bench sheet shows it: what it is, and the counts that are still to be written down. */
export interface BenchTest {
  /** 'Runner bean ‘Painted Quill’'. */
  readonly name: string
  readonly lotNumber: string
  /** When and in what it was laid out, in one line. */
  readonly laidOut: string
  /** Whole sentences. */
  readonly cautions: readonly string[]
  /** Seeds of each replicate that are not yet counted. */
  readonly left: readonly number[]
  /** Each count to come, in words; an empty one has room for a date. */
  readonly counts: readonly string[]
}

const COLUMNS: readonly RuledColumn[] = [
  ['Counted on', 0.2],
  ['Replicate', 0.2],
  ['Normal', 0.12],
  ['Abnormal', 0.12],
  ['Hard', 0.12],
  ['Fresh', 0.12],
  ['Dead', 0.12],
]
const MEANINGS =
  'Write only what is taken out on that day. Normal: would make a plant. Abnormal: would not. Hard: took no water up. ' +
  'Fresh: took water up, sound, did not sprout. Hard and fresh are told from dead at the last count.'

/** A PDF to write counts on, each test kept on one page where it fits. Throws RangeError where there is none. */
export function benchSheet(
  wanted: SheetWanted & { readonly tests: readonly BenchTest[] },
): Promise<PrintedDocument> {
  return ruledSheet(wanted, {
    name: 'Bench sheet',
    columns: COLUMNS,
    opening: [sheetText(MEANINGS, 3)],
    parts: wanted.tests.map(partOf),
    partsKept: true,
  })
}

function partOf({ name, lotNumber, laidOut, cautions, left, counts }: BenchTest): RuledPart {
  return {
    heading: `${name} · ${lotNumber}`,
    about: [sheetText(laidOut, 0), ...cautions.map((caution) => sheetText(caution, 1, { face: 'bold' }))],
    rows: counts.flatMap((count, at) =>
      left.map((seeds, index) => [
        index === 0 ? count : '',
        // Only for the first of them is it known how many will still be there.
        at === 0 ? `${index + 1}: ${seeds} left` : `${index + 1}`,
      ]),
    ),
  }
}
