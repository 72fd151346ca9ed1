import { type ComponentProps, useEffect, useLayoutEffect, useRef, useState } from 'react'
import type { LotRecord } from '../../../db/contract/stock-operations.ts'
import { cautionName } from '../../../db/domain/cautions/caution-text.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { LotActions } from './actions/lot-actions.tsx'
import { LotAway } from './lot-away.tsx'
import { LotFacts, LotFamily } from './lot-facts.tsx'
import { LotLedger } from './lot-ledger.tsx'
import { LotMeasurements, LotStorage } from './lot-measurements.tsx'
import { LotTraceLinks } from './lot-trace-links.tsx'
import { LotOutlook } from './outlook/lot-outlook.tsx'
import './lot-card.css'

/** A key held down runs through the list; the card follows once it rests for so long. */
const REST_MS = 60

interface LotCardProps {
  readonly lotId: number
  /** Whether a card that comes up takes the focus: where nothing else is on the screen. */
  readonly takesFocus: boolean
  /** Not null where the keeper asked for the focus to go to this card, anew each time. */
  readonly entered: object | null
}

/** The index card of a lot. */
export function LotCard({ lotId, takesFocus, entered }: LotCardProps) {
  const resting = useResting(lotId, REST_MS)
  const lot = useRead('lot.get', { lotId: resting }, { keepLast: true })
  const forms = useOpenForm<string>()
  const [unfolded, setUnfolded] = useState(false)
  const { closeAny } = forms
  // biome-ignore lint/correctness/useExhaustiveDependencies: a form closes as another lot is asked for, before a press for that lot can fall
  useLayoutEffect(() => closeAny, [lotId, closeAny])
  const top = useRef<HTMLDivElement>(null)
  const shown = lot.data?.lotId
  useEffect(() => {
    if (shown === undefined) return
    top.current?.parentElement?.scrollTo({ top: 0 })
    if (takesFocus) top.current?.querySelector<HTMLElement>('h2')?.focus()
  }, [shown, takesFocus])
  useEffect(() => {
    if (entered !== null && shown === lotId) top.current?.querySelector<HTMLElement>('h2')?.focus()
  }, [entered, shown, lotId])
  if (lot.data === undefined) return lot.error === null ? null : <ProblemText problem={lot.error.problem} />
  return (
    <div ref={top}>
      <OneLot
        key={lot.data.lotId}
        lot={lot.data}
        askedLotId={lotId}
        forms={forms}
        unfolded={unfolded}
        onUnfold={setUnfolded}
      />
    </div>
  )
}

function OneLot({ lot, ...actions }: ComponentProps<typeof LotActions>) {
  const { t } = useTexts()
  return (
    <Card className="lot-card" name={t('shelf.card-name', { variety: lot.variety, lot: lot.lotNumber })}>
      <LotHead lot={lot} />
      <div className="card-sheet">
        <LotStock lot={lot} />
        <LotTerms lot={lot} />
        <LotCautions lot={lot} />
        <LotActions lot={lot} {...actions} />
        <LotFacts lot={lot} />
        <LotAway lot={lot} />
        <LotFamily lot={lot} />
        <LotTraceLinks lotId={lot.lotId} />
        <LotOutlook lotId={lot.lotId} />
        <LotStorage lotId={lot.lotId} />
        <LotMeasurements lot={lot} />
        <LotLedger lot={lot} />
      </div>
    </Card>
  )
}

/** The tab of the card with the lot's number, and the heading below it. */
function LotHead({ lot }: { readonly lot: LotRecord }) {
  const { t } = useTexts()
  return (
    <header>
      <p className="card-tab">
        <span className="only-aloud">{t('shelf.lot')} </span>
        <strong>{lot.lotNumber}</strong>
        <span className="card-tab-role">{t(`shelf.role-${lot.role}`)}</span>
      </p>
      <div className="card-head card-title">
        <h2 tabIndex={-1}>{lot.variety}</h2>
        <p className="soft">
          {lot.crop}, <i lang="la">{lot.species}</i>
          {lot.synonyms.length > 0 && <>; {t('shelf.also-known', { names: { list: lot.synonyms } })}</>}
        </p>
        {lot.quarantined && <StateMark mark="quarantine" />}
      </div>
    </header>
  )
}

/** What the giver wishes of the seed: who may have it, then the rest, short sentences side by side. */
function LotTerms({ lot: { limitsTold } }: { readonly lot: LotRecord }) {
  const { t } = useTexts()
  if (limitsTold.length === 0) return null
  return (
    <section className="pane-part card-cautions card-terms" aria-label={t('terms.terms')}>
      {limitsTold.map((line, index) => (
        <p key={line} className={index === 0 ? 'strong' : undefined}>
          {line}
        </p>
      ))}
    </section>
  )
}

/** What can hurt somebody or break a law, in plain text; and why the lot is kept back. */
function LotCautions({ lot }: { readonly lot: LotRecord }) {
  const { t, say } = useTexts()
  if (lot.cautions.length === 0 && !lot.quarantined) return null
  const saidBelow = lot.cautions.some(({ text }) => lot.quarantineReason.includes(text))
  return (
    <section className="pane-part card-cautions" aria-label={t('shelf.cautions')}>
      {lot.quarantined && (
        <p>
          <strong>{t('shelf.kept-back')}</strong> {saidBelow ? '' : lot.quarantineReason}
        </p>
      )}
      {lot.cautions.map(({ caution, note, text, since, by, from }) => (
        <p key={`${caution} ${note} ${since} ${from?.lotId}`}>
          <strong>{capital(say(cautionName(caution)))}.</strong> {text}
          {note !== '' && !text.includes(note) && <> ({note})</>}{' '}
          <span className="soft">
            {t('shelf.caution-since', {
              day: { day: since },
              by: by === '' ? 'no' : 'yes',
              who: by,
              of: from === null ? 'no' : 'yes',
              lot: from?.lotNumber ?? '',
            })}
          </span>
        </p>
      ))}
    </section>
  )
}

/** How the accession stands: the bar, the sentence, the reasons, and the arithmetic line by line. */
function LotStock({ lot }: { readonly lot: LotRecord }) {
  const { t } = useTexts()
  const { stock } = lot
  return (
    <section className="pane-part" aria-label={t('shelf.how-it-stands')}>
      <div className="head-row">
        <p className="strong">{capital(stock.sentence)}</p>
        <StateMark mark={stock.state} />
      </div>
      <SeedBar large {...stock} />
      {stock.reasons.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
      <details className="more">
        <summary>{t('shelf.how-worked-out')}</summary>
        <ul className="ruled">
          {stock.arithmetic.map((line) => (
            <li key={line}>{line}</li>
          ))}
          {stock.viabilityNotes.map((note) => (
            <li key={note}>{note}</li>
          ))}
          <li>{t('shelf.living-in-lot', { amount: lot.quantity.words, living: lot.lotLiving })}</li>
        </ul>
      </details>
    </section>
  )
}

/** The value at once when it was still before; while it keeps changing, only once it rests for `ms` milliseconds. */
function useResting<T>(value: T, ms: number): T {
  const [resting, setResting] = useState(value)
  const changedAt = useRef(Number.NEGATIVE_INFINITY)
  useEffect(() => {
    const now = performance.now()
    const wasStill = now - changedAt.current > ms
    changedAt.current = now
    if (wasStill) {
      setResting(value)
      return
    }
    const timer = setTimeout(() => setResting(value), ms)
    return () => clearTimeout(timer)
  }, [value, ms])
  return resting
}
