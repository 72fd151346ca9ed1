import { useState } from 'react'
import { Link } from 'wouter'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SavedSeason } from '../../shared/season-draft/saved-season.tsx'
import { GardenForm } from './garden-form.tsx'
import { GardenLines } from './garden-lines.tsx'
import { GardensPicture } from './gardens-picture.tsx'
import { seasonNotesAddress } from './grow-out-words.ts'
import './season-plan.css'
import { type Made, type PlanOnTable, usePlan } from './use-plan.ts'

/** Which variety grows in which garden: by grower as a table, and as a picture with what clashes. */
export function SeasonPlanScreen() {
  const plan = usePlan()
  const read = useRead('site.list', {})
  const [garden, setGarden] = useState<number | 'new' | null>(null)
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined || !plan.ready) return <p className="soft waiting">Opening…</p>
  const { sites } = read.data
  const lines = plan.checked.data?.lines ?? []
  const clashes = plan.checked.data?.clashes ?? []
  const open = sites.find(({ siteId }) => siteId === garden)
  return (
    <div className="panes plan">
      <section className="panes-list" aria-label="The plan">
        <header className="head-row">
          <h1>Plan of season {plan.season}</h1>
          <Link href={seasonNotesAddress()}>Season notes</Link>
          <Link href="/regrow">Back to what to regrow</Link>
        </header>
        <SavedSeason visit={plan.visit} />
        <Making plan={plan} gardens={sites.length} />
        {clashes.length > 0 && (
          <div className="note" role="alert">
            <strong className="caution">It clashes</strong>
            <ul className="bullets">
              {clashes.map(({ sentence }) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          </div>
        )}
        {plan.checked.error !== null && <ProblemText problem={plan.checked.error.problem} />}
        {sites.map((site, index) => (
          <GardenLines
            key={site.siteId}
            site={site}
            number={index + 1}
            sites={sites}
            lines={lines.filter(({ siteId }) => siteId === site.siteId)}
            clashing={clashes.flatMap(({ accessionIds }) => accessionIds)}
            plan={plan}
            onChange={() => setGarden(site.siteId)}
          />
        ))}
      </section>
      <section className="panes-card plan-right stack-4" aria-label="The gardens">
        {garden !== null && <GardenForm key={garden} site={open ?? null} onClose={() => setGarden(null)} />}
        <GardensPicture sites={sites} lines={lines} clashes={clashes} />
        {garden === null && (
          <button type="button" className="quiet-button" onClick={() => setGarden('new')}>
            Add a garden
          </button>
        )}
      </section>
    </div>
  )
}

/** Makes the plan, says how good it is and what found no garden, and saves it. */
function Making({ plan, gardens }: { readonly plan: PlanOnTable; readonly gardens: number }) {
  const format = useFormat()
  const write = useWrite('season-plan.create')
  const { made } = plan
  const { isPending: busy, error } = plan.making
  const clashes = plan.checked.data?.clashes.length ?? 0
  const from = plan.fromList
    ? `${plan.wanted.length} ticked on this season’s list`
    : plan.wanted.length === 0
      ? 'nothing yet; tick on Regrow what is to be grown and save the list'
      : `the ${plan.wanted.length} most urgent; tick others on Regrow and save the list`
  return (
    <div className="stack-2">
      {gardens === 0 && <p>There is no garden yet. Add the first one, with its bed and where it lies.</p>}
      <p className="soft">To be placed: {from}.</p>
      <p className="buttons">
        <ActionButton className="button" off={busy || gardens === 0} onClick={() => plan.making.mutate()}>
          {busy ? 'Planning, up to eight seconds…' : 'Make a plan'}
        </ActionButton>
        <ActionButton
          className="quiet-button"
          off={
            write.isPending ||
            plan.isSaved ||
            plan.choices.length === 0 ||
            clashes > 0 ||
            plan.checked.isPlaceholderData
          }
          onClick={() => write.mutate({ choices: [...plan.choices] })}
        >
          {plan.isSaved && plan.choices.length > 0 ? 'This plan is saved' : 'Save this plan'}
        </ActionButton>
      </p>
      {plan.isSaved && plan.choices.length > 0 && <Sheets />}
      {error !== null && <ProblemText problem={error.problem} />}
      {write.error !== null && <ProblemText problem={write.error.problem} />}
      {made !== null && (
        <p role="status">
          {howGood(made)}; it averts a loss of {format.number(Number(made.worth.toFixed(2)))}, where a quick
          plan averts {format.number(Number(made.greedyWorth.toFixed(2)))}.
        </p>
      )}
      {made !== null && made.left.length > 0 && (
        <details className="more">
          <summary>{made.left.length} found no garden</summary>
          <ul className="bullets">
            {made.left.map(({ accessionId, variety, why }) => (
              <li key={accessionId}>
                <strong>{variety}</strong>: {why}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}

function howGood({ by, gap }: Made): string {
  if (by === 'greedy' || gap === null) return 'A quick plan, not compared with the best'
  const percent = Math.ceil(1_000 * gap) / 10
  return gap < 0.0005 ? 'The best plan there is' : `At most ${percent} % below the best plan there is`
}

/** The sheets of the saved plan, a page for each garden. */
function Sheets() {
  const [wanted, setWanted] = useState(false)
  const read = useRead('season-plan.print', wanted ? {} : null)
  if (!wanted) {
    return (
      <button type="button" className="quiet-button" onClick={() => setWanted(true)}>
        Print the grower sheets
      </button>
    )
  }
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return <p className="soft">Making the sheets…</p>
  return <PaperPages name="The grower sheets" made={read.data} />
}
