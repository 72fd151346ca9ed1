import { useState } from 'react'
import { Link } from 'wouter'
import type { TestPlan } from '../../../db/contract/germination-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { isBegun, useSavedForm } from '../../shared/card-form/use-saved-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
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
  const { typed, change } = useSavedForm(`plan/${lotId}`, ASKED)
  const asked = useSettled(JSON.stringify(partsOf(typed)), CALM_MS)
  const read = useRead('germination.plan', { lotId, ...JSON.parse(asked) }, { keepLast: true })
  const plan = read.data
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (plan === undefined) return null
  return (
    <Card className="card germ-card" name={`Plan for ${plan.variety}`}>
      <header className="card-head">
        <h2 tabIndex={-1}>{plan.variety}</h2>
        <p>
          {plan.crop} · <Link href={lotAddress(lotId)}>{plan.lotNumber}</Link> · holds {plan.available}{' '}
          {plan.available === 1 ? plan.unit.one : plan.unit.many}
        </p>
      </header>
      {plan.cautions.map((caution) => (
        <p key={caution} className="germ-caution caution strong">
          {caution} Wear gloves, and throw the wet paper away.
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
  const [over, setOver] = useState(false)
  const draftName = `${plan.lotId}/germination`
  return (
    <div className="pane-part">
      <div className="buttons">
        <button type="button" className="quiet-button" aria-pressed={!over} onClick={() => setOver(false)}>
          Begin a test
        </button>
        <button type="button" className="quiet-button" aria-pressed={over} onClick={() => setOver(true)}>
          It is over: enter what sprouted
          {!over && isBegun(draftName) && <span className="soft"> (begun)</span>}
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
  const format = useFormat()
  const { conditions } = plan
  const { firstDay, finalDay, finalDayNote } = conditions
  const lastDay = `day ${format.number(finalDay)}`
  return (
    <section className="pane-part" aria-label="Conditions">
      <h3>Conditions from the crop table</h3>
      <FactList
        facts={[
          { name: 'Temperature', value: conditions.temperature },
          { name: 'In', value: conditions.media.join('; ') },
          { name: 'First count', value: firstDay === null ? '' : `day ${format.number(firstDay)}` },
          { name: 'Last count', value: finalDayNote === '' ? lastDay : `${lastDay}: ${finalDayNote}` },
          { name: 'If it sleeps', value: conditions.notes },
          {
            name: 'Hard seed',
            value: conditions.hardSeedPossible ? 'may occur: tell it from dead at the last count' : '',
          },
        ]}
      />
      <p className="soft">
        {conditions.source} ({conditions.confidence})
      </p>
    </section>
  )
}
