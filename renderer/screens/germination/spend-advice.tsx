import type { TestPlan } from '../../../db/contract/germination-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'

interface SpendAdviceProps {
  readonly plan: TestPlan
  readonly typed: { readonly threshold: string; readonly expected: string }
  readonly onChange: (part: { threshold?: string; expected?: string }) => void
}

/** How many seeds to spend on knowing which side of its threshold the lot is. */
export function SpendAdvice({ plan, typed, onChange }: SpendAdviceProps) {
  const { t } = useTexts()
  const asked = [
    ['threshold', t('germination.threshold'), ''],
    ['expected', t('germination.expected'), plan.expectedNote],
  ] as const
  const workedOut = (part: number, note: string) =>
    note === ''
      ? t('germination.worked-out-with', { part: { part } })
      : t('germination.worked-out-with-note', { part: { part }, note })
  const title = t('germination.spend', { unit: plan.unit.one })
  return (
    <section className="pane-part" aria-label={title}>
      <h3>{title}</h3>
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
            hint={workedOut(plan[name], note)}
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
  const { t } = useTexts()
  if (plan.sizes.length === 0) return null
  return (
    <RowTable
      className="germ-table"
      label={t('germination.sizes')}
      rows={plan.sizes}
      keyOf={({ seeds }) => seeds}
      columns={[
        [t('germination.laid-out'), ({ seeds }) => format.number(seeds), 'number'],
        [t('germination.decides-in'), ({ decides }) => format.percent(decides), 'number'],
        [
          t('germination.surely-above', { threshold: { part: plan.threshold } }),
          ({ sureAboveFrom }) =>
            sureAboveFrom === null
              ? t('germination.never')
              : t('germination.or-more-sprout', { count: sureAboveFrom }),
        ],
        [
          t('germination.surely-below'),
          ({ sureBelowTo }) =>
            sureBelowTo === null ? t('germination.never') : t('germination.or-fewer', { count: sureBelowTo }),
        ],
      ]}
    />
  )
}

function Stages({ plan }: { readonly plan: TestPlan }) {
  const format = useFormat()
  const { t } = useTexts()
  const { staged } = plan
  if (staged.stages.length === 0) return null
  return (
    <details className="more">
      <summary>{t('germination.stages-of', { seeds: staged.groupSize })}</summary>
      <RowTable
        className="germ-table"
        label={t('germination.stages-label')}
        rows={staged.stages}
        keyOf={({ tested }) => tested}
        columns={[
          [t('germination.laid-out-so-far'), ({ tested }) => format.number(tested), 'number'],
          [
            t('germination.regrow'),
            ({ regrowAtMost }) =>
              regrowAtMost === null
                ? t('germination.not-yet')
                : t('germination.or-fewer', { count: regrowAtMost }),
          ],
          [
            t('germination.keep'),
            ({ keepAtLeast }) =>
              keepAtLeast === null
                ? t('germination.not-yet')
                : t('germination.or-more', { count: keepAtLeast }),
          ],
          [t('germination.taken-from'), ({ confidence }) => <span className="soft">{confidence}</span>],
        ]}
      />
      <p className="soft">
        {t(staged.published ? 'germination.plan-published' : 'germination.plan-computed')}{' '}
        {t('germination.stages-how')}
      </p>
      <RowTable
        className="germ-table"
        label={t('germination.outcomes')}
        rows={staged.outcomes}
        keyOf={({ alive }) => alive}
        columns={[
          [t('germination.if-alive'), ({ alive }) => format.percent(alive), 'number'],
          [t('germination.regrow'), ({ regrow }) => format.percent(regrow), 'number'],
          [t('germination.keep'), ({ keep }) => format.percent(keep), 'number'],
          [t('germination.still-open'), ({ undecided }) => format.percent(undecided), 'number'],
          [t('germination.spends'), ({ seeds }) => format.number(Math.round(seeds)), 'number'],
        ]}
      />
    </details>
  )
}
