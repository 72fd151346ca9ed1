import { useState } from 'react'
import { Link } from 'wouter'
import { type Message, message } from '../../../db/messages/message.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
  const plan = usePlan()
  const read = useRead('site.list', {})
  const [garden, setGarden] = useState<number | 'new' | null>(null)
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined || !plan.ready) return <p className="soft waiting">{t('season.opening')}</p>
  const { sites } = read.data
  const lines = plan.checked.data?.lines ?? []
  const clashes = plan.checked.data?.clashes ?? []
  const open = sites.find(({ siteId }) => siteId === garden)
  return (
    <div className="panes plan">
      <section className="panes-list" aria-label={t('season.the-plan')}>
        <header className="head-row">
          <h1>{t('season.plan-of', { year: String(plan.season) })}</h1>
          <Link href={seasonNotesAddress()}>{t('season.notes')}</Link>
          <Link href="/regrow">{t('season.back-to-needs')}</Link>
        </header>
        <SavedSeason visit={plan.visit} />
        <Making plan={plan} gardens={sites.length} />
        {clashes.length > 0 && (
          <div className="note" role="alert">
            <strong className="caution">{t('season.it-clashes')}</strong>
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
      <section className="panes-card plan-right stack-4" aria-label={t('season.the-gardens')}>
        {garden !== null && <GardenForm key={garden} site={open ?? null} onClose={() => setGarden(null)} />}
        <GardensPicture sites={sites} lines={lines} clashes={clashes} />
        {garden === null && (
          <button type="button" className="quiet-button" onClick={() => setGarden('new')}>
            {t('season.add-garden')}
          </button>
        )}
      </section>
    </div>
  )
}

/** Makes the plan, says how good it is and what found no garden, and saves it. */
function Making({ plan, gardens }: { readonly plan: PlanOnTable; readonly gardens: number }) {
  const { t, say } = useTexts()
  const write = useWrite('season-plan.create')
  const { made } = plan
  const { isPending: busy, error } = plan.making
  const clashes = plan.checked.data?.clashes.length ?? 0
  const count = plan.wanted.length
  const from = plan.fromList
    ? t('season.from-list', { count })
    : count === 0
      ? t('season.from-nothing')
      : t('season.from-urgent', { count })
  return (
    <div className="stack-2">
      {gardens === 0 && <p>{t('season.no-garden-yet')}</p>}
      <p className="soft">{from}</p>
      <p className="buttons">
        <ActionButton className="button" off={busy || gardens === 0} onClick={() => plan.making.mutate()}>
          {busy ? t('season.planning') : t('season.make-plan')}
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
          {plan.isSaved && plan.choices.length > 0 ? t('season.plan-saved') : t('season.save-plan')}
        </ActionButton>
      </p>
      {plan.isSaved && plan.choices.length > 0 && <Sheets />}
      {error !== null && <ProblemText problem={error.problem} />}
      {write.error !== null && <ProblemText problem={write.error.problem} />}
      {made !== null && <p role="status">{say(howGood(made))}</p>}
      {made !== null && made.left.length > 0 && (
        <details className="more">
          <summary>{t('season.no-place', { count: made.left.length })}</summary>
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

function howGood({ by, gap, worth, greedyWorth }: Made): Message {
  const quick = by === 'greedy' || gap === null
  return message('season.how-good', {
    best: quick ? 'quick' : gap < 0.0005 ? 'yes' : 'nearly',
    gap: quick ? 0 : Math.ceil(1_000 * gap) / 10,
    worth: Number(worth.toFixed(2)),
    quick: Number(greedyWorth.toFixed(2)),
  })
}

/** The sheets of the saved plan, a page for each garden. */
function Sheets() {
  const { t } = useTexts()
  const [wanted, setWanted] = useState(false)
  const read = useRead('season-plan.print', wanted ? {} : null)
  if (!wanted) {
    return (
      <button type="button" className="quiet-button" onClick={() => setWanted(true)}>
        {t('season.print-sheets')}
      </button>
    )
  }
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return <p className="soft">{t('season.making-sheets')}</p>
  return <PaperPages name={t('season.sheets')} made={read.data} />
}
