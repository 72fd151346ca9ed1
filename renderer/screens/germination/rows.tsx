import type { DueTest, TestLine } from '../../../db/contract/germination-operations.ts'
import { planAddress, testAddress } from '../../shared/addresses.ts'
import type { Format } from '../../shared/format/format.ts'
import type { PaneRow } from '../../shared/panes/pane-rows.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'

/** A test as the lists of the bench and of what is over show it. */
export function testRow(test: TestLine, format: Format): PaneRow {
  const late = test.due?.when === 'late'
  const started = test.startedOn === null ? '' : ` · laid out ${format.day(test.startedOn)}`
  return {
    address: testAddress(test.testId),
    content: (
      <>
        <span className="strong">{test.variety}</span>
        <span className="soft">
          {test.crop} · {test.lotNumber}
          {started}
        </span>
        {test.due !== null && (
          <span>
            {late && <strong className="late-mark">late</strong>}
            {dueInWords(test.due, format)}
            <span className="soft">
              {' '}
              · {format.number(test.normal)} of {format.number(test.sown)} sprouted
            </span>
          </span>
        )}
        {test.words !== '' && (
          <span>{test.state === 'cancelled' ? `given up: ${test.words}` : test.words}</span>
        )}
      </>
    ),
  }
}

/** A lot that should be tested, with the rule that says so. */
export function dueRow(due: DueTest, format: Format): PaneRow {
  return {
    address: planAddress(due.lotId),
    content: (
      <>
        <span className="strong">{due.variety}</span>
        <span className="soft">
          {[due.crop, due.lotNumber, due.quantity.words, due.place].filter((part) => part !== '').join(' · ')}
        </span>
        <span className="row">
          {due.late && <StateMark mark="test-due" />}
          <span>
            {format.day(due.on)}: {format.sentence(due.because)}
          </span>
        </span>
        <span className="soft">
          {due.source} ({due.confidence}){due.underTest ? ' · a test is under way' : ''}
        </span>
      </>
    ),
  }
}

/** The address of the bench sheet. */
export const SHEET = '/germination/sheet'

/** The address of the bench sheet of one test. */
export function sheetAddress(testId: number): string {
  return `${SHEET}/${testId}`
}

/** How the seeds of a test were laid out: '400 in 4 × 100' where the replicates are alike. */
export function layoutInWords(replicates: readonly number[]): string {
  const sown = replicates.reduce((sum, seeds) => sum + seeds, 0)
  const [first] = replicates
  if (replicates.length < 2) return String(sown)
  return replicates.every((seeds) => seeds === first)
    ? `${sown} in ${replicates.length} × ${first}`
    : `${sown} in ${replicates.join(' + ')}`
}

/** When a test is counted next: 'the last count was due 9 Mar 2026'. */
export function dueInWords(due: NonNullable<TestLine['due']>, format: Format): string {
  const which = due.which === 'first' ? 'first count' : 'last count'
  if (due.when === 'today') return `${which} due today`
  return due.when === 'late' ? `${which} was due ${format.day(due.on)}` : `${which} on ${format.day(due.on)}`
}
