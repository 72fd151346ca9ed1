import { useRef, useState } from 'react'
import { Link } from 'wouter'
import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { lotAddress, planAddress, testAddress } from '../../shared/addresses.ts'
import type { SavedForm } from '../../shared/card-form/use-saved-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import type { Format } from '../../shared/format/format.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import type { TypedCount } from './bench-draft.ts'
import { dueInWords, layoutInWords, sheetAddress } from './bench-words.ts'
import { CountForm } from './count-form.tsx'
import { CountsWritten } from './counts-written.tsx'
import { CancelForm, FinishForm } from './end-forms.tsx'
import { ResultPart } from './result-part.tsx'
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
  const read = useRead('germination.get', { testId }, { keepLast: true })
  const test = read.data
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (test === undefined) return null
  return <OneTest test={test} format={format} kept={kept} safe={safe} />
}

type Open = 'finish' | 'cancel' | null

interface OneTestProps extends Omit<TestCardProps, 'testId'> {
  readonly test: TestRecord
  readonly format: Format
}

function OneTest({ test, format, kept, safe }: OneTestProps) {
  const card = useRef<HTMLElement>(null)
  const [open, setOpen] = useState<Open>(null)
  const underWay = test.state === 'under-way'
  const close = () => setOpen(null)
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
              if (last) setOpen('finish')
              else card.current?.querySelector<HTMLElement>('h2')?.focus()
            }}
          />
          <div className="buttons">
            <Link href={sheetAddress(test.testId)}>Bench sheet of this test</Link>
            {test.counts.length > 0 && (
              <button
                type="button"
                className="quiet-button"
                aria-expanded={open === 'finish'}
                onClick={() => setOpen(open === 'finish' ? null : 'finish')}
              >
                End the test
              </button>
            )}
            <button
              type="button"
              className="quiet-button"
              aria-expanded={open === 'cancel'}
              onClick={() => setOpen(open === 'cancel' ? null : 'cancel')}
            >
              Give it up
            </button>
          </div>
          {open === 'finish' && <FinishForm test={test} onClose={close} onDone={kept.discard} />}
          {open === 'cancel' && <CancelForm test={test} onClose={close} onDone={kept.discard} />}
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
