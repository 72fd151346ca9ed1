import { useState } from 'react'
import { Link } from 'wouter'
import type { GrowingSite, PlanLine } from '../../../db/contract/regeneration-operations.ts'
import type { Override } from '../../../db/contract/withdrawal-operations.ts'
import { timesIn100 } from '../../../db/domain/needs/assurance.ts'
import {
  ISOLATION_METHODS,
  type IsolationMethod,
  toldHours,
} from '../../../db/domain/season-plan/isolation-method.ts'
import { type MessageId, message } from '../../../db/messages/message.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'
import { ALOUD } from './aloud.tsx'
import { seasonNotesAddress } from './grow-out-words.ts'
import type { PlanOnTable } from './use-plan.ts'

const ISOLATION_WORDS = {
  open: 'season.by-distance',
  covered: 'season.under-cover',
  later: 'season.sown-later',
} as const satisfies Record<IsolationMethod, MessageId>

interface GardenLinesProps {
  readonly site: GrowingSite
  /** By which the picture names it. */
  readonly number: number
  readonly sites: readonly GrowingSite[]
  readonly lines: readonly PlanLine[]
  readonly clashing: readonly number[]
  readonly plan: PlanOnTable
  readonly onChange: () => void
}

/** One garden with what is planned in it: each line can be moved, covered, kept, taken out, and its seed handed out. */
export function GardenLines({ site, number, sites, lines, clashing, plan, onChange }: GardenLinesProps) {
  const { t, pieces } = useTexts()
  const used = lines.reduce((sum, { areaM2 }) => sum + areaM2, 0)
  const facts = [
    site.grower === '' ? t('season.nobody-named') : site.grower,
    site.took === 0
      ? t('season.first-time')
      : t('season.brought-back', { back: site.broughtBack, took: site.took }),
    t('season.bed-used', { used: Math.round(used), area: site.areaM2 }),
    t('season.varieties-used', { planned: lines.length, most: site.mostVarieties }),
    ...(site.seasonDays === null ? [] : [t('season.frost-free', { days: site.seasonDays })]),
    ...site.neighbours.map(({ crop, metres }) => t('season.flowers-off', { crop, metres })),
  ]
  return (
    <section className="plan-garden stack-1" aria-label={site.name}>
      <div className="head-row">
        <h2>
          {number}. {site.name}
        </h2>
        <button type="button" className="word-button" onClick={onChange}>
          {pieces(message('season.change-garden', { garden: site.name }), ALOUD)}
        </button>
      </div>
      <p className="soft">{facts.join(' · ')}</p>
      {lines.length === 0 ? (
        <p className="soft">{t('season.nothing-planned')}</p>
      ) : (
        <ul className="ruled">
          {lines.map((line) => (
            <OneLine
              key={line.accessionId}
              line={line}
              sites={sites}
              clashes={clashing.includes(line.accessionId)}
              plan={plan}
            />
          ))}
        </ul>
      )}
    </section>
  )
}

interface OneLineProps {
  readonly line: PlanLine
  readonly sites: readonly GrowingSite[]
  readonly clashes: boolean
  readonly plan: PlanOnTable
}

function OneLine({ line, sites, clashes, plan }: OneLineProps) {
  const { t, pieces } = useTexts()
  const { accessionId } = line
  const facts = [
    line.crop,
    t('season.plants-on', { plants: line.plants, area: Number(line.areaM2.toFixed(1)) }),
    line.way === 'covered'
      ? t('season.covered')
      : t('season.metres-from', { metres: line.isolationM, group: line.group }),
    ...(line.way === 'later' ? [t('season.sown-later')] : []),
    ...(line.hours > 0 ? [t('season.work', { hours: toldHours(line.hours) })] : []),
    line.apartInTime,
    ...(line.biennial ? [t('season.two-seasons')] : []),
    line.unknown,
  ]
  return (
    <li className="plan-line stack-1" data-clashes={clashes}>
      <p>
        {clashes && <strong className="caution">✕ {t('season.clashes')} </strong>}
        <Link href={`/regrow/need/${accessionId}`}>{line.variety}</Link> ·{' '}
        {facts.filter((fact) => fact !== '').join(' · ')}
        {line.shortSeason !== '' && <span className="caution"> {line.shortSeason}</span>}
      </p>
      {line.way !== 'covered' && (
        <details className="soft">
          <summary>
            {pieces(message('season.why-metres', { metres: line.isolationM, variety: line.variety }), ALOUD)}
          </summary>
          {line.isolationWhy}
        </details>
      )}
      {line.rescue.forKeeper.length > 0 && (
        <details>
          <summary>{pieces(message('season.last-seeds-of', { variety: line.variety }), ALOUD)}</summary>
          <ol className="bullets">
            {line.rescue.forKeeper.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ol>
        </details>
      )}
      <p className="row plan-doing">
        <label>
          {t('season.garden')}{' '}
          <select
            aria-label={t('season.garden-of', { variety: line.variety })}
            value={line.siteId}
            onChange={(event) => plan.alter(accessionId, { siteId: Number(event.target.value) })}
          >
            {sites.map(({ siteId, name }) => (
              <option key={siteId} value={siteId}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          {t('season.kept-apart')}{' '}
          <select
            aria-label={t('season.how-kept-apart', { variety: line.variety })}
            value={line.way}
            onChange={(event) => plan.alter(accessionId, { way: event.target.value as IsolationMethod })}
          >
            {ISOLATION_METHODS.filter(
              (way) => way !== 'later' || line.laterDays !== null || line.way === 'later',
            ).map((way) => (
              <option key={way} value={way}>
                {t(ISOLATION_WORDS[way])}
              </option>
            ))}
          </select>
        </label>
        <label>
          <input
            type="checkbox"
            checked={plan.locked.includes(accessionId)}
            onChange={() => plan.lock(accessionId)}
          />{' '}
          {t('season.stays')}
        </label>
        <button
          type="button"
          className="word-button"
          aria-label={t('season.take-out-variety', { variety: line.variety })}
          onClick={() => plan.alter(accessionId, null)}
        >
          {t('season.take-out')}
        </button>
      </p>
      <HandOutSeed line={line} isSaved={plan.isSaved} />
    </li>
  )
}

/** The seed of one line to its grower, from the right lot, by one key; what wants a reason asks for one first. */
function HandOutSeed({ line, isSaved }: { readonly line: PlanLine; readonly isSaved: boolean }) {
  const { t, pieces } = useTexts()
  const write = useWrite('withdrawal.record')
  const today = useToday()
  const [despite, setDespite] = useState<readonly Override[]>([])
  const [reason, setReason] = useState('')
  const { sow, growerId } = line
  const { growOutId } = line
  const became = line.became.length === 0 ? null : <p className="soft">{line.became.join('; ')}</p>
  if (!isSaved || growOutId === null) return became
  if (line.seedOut) {
    return (
      <>
        {became}
        <p>
          <Link href={seasonNotesAddress(growOutId)}>
            {pieces(message('season.note-its-season', { variety: line.variety }), ALOUD)}
          </Link>
        </p>
      </>
    )
  }
  if (sow === null) return <p className="soft">{t('season.no-seed', { why: { list: line.noSeed } })}</p>
  if (growerId === null) return <p className="soft">{t('season.no-grower-yet')}</p>
  const seed = {
    list: sow.lots.map(({ seeds, lotNumber }) => message('season.seeds-of-lot', { seeds, lot: lotNumber })),
  }
  const give = (heeded: readonly Override[]) =>
    write.mutate(
      {
        person: { personId: growerId },
        on: today,
        purpose: 'grow-out',
        lines: sow.lots.map(({ lotId, seeds }) => ({ lotId, amount: `${seeds} seeds` })),
        growOutId,
        promised: t('season.promised', { variety: line.variety }),
        despite: [...heeded],
        reason,
      },
      {
        onError: ({ problem }) => {
          if (problem.code === 'caution') setDespite([...heeded, ...(problem.choices as Override[])])
        },
      },
    )
  const problem = write.error?.problem
  if (despite.length > 0) {
    return (
      <CardForm
        title={t('season.hand-out-anyway', { seed, grower: line.grower })}
        sendWord={t('season.hand-it-out')}
        busy={write.isPending || reason.trim() === ''}
        error={write.error}
        onSend={() => give(despite)}
        onClose={() => {
          setDespite([])
          write.reset()
        }}
      >
        <TextField
          label={t('season.reason-anyway')}
          step="reason"
          value={reason}
          onChange={setReason}
          hint={t('season.reason-hint')}
        />
      </CardForm>
    )
  }
  return (
    <>
      {became}
      <p>
        <ActionButton className="quiet-button" off={write.isPending} onClick={() => give([])}>
          {t('season.hand-out', { seed, grower: line.grower })}
        </ActionButton>
        <span className="soft">
          {' '}
          {sow.enough ? t('season.all-come-up', { times: timesIn100(sow.chance) }) : t('season.all-at-risk')}
        </span>
      </p>
      {problem !== undefined && <ProblemText problem={problem} />}
    </>
  )
}
