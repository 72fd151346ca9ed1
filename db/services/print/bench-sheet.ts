import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { addDays } from '../../domain/dates/day-arithmetic.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { sumOf, tallied } from '../../domain/germination/germination-test.ts'
import { message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { type BenchTest, benchSheet } from '../../paper/bench-sheet.ts'
import type { TestRow } from '../../queries/germination-tests.ts'
import type { Reading } from '../book/context.ts'
import { testCautions } from '../book/seed-words.ts'
import { listTests, testOrRefuse } from '../germination/germination-record.ts'
import { replicatesOf } from '../germination/test-counts.ts'
import { documentFacts, made } from './document.ts'

/** The bench sheet of some tests under way, or of all, in the order in which they are to be counted. */
export async function printBenchSheet(
  reading: Reading,
  input: ParsedInput<'germination.print'>,
): Promise<Result<'germination.print'>> {
  const { tests } = listTests(reading, { state: 'under-way', offset: 0, limit: 500 })
  const ids = input.testIds.length === 0 ? tests.map(({ testId }) => testId) : input.testIds
  const rows = ids.map((id) => testOrRefuse(reading, id))
  const over = rows.find((row) => row.testedOn !== null || row.cancelledOn !== null)
  if (over) {
    refuse('test-over', message('print.test-over', { lot: over.lotNumber }), { field: 'testIds' })
  }
  if (rows.length === 0) {
    refuse('nothing-to-print', message('print.no-test'), {
      field: 'testIds',
      todo: message('print.no-test-todo'),
    })
  }
  const facts = await documentFacts(reading, message('paper.title-bench'))
  const printed = await benchSheet({
    tests: rows.map((row) => benchTest(reading, row, facts.texts)),
    ...facts,
  })
  return made(printed, `bench-sheet-${reading.today}.pdf`)
}

function benchTest(reading: Reading, row: TestRow, texts: Texts): BenchTest {
  const laidOut =
    row.startedOn === null ? '' : texts.text('paper.bench-laid-out', { day: { day: row.startedOn } })
  return {
    name: `${row.crop} ‘${row.variety}’`,
    lotNumber: row.lotNumber,
    laidOut: [laidOut, row.medium, row.temperature].filter((part) => part !== '').join(' · '),
    cautions: testCautions(reading, row.lotId).map(texts.say),
    left: replicatesOf(reading, row.testId).map(
      ({ sown, counts }) => sown - tallied(sumOf(counts.map(({ tally }) => tally))),
    ),
    counts: countsToCome(row, texts),
  }
}

/** The first count where none was made, the last one, and room for one more. */
function countsToCome(row: TestRow, texts: Texts): string[] {
  if (row.startedOn === null || row.finalDay === null) return ['']
  const start = isoDate(row.startedOn)
  const first = row.firstDay === null || row.lastCountOn !== null ? [] : [row.firstDay]
  return [
    ...first.map((days) => texts.value({ day: addDays(start, days) })),
    '',
    texts.text('paper.bench-last-count', { day: { day: addDays(start, row.finalDay) } }),
  ]
}
