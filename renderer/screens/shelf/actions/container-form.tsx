import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { CheckField, SelectField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'

const KINDS = [
  { value: 'envelope', label: 'an envelope' },
  { value: 'bag', label: 'a bag' },
  { value: 'jar', label: 'a jar' },
  { value: 'can', label: 'a can' },
  { value: 'other', label: 'something else' },
] as const

const EMPTY = {
  kind: 'envelope' as (typeof KINDS)[number]['value'],
  airtight: false,
  pestProof: false,
  since: '',
}

/** What the lot is kept in from a day on. */
export function ContainerForm({ lot, ...form }: ActionFormProps) {
  return <ContainerOfLots lotIds={[lot.lotId]} {...form} />
}

interface ContainerOfLotsProps extends Pick<ActionFormProps, 'draftName' | 'onClose'> {
  readonly lotIds: readonly number[]
}

/** What lots are kept in from a day on, the same for all of them. */
export function ContainerOfLots({ lotIds, draftName, onClose }: ContainerOfLotsProps) {
  const form = useCardForm({ draftName, empty: EMPTY, writes: 'lot.change-container', onClose })
  const since = form.dayOf('since')
  return (
    <CardForm
      title={lotIds.length === 1 ? 'What it is kept in' : 'What they are kept in'}
      sendWord={lotIds.length === 1 ? 'Write it down' : `Write it down for ${lotIds.length} lots`}
      {...form.frame}
      onSend={() => form.send({ lotIds: [...lotIds], ...form.typed, since })}
    >
      <SelectField label="In" size="record" options={KINDS} {...form.choice('kind')} />
      <DayField {...form.day('since')} />
      <CheckField
        label="airtight"
        {...form.check('airtight')}
        meaning="A lid with a sound gasket, or a sealed can or foil bag. Seed must be dry before it is closed in."
      />
      <CheckField label="insects and rodents cannot get in" {...form.check('pestProof')} />
    </CardForm>
  )
}
