import type { TestPlan } from '../../../db/contract/germination-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'

interface SpendAdviceProps {
  readonly plan: TestPlan
  readonly typed: { readonly threshold: string; readonly expected: string }
  readonly onChange: (part: { threshold?: string; expected?: string }) => void
}

/** How many seeds to spend on knowing which side of its threshold the lot is. */
export function SpendAdvice({ plan, typed, onChange }: SpendAdviceProps) {
  const format = useFormat()
  const asked = [
    ['threshold', 'Threshold, %', ''],
    ['expected', 'Thought to be alive, %', `: ${plan.expectedNote}`],
  ] as const
  return (
    <section className="pane-part" aria-label="How many seeds to spend">
      <h3>How many {plan.unit.many} to spend</h3>
      <p className="lead" role="status">
        {plan.words}
      </p>
      <div className="fields">
        {asked.map(([name, label, note]) => (
          <TextField
            key={name}
            label={label}
            size="record"
            value={typed[name]}
            onChange={(value) => onChange({ [name]: value })}
            placeholder={String(Math.round(100 * plan[name]))}
            hint={`worked out with ${format.percent(plan[name])}${note}`}
          />
        ))}
      </div>
      <Sizes plan={plan} />
      <Stages plan={plan} />
    </section>
  )
}

function Sizes({ plan }: { readonly plan: TestPlan }) {
  const format = useFormat()
  if (plan.sizes.length === 0) return null
  return (
    <RowTable
      className="germ-table"
      label="What a test of each size decides"
      rows={plan.sizes}
      keyOf={({ seeds }) => seeds}
      columns={[
        ['Laid out', ({ seeds }) => format.number(seeds), 'number'],
        ['decides in', ({ decides }) => format.percent(decides), 'number'],
        [
          `surely above ${format.percent(plan.threshold)}`,
          ({ sureAboveFrom }) => (sureAboveFrom === null ? 'never' : `${sureAboveFrom} or more sprout`),
        ],
        ['surely below', ({ sureBelowTo }) => (sureBelowTo === null ? 'never' : `${sureBelowTo} or fewer`)],
      ]}
    />
  )
}

function Stages({ plan }: { readonly plan: TestPlan }) {
  const format = useFormat()
  const { staged } = plan
  if (staged.stages.length === 0) return null
  return (
    <details className="more">
      <summary>
        In stages of {staged.groupSize}: lay {staged.groupSize} out, look, and go on only while it is open
      </summary>
      <RowTable
        className="germ-table"
        label="When to stop, stage by stage"
        rows={staged.stages}
        keyOf={({ tested }) => tested}
        columns={[
          ['Laid out so far', ({ tested }) => format.number(tested), 'number'],
          ['regrow', ({ regrowAtMost }) => (regrowAtMost === null ? 'not yet' : `${regrowAtMost} or fewer`)],
          ['keep', ({ keepAtLeast }) => (keepAtLeast === null ? 'not yet' : `${keepAtLeast} or more`)],
          ['from', ({ confidence }) => <span className="soft">{confidence}</span>],
        ]}
      />
      <p className="soft">
        {staged.published
          ? 'The published plan for 85 % in groups of 40 (Ellis, Hong and Roberts 1985).'
          : 'Worked out as the published plan for 85 % is: Wald’s test in stages with the same rate of error.'}{' '}
        Lay each stage out as a test of its own: once it is over, the next can be laid out as its next stage,
        and what sprouted is added up.
      </p>
      <RowTable
        className="germ-table"
        label="How the stages end, by how many are alive"
        rows={staged.outcomes}
        keyOf={({ alive }) => alive}
        columns={[
          ['If alive are', ({ alive }) => format.percent(alive), 'number'],
          ['regrow', ({ regrow }) => format.percent(regrow), 'number'],
          ['keep', ({ keep }) => format.percent(keep), 'number'],
          ['still open', ({ undecided }) => format.percent(undecided), 'number'],
          ['spends', ({ seeds }) => format.number(Math.round(seeds)), 'number'],
        ]}
      />
    </details>
  )
}
