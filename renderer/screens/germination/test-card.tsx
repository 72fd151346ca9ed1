import { useRef } from 'react'
import { Link } from 'wouter'
import type { Tally, TestRecord } from '../../../db/contract/germination-operations.ts'
import { CATEGORIES, sumOf } from '../../../db/domain/germination/germination-test.ts'
import { lotAddress, planAddress, testAddress } from '../../shared/addresses.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import type { SavedForm } from '../../shared/card-form/use-saved-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import type { Format } from '../../shared/format/format.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import type { TypedCount } from './bench-draft.ts'
import { CountForm } from './count-form.tsx'
import { CancelForm, FinishForm } from './end-forms.tsx'
import { ResultPart } from './result-part.tsx'
import { dueInWords, layoutInWords, sheetAddress } from './rows.tsx'
import { SproutChart } from './sprout-chart.tsx'
import { cellsOf } from './typed-counts.ts'

interface TestCardProps {
  readonly testId: number
  /** The count that is being typed. */
  readonly kept: SavedForm<TypedCount>
  /** False when the last key typed could not be kept. */
  readonly safe: boolean
}

/** A test: its next count, what it comes to, seedlings by day, and how it was laid out. */
export function TestCard({ testId, kept, safe }: TestCardProps) {
  const format = useFormat()
  const card = useRef<HTMLElement>(null)
  const { open, button, show, close } = useOpenForm<'finish' | 'cancel'>()
  const read = useRead('germination.get', { testId }, { keepLast: true })
  const test = read.data
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (test === undefined) return null
  const underWay = test.state === 'under-way'
  return (
    <Card ref={card} className="card germ-card" name={`Test of ${test.variety}`}>
      <header className="card-head">
        <h2 tabIndex={-1}>{test.variety}</h2>
        <p>
          {test.crop} · <Link href={lotAddress(test.lotId)}>{test.lotNumber}</Link> ·{' '}
          {layoutInWords(test.replicates.map(({ sown }) => sown))} {test.unit.many}
        </p>
        <p className="strong">{standingInWords(test, format)}</p>
      </header>
      {test.cautions.map((caution) => (
        <p key={caution} className="germ-caution caution strong">
          {caution}
        </p>
      ))}
      {underWay && (
        <div className="pane-part">
          <CountForm
            test={test}
            kept={kept}
            safe={safe}
            onCounted={(last) => {
              if (last) show('finish')
              else card.current?.querySelector<HTMLElement>('h2')?.focus()
            }}
          />
          <div className="buttons">
            <Link href={sheetAddress(test.testId)}>Bench sheet of this test</Link>
            {test.counts.length > 0 && (
              <button type="button" className="quiet-button" {...button('finish')}>
                End the test
              </button>
            )}
            <button type="button" className="quiet-button" {...button('cancel')}>
              Give it up
            </button>
          </div>
          {open === 'finish' && (
            <FinishForm test={test} onClose={() => close('finish')} onDone={kept.discard} />
          )}
          {open === 'cancel' && (
            <CancelForm test={test} onClose={() => close('cancel')} onDone={kept.discard} />
          )}
        </div>
      )}
      {test.staged !== null && (
        <section className="pane-part" aria-label="In stages">
          <h3>In stages</h3>
          <p className="lead">{test.staged.words}</p>
        </section>
      )}
      <ResultPart test={test} />
      {test.curve.length > 0 && (
        <section className="pane-part" aria-label="Germination by day">
          <h3>Germination by day</h3>
          <SproutChart test={test} />
        </section>
      )}
      {test.counts.length > 0 && (
        <CountsWritten
          test={test}
          onCorrect={
            underWay
              ? ({ on, replicates }) => {
                  kept.change({ on, cells: cellsOf(replicates) })
                  card.current?.querySelector<HTMLElement>('[data-next] input')?.focus()
                }
              : null
          }
        />
      )}
      <LaidOut test={test} format={format} />
    </Card>
  )
}

function LaidOut({ test, format }: { readonly test: TestRecord; readonly format: Format }) {
  const day = (days: number | null) => (days === null ? '' : `day ${days}`)
  return (
    <section className="pane-part" aria-label="How it was laid out">
      <h3>How it was laid out</h3>
      <FactList
        facts={[
          {
            name: 'Laid out',
            value: test.startedOn === null ? 'not written down' : format.day(test.startedOn),
          },
          { name: 'In', value: test.medium },
          { name: 'Temperature', value: test.temperature },
          { name: 'First count', value: day(test.firstDay) },
          { name: 'Last count', value: day(test.finalDay) },
          {
            name: 'The seeds',
            value: test.fromStock ? 'came out of the stock' : 'did not come out of the stock',
          },
          { name: 'Note', value: test.note },
          { name: 'Note at the end', value: test.finished?.note ?? '' },
        ]}
      />
      <p>
        {test.followedBy === null ? (
          <Link href={planAddress(test.lotId)}>Test this lot again, or lay the next stage out</Link>
        ) : (
          <Link href={testAddress(test.followedBy)}>The next stage</Link>
        )}
      </p>
    </section>
  )
}

function standingInWords({ due, finished, cancelled }: TestRecord, format: Format): string {
  if (cancelled !== null) {
    const back = cancelled.seedsBack ? '; the seeds went back into the stock' : ''
    return `Given up on ${format.day(cancelled.on)}: ${cancelled.reason}${back}`
  }
  if (finished !== null) return `Over since ${format.day(finished.on)}; its result is in the book`
  return due === null ? '' : capital(dueInWords(due, format))
}

type Count = TestRecord['counts'][number]

interface CountsWrittenProps {
  readonly test: TestRecord
  /** Puts a count back into the form; null where the test is over. */
  readonly onCorrect: ((count: Count) => void) | null
}

/** Every count in force, by day. A corrected count stays in the book, but not here. */
function CountsWritten({ test, onCorrect }: CountsWrittenProps) {
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
