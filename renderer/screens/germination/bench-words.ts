import type { TestLine } from '../../../db/contract/germination-operations.ts'
import type { Format } from '../../shared/format/format.ts'

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
