import { type ReactNode, useRef } from 'react'
import { Link } from 'wouter'
import type { Tally, TestRecord } from '../../../db/contract/germination-operations.ts'
import { CATEGORIES, sumOf } from '../../../db/domain/germination/germination-test.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { lotAddress, planAddress, testAddress } from '../../shared/addresses.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import type { SavedForm } from '../../shared/card-form/use-saved-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import type { TypedCount } from './bench-draft.ts'
import { CountForm } from './count-form.tsx'
import { CancelForm, FinishForm } from './end-forms.tsx'
import { ResultPart } from './result-part.tsx'
import { layoutOf, nextCount, sheetAddress } from './rows.tsx'
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
  const texts = useTexts()
  const { t } = texts
  const card = useRef<HTMLElement>(null)
  const { open, button, show, close } = useOpenForm<'finish' | 'cancel'>()
  const read = useRead('germination.get', { testId }, { keepLast: true })
  const test = read.data
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (test === undefined) return null
  const underWay = test.state === 'under-way'
  return (
    <Card ref={card} className="card germ-card" name={t('germination.test-of', { variety: test.variety })}>
      <header className="card-head">
        <h2 tabIndex={-1}>{test.variety}</h2>
        <p>
          {test.crop} · <Link href={lotAddress(test.lotId)}>{test.lotNumber}</Link> ·{' '}
          {layoutOf(
            test.replicates.map(({ sown }) => sown),
            test.unit,
            texts,
          )}
        </p>
        <p className="strong">{standing(test, texts)}</p>
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
            <Link href={sheetAddress(test.testId)}>{t('germination.sheet-of-test')}</Link>
            {test.counts.length > 0 && (
              <button type="button" className="quiet-button" {...button('finish')}>
                {t('germination.end')}
              </button>
            )}
            <button type="button" className="quiet-button" {...button('cancel')}>
              {t('germination.give-up')}
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
        <section className="pane-part" aria-label={t('germination.stages')}>
          <h3>{t('germination.stages')}</h3>
          <p className="lead">{test.staged.words}</p>
        </section>
      )}
      <ResultPart test={test} />
      {test.curve.length > 0 && (
        <section className="pane-part" aria-label={t('germination.by-day')}>
          <h3>{t('germination.by-day')}</h3>
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
      <LaidOut test={test} />
    </Card>
  )
}

function LaidOut({ test }: { readonly test: TestRecord }) {
  const format = useFormat()
  const { t } = useTexts()
  const day = (days: number | null) => (days === null ? '' : t('germination.on-day', { day: days }))
  return (
    <section className="pane-part" aria-label={t('germination.how-laid-out')}>
      <h3>{t('germination.how-laid-out')}</h3>
      <FactList
        facts={[
          {
            name: t('germination.laid-out'),
            value: test.startedOn === null ? t('germination.not-noted') : format.day(test.startedOn),
          },
          { name: t('germination.medium'), value: test.medium },
          { name: t('germination.temperature'), value: test.temperature },
          { name: t('germination.first-count'), value: day(test.firstDay) },
          { name: t('germination.last-count'), value: day(test.finalDay) },
          {
            name: t('germination.seeds-from'),
            value: t('germination.seeds-from-value', { stock: test.fromStock ? 'yes' : 'no' }),
          },
          { name: t('germination.note'), value: test.note },
          { name: t('germination.note-at-end'), value: test.finished?.note ?? '' },
        ]}
      />
      <p>
        {test.followedBy === null ? (
          <Link href={planAddress(test.lotId)}>{t('germination.test-again')}</Link>
        ) : (
          <Link href={testAddress(test.followedBy)}>{t('germination.next-stage')}</Link>
        )}
      </p>
    </section>
  )
}

function standing({ due, finished, cancelled }: TestRecord, { say, text: t }: Texts): string {
  if (cancelled !== null) {
    const { on, reason, seedsBack } = cancelled
    return t('germination.given-up-on', { on: { day: on }, reason, back: seedsBack ? 'yes' : 'no' })
  }
  if (finished !== null) return t('germination.over-since', { on: { day: finished.on } })
  return due === null ? '' : capital(say(nextCount(due)))
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
  const { t, pieces, say } = useTexts()
  return (
    <section className="pane-part" aria-label={t('germination.counts')}>
      <h3>{t('germination.counts')}</h3>
      <ul className="ruled dated germ-counts">
        {test.counts.map((count) => (
          <li key={count.on}>
            <span className="soft">
              {count.day === null
                ? format.day(count.on)
                : t('germination.count-day', { on: { day: count.on }, day: count.day })}
            </span>
            <span>
              {tallyOf(sumOf(count.replicates)).map(say).join(', ')}
              {count.replicates.length > 1 && (
                <span className="soft">
                  {' '}
                  {t('germination.normal-each', {
                    each: count.replicates.map(({ normal }) => format.number(normal)).join(', '),
                  })}
                </span>
              )}
            </span>
            {onCorrect !== null && (
              <button type="button" className="word-button" onClick={() => onCorrect(count)}>
                {pieces<ReactNode>(message('germination.correct', { on: { day: count.on } }), {
                  aloud: (words) => (
                    <span key="aloud" className="only-aloud">
                      {words}
                    </span>
                  ),
                })}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}

function tallyOf(tally: Tally): Message[] {
  const taken = CATEGORIES.filter((category) => tally[category] > 0)
  if (taken.length === 0) return [message('germination.nothing-taken')]
  return taken.map((category) => message(`germination.tally-${category}`, { count: tally[category] }))
}
