import type { Tally, TestRecord } from '../../../db/contract/germination-operations.ts'
import { CATEGORIES, sumOf } from '../../../db/domain/germination/germination-test.ts'
import { useFormat } from '../../shared/format/use-format.ts'

type Count = TestRecord['counts'][number]

interface CountsWrittenProps {
  readonly test: TestRecord
  /** Puts a count back into the form; null where the test is over. */
  readonly onCorrect: ((count: Count) => void) | null
}

/** Every count in force, by day. A corrected count stays in the book, but not here. */
export function CountsWritten({ test, onCorrect }: CountsWrittenProps) {
  const format = useFormat()
  return (
    <section className="pane-part" aria-label="Counts">
      <h3>Counts</h3>
      <ul className="ruled dated germ-counts">
        {test.counts.map((count) => (
          <li key={count.on}>
            <span className="soft">
              {format.day(count.on)}
              {count.day === null ? '' : `, day ${count.day}`}
            </span>
            <span>
              {tallyInWords(sumOf(count.replicates))}
              {count.replicates.length > 1 && (
                <span className="soft">
                  {' '}
                  (normal {count.replicates.map(({ normal }) => format.number(normal)).join(', ')})
                </span>
              )}
            </span>
            {onCorrect !== null && (
              <button type="button" className="word-button" onClick={() => onCorrect(count)}>
                correct<span className="only-aloud"> the count of {format.day(count.on)}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}

function tallyInWords(tally: Tally): string {
  const parts = CATEGORIES.filter((category) => tally[category] > 0).map(
    (category) => `${tally[category]} ${category}`,
  )
  return parts.length === 0 ? 'nothing taken out' : parts.join(', ')
}
