import type { DueTest, TestLine } from '../../../db/contract/germination-operations.ts'
import type { CountedUnit } from '../../../db/domain/crops/counted-unit.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { planAddress, testAddress } from '../../shared/addresses.ts'
import type { Format } from '../../shared/format/format.ts'
import { seedsOf } from '../../shared/format/seeds-of.ts'
import type { PaneRow } from '../../shared/panes/pane-rows.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'

/** A test as the lists of the bench and of what is over show it. */
export function testRow(test: TestLine, { say, text: t }: Texts): PaneRow {
  const late = test.due?.when === 'late'
  return {
    address: testAddress(test.testId),
    content: (
      <>
        <span className="strong">{test.variety}</span>
        <span className="soft">
          {test.crop} · {test.lotNumber}
          {test.startedOn !== null && ` · ${t('germination.laid-out-on', { on: { day: test.startedOn } })}`}
        </span>
        {test.due !== null && (
          <span>
            {late && <strong className="late-mark">{t('germination.late')}</strong>}
            {say(nextCount(test.due))}
            <span className="soft">
              {' '}
              · {t('germination.sprouted-of', { sprouted: test.normal, sown: test.sown })}
            </span>
          </span>
        )}
        {test.words !== '' && (
          <span>
            {test.state === 'cancelled' ? t('germination.given-up', { reason: test.words }) : test.words}
          </span>
        )}
      </>
    ),
  }
}

/** A lot that should be tested, with the rule that says so. */
export function dueRow(due: DueTest, { text: t }: Texts, { day }: Format): PaneRow {
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
            {day(due.on)}: {due.because}
          </span>
        </span>
        {due.underTest && <span className="soft">{t('germination.under-test')}</span>}
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

/** How the seeds of a test were laid out: '400 seeds in 4 × 100' where the replicates are alike. */
export function layoutOf(replicates: readonly number[], unit: CountedUnit, { text: t }: Texts): string {
  const count = replicates.reduce((sum, seeds) => sum + seeds, 0)
  const [each = 0] = replicates
  if (replicates.length < 2) return t('amount.seeds', { count, unit: unit.one })
  const sown = seedsOf(count, unit)
  return replicates.every((seeds) => seeds === each)
    ? t('germination.layout-alike', { sown, replicates: replicates.length, each })
    : t('germination.layout-unlike', { sown, parts: replicates.join(' + ') })
}

/** When a test is counted next: 'the last count was due 9 Mar 2026'. */
export function nextCount({ which, when, on }: NonNullable<TestLine['due']>): Message {
  return message('germination.next-count', { which, when, on: { day: on } })
}
