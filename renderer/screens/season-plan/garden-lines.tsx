import { Link } from 'wouter'
import type { GrowingSite, PlanLine } from '../../../db/contract/season-plan-operations.ts'
import {
  hoursInWords,
  ISOLATION_METHODS,
  type IsolationMethod,
} from '../../../db/domain/season-plan/isolation-method.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { plantsInWords } from '../../shared/format/words.ts'
import { HandOutSeed } from './hand-out-seed.tsx'
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
