import { type ReactNode, useEffect, useRef, useState } from 'react'
import { Link, useLocation } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { planAddress, testAddress } from '../../shared/addresses.ts'
import { call } from '../../shared/client/call.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { SheetToPrint } from '../../shared/labels/sheet-to-print.tsx'
import { type PaneRow, PaneRows } from '../../shared/panes/pane-rows.tsx'
import { useOpening } from '../../shared/panes/use-opening.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { OtherVisits } from '../../shared/table-form/other-visits.tsx'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import { useDraft } from '../../shared/table-form/use-draft.ts'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'
import {
  type BenchDraft,
  type BenchStep,
  countOf,
  countsTyped,
  emptyBench,
  isBlankBench,
  stepBench,
} from './bench-draft.ts'
import { PlanCard } from './plan-card.tsx'
import { dueRow, SHEET, testRow } from './rows.tsx'
import { TestCard } from './test-card.tsx'
import './germination.css'

type Shown = 'bench' | 'due' | 'over'

/** What is due within so many days stands in the list. */
const DUE_WITHIN_DAYS = 180

/** So many of what is due are listed at a time. */
const DUE_AT_ONCE = 200

const RULES = { kind: 'bench', blank: emptyBench, step: stepBench, isBlank: isBlankBench } as const

interface GerminationScreenProps {
  /** 'test', 'lot', 'sheet' or nothing. */
  readonly part?: string
  /** The test or the lot that is shown. */
  readonly id?: number
}

/** The test bench: what is counted today and what is to be tested on the left, the card of one on the right. */
export function GerminationScreen({ part = '', id = 0 }: GerminationScreenProps) {
  const texts = useTexts()
  const { t } = texts
  const format = useFormat()
  const bench = useRead('germination.list', {})
  const [dueFrom, setDueFrom] = useState(0)
  const due = useRead(
    'germination.list-due',
    { withinDays: DUE_WITHIN_DAYS, offset: dueFrom, limit: DUE_AT_ONCE },
    { keepLast: true },
  )
  const [shown, setShown] = useState<Shown>('bench')
  const visit = useDraft<BenchDraft, BenchStep>(RULES)
  const over = useRead('germination.list', shown === 'over' ? { state: 'finished', limit: 200 } : null)
  const givenUp = useRead('germination.list', shown === 'over' ? { state: 'cancelled', limit: 50 } : null)
  const [, go] = useLocation()
  const card = useRef<HTMLElement>(null)
  const first = bench.data?.tests[0]
  useEffect(() => {
    if (part === '' && first !== undefined) go(testAddress(first.testId), { replace: true })
  }, [part, first, go])
  const openCard = useOpening(card)
  const error = bench.error ?? due.error ?? over.error ?? givenUp.error
  if (error !== null) return <ProblemText problem={error.problem} />
  const { draft, dispatch } = visit
  if (bench.data === undefined || due.data === undefined || draft === null)
    return <p className="soft waiting">{t('germination.opening')}</p>
  const rows: Record<Shown, readonly PaneRow[]> = {
    bench: bench.data.tests.map((test) => testRow(test, texts)),
    due: due.data.lots.map((lot) => dueRow(lot, texts, format)),
    over: [...(over.data?.tests ?? []), ...(givenUp.data?.tests ?? [])].map((test) => testRow(test, texts)),
  }
  const goTo = (address: string) => {
    go(address)
    openCard(address)
  }
  return (
    <div className="panes">
      <section className="panes-list" aria-label={t('germination.bench')}>
        <div className="head-row">
          <h1>{t('germination.title')}</h1>
          {bench.data.total > 0 && <Link href={SHEET}>{t('germination.sheet-link')}</Link>}
        </div>
        <LotQuestion onPick={(lotId) => goTo(planAddress(lotId))} />
        <Lists shown={shown} onPick={setShown} bench={bench.data} due={due.data} />
        {rows[shown].length === 0 && <p className="soft">{t(`germination.none-${shown}`)}</p>}
        <OtherVisits
          visit={visit}
          inWords={(other) => t('germination.typed-of', { tests: countsTyped(other) })}
        />
        <PaneRows label={t(`germination.list-${shown}`)} rows={rows[shown]} onOpen={openCard} />
        {shown === 'due' && <Sources lots={due.data.lots} />}
        {shown === 'due' && due.data.total > DUE_AT_ONCE && (
          <DuePages from={dueFrom} shown={rows.due.length} total={due.data.total} onTurn={setDueFrom} />
        )}
      </section>
      <section className="panes-card" aria-label={t('germination.test')} ref={card}>
        {part === 'test' && (
          <TestCard
            key={`test-${id}`}
            testId={id}
            kept={{
              typed: countOf(draft, id),
              change: (part) => dispatch({ kind: 'typed', testId: id, change: part }),
              discard: () => dispatch({ kind: 'discard', testId: id }),
            }}
            safe={visit.kept}
          />
        )}
        {part === 'lot' && (
          <PlanCard key={`lot-${id}`} lotId={id} onBegun={(testId) => goTo(testAddress(testId))} />
        )}
        {part === 'sheet' && <BenchSheet testId={id === 0 ? null : id} />}
        {part === '' && first === undefined && (
          <Empty late={due.data.late} onShowDue={() => setShown('due')} />
        )}
      </section>
    </div>
  )
}

/** The rules by which the lots in the list are due. */
function Sources({ lots }: Pick<Value<'germination.list-due'>, 'lots'>) {
  const { t } = useTexts()
  const sources = [...new Set(lots.map(({ source, confidence }) => `${source} (${confidence})`))]
  if (sources.length === 0) return null
  return (
    <details className="more">
      <summary>{t('germination.why-these-days')}</summary>
      <ul className="bullets">
        {sources.map((source) => (
          <li key={source}>{source}</li>
        ))}
      </ul>
    </details>
  )
}

interface DuePagesProps {
  /** How many stand before the first that is shown. */
  readonly from: number
  readonly shown: number
  readonly total: number
  readonly onTurn: (from: number) => void
}

/** Which part of what is due is shown, and the way to the rest. */
function DuePages({ from, shown, total, onTurn }: DuePagesProps) {
  const { t } = useTexts()
  const last = from + shown
  return (
    <p className="buttons">
      <span className="soft" role="status">
        {t('germination.pages', { from: from + 1, to: last, total })}
      </span>
      {from > 0 && (
        <button type="button" className="word-button" onClick={() => onTurn(Math.max(0, from - DUE_AT_ONCE))}>
          {t('germination.pages-before')}
        </button>
      )}
      {last < total && (
        <button type="button" className="word-button" onClick={() => onTurn(last)}>
          {t('germination.pages-next', { count: Math.min(DUE_AT_ONCE, total - last) })}
        </button>
      )}
    </p>
  )
}

interface ListsProps {
  readonly shown: Shown
  readonly onPick: (shown: Shown) => void
  readonly bench: Value<'germination.list'>
  readonly due: Value<'germination.list-due'>
}

function Lists({ shown, onPick, bench, due }: ListsProps) {
  const { t } = useTexts()
  const said: Record<Shown, string> = {
    bench: bench.toCount === 0 ? '' : t('germination.to-count', { count: bench.toCount }),
    due: due.late === 0 ? '' : t('germination.due-now', { count: due.late }),
    over: '',
  }
  return (
    <nav className="germ-lists" aria-label={t('germination.lists')}>
      {(['bench', 'due', 'over'] as const).map((name) => (
        <button
          key={name}
          type="button"
          className="germ-list-name"
          {...(name === shown ? { 'aria-current': 'true' as const } : {})}
          onClick={() => onPick(name)}
        >
          <span>{t(`germination.list-${name}`)}</span>
          {said[name] !== '' && <span className="small strong caution">{said[name]}</span>}
        </button>
      ))}
    </nav>
  )
}

function Empty({ late, onShowDue }: { readonly late: number; readonly onShowDue: () => void }): ReactNode {
  const { t } = useTexts()
  return (
    <div className="stack-3">
      <p>{t('germination.empty')}</p>
      {late > 0 && (
        <p>
          {t('germination.lots-due', { count: late })}{' '}
          <button type="button" className="word-button" onClick={onShowDue}>
            {t('germination.show-due')}
          </button>
        </p>
      )}
    </div>
  )
}

/** Every lot by scan, number or letters: the reserve is tested too. */
const ANY_LOT: SuggestionSource<{ readonly lotId: number }> = {
  name: 'lots-to-test',
  find: async (text) => {
    const { lots } = await call('collection.search', { text, limit: 8 })
    return lots.map(({ lotId, lotNumber, variety, crop, words }) => ({
      key: String(lotId),
      name: variety,
      detail: [lotNumber, crop, words].filter((part) => part !== '').join(' · '),
      item: { lotId },
    }))
  },
}

/** Which lot is tested next. */
function LotQuestion({ onPick }: { readonly onPick: (lotId: number) => void }) {
  const [text, setText] = useState('')
  const { t } = useTexts()
  return (
    <SuggestField
      label={t('germination.find-lot')}
      text={text}
      chosen={false}
      onText={setText}
      source={ANY_LOT}
      onPick={({ lotId }) => {
        setText('')
        onPick(lotId)
      }}
      nothingFound={(typed) => t('germination.find-lot-none', { typed })}
      placeholder={t('germination.find-lot-placeholder')}
    />
  )
}

/** The sheet for the bench: one test, or every test under way, with room for its counts. */
function BenchSheet({ testId }: { readonly testId: number | null }) {
  const { t } = useTexts()
  return (
    <SheetToPrint
      className="stack-3"
      title={t('germination.sheet')}
      purpose={t('germination.sheet-purpose')}
      name={t('germination.sheet-name')}
      sheet={useRead('germination.print', testId === null ? {} : { testIds: [testId] })}
    />
  )
}
