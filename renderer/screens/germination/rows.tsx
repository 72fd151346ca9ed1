import type { DueTest, TestLine } from '../../../db/contract/germination-operations.ts'
import { planAddress, testAddress } from '../../shared/addresses.ts'
import type { Format } from '../../shared/format/format.ts'
import type { PaneRow } from '../../shared/panes/pane-rows.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { dueInWords } from './bench-words.ts'

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
