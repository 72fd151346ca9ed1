import { useState } from 'react'
import { Link } from 'wouter'
import type { GrowingSite, PlanLine } from '../../../db/contract/regeneration-operations.ts'
import type { Override } from '../../../db/contract/withdrawal-operations.ts'
import { chanceInWords } from '../../../db/domain/needs/assurance.ts'
import {
  hoursInWords,
  ISOLATION_METHODS,
  type IsolationMethod,
} from '../../../db/domain/season-plan/isolation-method.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { plantsInWords } from '../../shared/format/words.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'
import { seasonNotesAddress } from './grow-out-words.ts'
import type { PlanOnTable } from './use-plan.ts'

const ISOLATION_WORDS: Readonly<Record<IsolationMethod, string>> = {
  open: 'by distance',
  covered: 'under a cover',
  later: 'sown later',
}

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
  const format = useFormat()
  const used = lines.reduce((sum, { areaM2 }) => sum + areaM2, 0)
  const brought = site.took === 0 ? 'first time' : `brought back ${site.broughtBack} of ${site.took}`
  return (
    <section className="plan-garden stack-1" aria-label={site.name}>
      <div className="head-row">
        <h2>
          {number}. {site.name}
        </h2>
        <button type="button" className="word-button" onClick={onChange}>
          Change<span className="only-aloud"> {site.name}</span>
        </button>
      </div>
      <p className="soft">
        {site.grower === '' ? 'nobody named' : site.grower} · {brought} · {format.number(Math.round(used))} of{' '}
        {format.number(site.areaM2)} m² · {lines.length} of {site.mostVarieties} varieties
        {site.seasonDays !== null && ` · ${format.many(site.seasonDays, 'day')} without frost`}
        {site.neighbours.map(({ crop, metres }) => ` · ${crop} flowers ${format.number(metres)} m off`)}
      </p>
      {lines.length === 0 ? (
        <p className="soft">Nothing is planned here.</p>
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
  const format = useFormat()
  const { accessionId } = line
  return (
    <li className="plan-line stack-1" data-clashes={clashes}>
      <p>
        {clashes && <strong className="caution">✕ clashes </strong>}
        <Link href={`/regrow/need/${accessionId}`}>{line.variety}</Link> · {line.crop} ·{' '}
        {plantsInWords(line.plants)} on {format.number(Number(line.areaM2.toFixed(1)))} m²
        {line.way === 'covered'
          ? ' · covered'
          : ` · about ${format.number(line.isolationM)} m from any other ${line.group}`}
        {line.way === 'later' && ' · sown later'}
        {line.hours > 0 && `, ${hoursInWords(line.hours)} of work`}
        {line.apartInTime !== '' && ` · ${line.apartInTime}`}
        {line.biennial && ' · two seasons: keep its roots over winter'}
        {line.unknown !== '' && ` · ${line.unknown}`}
        {line.shortSeason !== '' && <span className="caution"> {line.shortSeason}</span>}
      </p>
      {line.way !== 'covered' && (
        <details className="soft">
          <summary>
            Why about {format.number(line.isolationM)} m<span className="only-aloud">: {line.variety}</span>
          </summary>
          {line.isolationWhy}
        </details>
      )}
      {line.rescue.forKeeper.length > 0 && (
        <details>
          <summary>
            <strong>The last seeds</strong>
            <span className="only-aloud">: {line.variety}</span>
          </summary>
          <ol className="bullets">
            {line.rescue.forKeeper.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ol>
        </details>
      )}
      <p className="row plan-doing">
        <label>
          Garden{' '}
          <select
            aria-label={`Garden of ${line.variety}`}
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
          Kept apart{' '}
          <select
            aria-label={`How ${line.variety} is kept apart`}
            value={line.way}
            onChange={(event) => plan.alter(accessionId, { way: event.target.value as IsolationMethod })}
          >
            {ISOLATION_METHODS.filter(
              (way) => way !== 'later' || line.laterDays !== null || line.way === 'later',
            ).map((way) => (
              <option key={way} value={way}>
                {ISOLATION_WORDS[way]}
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
          stays
        </label>
        <button
          type="button"
          className="word-button"
          aria-label={`Take out ${line.variety}`}
          onClick={() => plan.alter(accessionId, null)}
        >
          Take out
        </button>
      </p>
      <HandOutSeed line={line} isSaved={plan.isSaved} />
    </li>
  )
}

const NOTHING_YET = 'nothing went out to be grown'

/** The seed of one line to its grower, from the right lot, by one key; what wants a reason asks for one first. */
function HandOutSeed({ line, isSaved }: { readonly line: PlanLine; readonly isSaved: boolean }) {
  const write = useWrite('withdrawal.record')
  const today = useToday()
  const [despite, setDespite] = useState<readonly Override[]>([])
  const [reason, setReason] = useState('')
  const { sow, growerId } = line
  const { growOutId } = line
  const became = line.became === NOTHING_YET ? null : <p className="soft">{line.became}</p>
  if (!isSaved || growOutId === null) return became
  if (line.seedOut) {
    return (
      <>
        {became}
        <p>
          <Link href={seasonNotesAddress(growOutId)}>
            Note its season<span className="only-aloud">: {line.variety}</span>
          </Link>
        </p>
      </>
    )
  }
  if (sow === null) return <p className="soft">No seed can be handed out: {line.noSeed}.</p>
  if (growerId === null) return <p className="soft">Name the garden’s grower to hand out its seed.</p>
  const seed = sow.lots.map(({ seeds, lotNumber }) => `${seeds} of ${lotNumber}`).join(' and ')
  const give = (heeded: readonly Override[]) =>
    write.mutate(
      {
        person: { personId: growerId },
        on: today,
        purpose: 'grow-out',
        lines: sow.lots.map(({ lotId, seeds }) => ({ lotId, amount: `${seeds} seeds` })),
        growOutId,
        promised: `seed of ${line.variety}`,
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
        title={`Hand ${seed} to ${line.grower} all the same?`}
        sendWord="Hand it out"
        busy={write.isPending || reason.trim() === ''}
        error={write.error}
        onSend={() => give(despite)}
        onClose={() => {
          setDespite([])
          write.reset()
        }}
      >
        <TextField
          label="Why all the same"
          step="reason"
          value={reason}
          onChange={setReason}
          hint="such as: the working lot is empty"
        />
      </CardForm>
    )
  }
  return (
    <>
      {became}
      <p>
        <ActionButton className="quiet-button" off={write.isPending} onClick={() => give([])}>
          {`Hand ${seed} to ${line.grower}`}
        </ActionButton>
        <span className="soft">
          {sow.enough ? ` all plants come up ${chanceInWords(sow.chance)}` : ' all that may be risked'}
        </span>
      </p>
      {problem !== undefined && <ProblemText problem={problem} />}
    </>
  )
}
