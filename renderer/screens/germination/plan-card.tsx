import { useState } from 'react'
import { Link } from 'wouter'
import type { TestPlan } from '../../../db/contract/germination-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { isBegun, useSavedForm } from '../../shared/card-form/use-saved-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { seedsOf } from '../../shared/format/seeds-of.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { GerminationForm } from '../../shared/germination-form/germination-form.tsx'
import { Card } from '../../shared/panes/card.tsx'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import { BeginForm } from './begin-form.tsx'
import { SpendAdvice } from './spend-advice.tsx'

interface PlanCardProps {
  readonly lotId: number
  readonly onBegun: (testId: number) => void
}

/** How long the typed figures rest before the advice is recomputed. */
const CALM_MS = 300

const ASKED = { threshold: '', expected: '' }

/** A lot to be tested: begin here, how many seeds to spend, and under which conditions. */
export function PlanCard({ lotId, onBegun }: PlanCardProps) {
  const { t } = useTexts()
  const { typed, change } = useSavedForm(`plan/${lotId}`, ASKED)
  const asked = useSettled(JSON.stringify(partsOf(typed)), CALM_MS)
  const read = useRead('germination.plan', { lotId, ...JSON.parse(asked) }, { keepLast: true })
  const plan = read.data
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (plan === undefined) return null
  return (
    <Card className="card germ-card" name={t('germination.plan-of', { variety: plan.variety })}>
      <header className="card-head">
        <h2 tabIndex={-1}>{plan.variety}</h2>
        <p>
          {plan.crop} · <Link href={lotAddress(lotId)}>{plan.lotNumber}</Link> ·{' '}
          {t('germination.holds', { seeds: seedsOf(plan.available, plan.unit) })}
        </p>
      </header>
      {plan.cautions.map((caution) => (
        <p key={caution} className="germ-caution caution strong">
          {caution} {t('germination.gloves')}
        </p>
      ))}
      <Doing plan={plan} onBegun={onBegun} />
      <SpendAdvice plan={plan} typed={typed} onChange={change} />
      <Conditions plan={plan} />
    </Card>
  )
}

/** The two figures as the advice takes them; a field that is empty or no percentage is left to the app. */
function partsOf({ threshold, expected }: typeof ASKED): { threshold?: number; expected?: number } {
  const read = (typed: string, least: number, most: number) => {
    const percent = Number(typed.trim().replace(',', '.').replace(/\s*%$/, ''))
    return typed.trim() !== '' && percent >= least && percent <= most ? percent / 100 : null
  }
  const above = read(threshold, 5, 99)
  const alive = read(expected, 0, 100)
  return { ...(above === null ? {} : { threshold: above }), ...(alive === null ? {} : { expected: alive }) }
}

function Doing({ plan, onBegun }: { readonly plan: TestPlan; readonly onBegun: (testId: number) => void }) {
  const { t } = useTexts()
  const [over, setOver] = useState(false)
  const draftName = `${plan.lotId}/germination`
  return (
    <div className="pane-part">
      <div className="buttons">
        <button type="button" className="quiet-button" aria-pressed={!over} onClick={() => setOver(false)}>
          {t('germination.begin-title')}
        </button>
        <button type="button" className="quiet-button" aria-pressed={over} onClick={() => setOver(true)}>
          {t('germination.over-enter')}
          {!over && isBegun(draftName) && <span className="soft"> {t('germination.begun')}</span>}
        </button>
      </div>
      {over ? (
        <GerminationForm key="over" lot={plan} draftName={draftName} onClose={() => setOver(false)} />
      ) : (
        <div key="begin" data-next="">
          <BeginForm plan={plan} onBegun={onBegun} />
        </div>
      )}
    </div>
  )
}

function Conditions({ plan }: { readonly plan: TestPlan }) {
  const { t } = useTexts()
  const { conditions } = plan
  const { firstDay, finalDay, finalDayNote } = conditions
  const lastDay =
    finalDayNote === ''
      ? t('germination.on-day', { day: finalDay })
      : t('germination.on-day-note', { day: finalDay, note: finalDayNote })
  return (
    <section className="pane-part" aria-label={t('germination.conditions')}>
      <h3>{t('germination.conditions-title')}</h3>
      <FactList
        facts={[
          { name: t('germination.temperature'), value: conditions.temperature },
          { name: t('germination.medium'), value: conditions.media.join('; ') },
          {
            name: t('germination.first-count'),
            value: firstDay === null ? '' : t('germination.on-day', { day: firstDay }),
          },
          { name: t('germination.last-count'), value: lastDay },
          { name: t('germination.dormant'), value: conditions.notes },
          {
            name: t('germination.hard-seed'),
            value: conditions.hardSeedPossible ? t('germination.hard-seed-may') : '',
          },
        ]}
      />
      <p className="soft">
        {conditions.source} ({conditions.confidence})
      </p>
    </section>
  )
}
