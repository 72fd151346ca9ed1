import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../../shared/card-form/use-today.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import { CheckField } from '../../../shared/table-form/check-field.tsx'
import { SelectField } from '../../../shared/table-form/select-field.tsx'
import type { ActionFormProps } from './action-form-props.ts'

const KINDS = [
  { value: 'envelope', label: 'an envelope' },
  { value: 'bag', label: 'a bag' },
  { value: 'jar', label: 'a jar' },
  { value: 'can', label: 'a can' },
  { value: 'other', label: 'something else' },
] as const
type Kind = (typeof KINDS)[number]['value']

/** What the lot is kept in from a day on. */
export function ContainerForm({ lot, ...form }: ActionFormProps) {
  return <ContainerOfLots lotIds={[lot.lotId]} {...form} />
}

interface ContainerOfLotsProps extends Pick<ActionFormProps, 'keptAs' | 'onClose'> {
  readonly lotIds: readonly number[]
}

/** What lots are kept in from a day on, the same for all of them. */
export function ContainerOfLots({ lotIds, keptAs, onClose }: ContainerOfLotsProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm(keptAs, {
    kind: 'envelope' as Kind,
    airtight: false,
    pestProof: false,
    since: '',
  })
  const write = useWrite('lot.note-container')
  const done = () => {
    letGo()
    onClose()
  }
  return (
    <CardForm
      title={lotIds.length === 1 ? 'What it is kept in' : 'What they are kept in'}
      sendWord={lotIds.length === 1 ? 'Write it down' : `Write it down for ${lotIds.length} lots`}
      busy={write.isPending}
      error={write.error}
      shownAtField={['since']}
      onSend={() =>
        write.mutate({ lotIds: [...lotIds], ...typed, since: typed.since || today }, { onSuccess: done })
      }
      onClose={onClose}
    >
      <SelectField
        label="In"
        size="record"
        value={typed.kind}
        options={KINDS}
        onChange={(kind) => change({ kind })}
      />
      <DayField
        value={typed.since || today}
        onChange={(since) => change({ since })}
        problem={problemAt(write.error, 'since')}
      />
      <CheckField
        label="airtight"
        step="airtight"
        checked={typed.airtight}
        onChange={(airtight) => change({ airtight })}
        meaning="A lid with a sound gasket, or a sealed can or foil bag. Seed must be dry before it is closed in."
      />
      <CheckField
        label="insects and rodents cannot get in"
        step="pest-proof"
        checked={typed.pestProof}
        onChange={(pestProof) => change({ pestProof })}
      />
    </CardForm>
  )
}
