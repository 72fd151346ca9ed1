import type { TestPlan } from '../../../db/contract/germination-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { TextField } from '../../shared/table-form/text-field.tsx'

interface SpendAdviceProps {
  readonly plan: TestPlan
  readonly typed: { readonly threshold: string; readonly expected: string }
  readonly onChange: (part: { threshold?: string; expected?: string }) => void
}

/** How many seeds to spend on knowing which side of its threshold the lot is. */
export function SpendAdvice({ plan, typed, onChange }: SpendAdviceProps) {
  const format = useFormat()
  return (
    <section className="pane-part" aria-label="How many seeds to spend">
      <h3>How many {plan.unit.many} to spend</h3>
      <p className="lead" role="status">
        {plan.words}
      </p>
      <div className="fields">
        <TextField
          label="Threshold, %"
          size="record"
          value={typed.threshold}
          onChange={(threshold) => onChange({ threshold })}
          placeholder={String(Math.round(100 * plan.threshold))}
          hint={`worked out with ${format.percent(plan.threshold)}`}
        />
        <TextField
          label="Thought to be alive, %"
          size="record"
          value={typed.expected}
          onChange={(expected) => onChange({ expected })}
          placeholder={String(Math.round(100 * plan.expected))}
          hint={`worked out with ${format.percent(plan.expected)}: ${plan.expectedNote}`}
        />
      </div>
      <Sizes plan={plan} />
      <Stages plan={plan} />
    </section>
  )
}

function Sizes({ plan }: { readonly plan: TestPlan }) {
  const format = useFormat()
  if (plan.sizes.length === 0) return null
  const threshold = format.percent(plan.threshold)
  return (
    <table className="plain-table germ-table" aria-label="What a test of each size decides">
      <thead>
        <tr>
          <th scope="col" className="number">
            Laid out
          </th>
          <th scope="col" className="number">
            decides in
          </th>
          <th scope="col">surely above {threshold}</th>
          <th scope="col">surely below</th>
        </tr>
      </thead>
      <tbody>
        {plan.sizes.map((size) => (
          <tr key={size.seeds}>
            <td className="number">{format.number(size.seeds)}</td>
            <td className="number">{format.percent(size.decides)}</td>
            <td>{size.sureAboveFrom === null ? 'never' : `${size.sureAboveFrom} or more sprout`}</td>
            <td>{size.sureBelowTo === null ? 'never' : `${size.sureBelowTo} or fewer`}</td>
          </tr>
        ))}
      </tbody>
    </table>
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
      <table className="plain-table germ-table" aria-label="When to stop, stage by stage">
        <thead>
          <tr>
            <th scope="col" className="number">
              Laid out so far
            </th>
            <th scope="col">regrow</th>
            <th scope="col">keep</th>
            <th scope="col">from</th>
          </tr>
        </thead>
        <tbody>
          {staged.stages.map((stage) => (
            <tr key={stage.tested}>
              <td className="number">{format.number(stage.tested)}</td>
              <td>{stage.regrowAtMost === null ? 'not yet' : `${stage.regrowAtMost} or fewer`}</td>
              <td>{stage.keepAtLeast === null ? 'not yet' : `${stage.keepAtLeast} or more`}</td>
              <td className="soft">{stage.confidence}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft">
        {staged.published
          ? 'The published plan for 85 % in groups of 40 (Ellis, Hong and Roberts 1985).'
          : 'Worked out as the published plan for 85 % is: Wald’s test in stages with the same rate of error.'}{' '}
        Lay each stage out as a test of its own: once it is over, the next can be laid out as its next stage,
        and what sprouted is added up.
      </p>
      <table className="plain-table germ-table" aria-label="How the stages end, by how many are alive">
        <thead>
          <tr>
            <th scope="col" className="number">
              If alive are
            </th>
            <th scope="col" className="number">
              regrow
            </th>
            <th scope="col" className="number">
              keep
            </th>
            <th scope="col" className="number">
              still open
            </th>
            <th scope="col" className="number">
              spends
            </th>
          </tr>
        </thead>
        <tbody>
          {staged.outcomes.map((outcome) => (
            <tr key={outcome.alive}>
              <td className="number">{format.percent(outcome.alive)}</td>
              <td className="number">{format.percent(outcome.regrow)}</td>
              <td className="number">{format.percent(outcome.keep)}</td>
              <td className="number">{format.percent(outcome.undecided)}</td>
              <td className="number">{format.number(Math.round(outcome.seeds))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  )
}
