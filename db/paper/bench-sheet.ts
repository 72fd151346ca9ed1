import { message } from '../messages/message.ts'
import type { Texts } from '../messages/texts.ts'
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

const COLUMNS = [
  ['counted-on', 0.2],
  ['replicate', 0.2],
  ['normal', 0.12],
  ['abnormal', 0.12],
  ['hard', 0.12],
  ['fresh', 0.12],
  ['dead', 0.12],
] as const

/** A PDF to write counts on, each test kept on one page where it fits. Throws RangeError where there is none. */
export function benchSheet(
  wanted: SheetWanted & { readonly tests: readonly BenchTest[] },
): Promise<PrintedDocument> {
  const { texts } = wanted
  return ruledSheet(wanted, {
    name: message('paper.title-bench'),
    document: message('paper.the-bench-sheet'),
    columns: COLUMNS.map(([name, part]): RuledColumn => [texts.text(`paper.bench-${name}`), part]),
    opening: [sheetText(texts.text('paper.bench-meanings'), 3)],
    parts: wanted.tests.map((test) => partOf(test, texts)),
    partsKept: true,
  })
}

function partOf({ name, lotNumber, laidOut, cautions, left, counts }: BenchTest, texts: Texts): RuledPart {
  return {
    heading: `${name} · ${lotNumber}`,
    about: [sheetText(laidOut, 0), ...cautions.map((caution) => sheetText(caution, 1, { face: 'bold' }))],
    rows: counts.flatMap((count, at) =>
      left.map((seeds, index) => [
        index === 0 ? count : '',
        // Only for the first of them is it known how many will still be there.
        at === 0 ? texts.text('paper.bench-left', { replicate: index + 1, seeds }) : `${index + 1}`,
      ]),
    ),
  }
}
