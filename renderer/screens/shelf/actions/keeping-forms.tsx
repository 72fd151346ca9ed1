import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { ReleaseForm } from '../../../shared/card-form/release-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import type { ActionFormProps } from './action-form-props.ts'
import { PlaceField } from './place-field.tsx'

interface LotsFormProps extends Omit<ActionFormProps, 'lot'> {
  readonly lotIds: readonly number[]
}

const KINDS = [
  { value: 'envelope', label: 'an envelope' },
  { value: 'bag', label: 'a bag' },
  { value: 'jar', label: 'a jar' },
  { value: 'can', label: 'a can' },
  { value: 'other', label: 'something else' },
] as const

const ENVELOPE = {
  kind: 'envelope' as (typeof KINDS)[number]['value'],
  airtight: false,
  pestProof: false,
  since: '',
}

/** What the lot is kept in from a day on. */
export function ContainerForm({ lot, ...kept }: ActionFormProps) {
  return <ContainerOfLots lotIds={[lot.lotId]} {...kept} />
}

/** What lots are kept in from a day on, the same for all of them. */
export function ContainerOfLots({ lotIds, ...kept }: LotsFormProps) {
  const form = useCardForm({ ...kept, empty: ENVELOPE, writes: 'lot.change-container' })
  return (
    <CardForm
      title={lotIds.length === 1 ? 'What it is kept in' : 'What they are kept in'}
      sendWord={lotIds.length === 1 ? 'Write it down' : `Write it down for ${lotIds.length} lots`}
      {...form.sending({ lotIds: [...lotIds], ...form.typed, since: form.dayOf('since') })}
    >
      {form.selectField('kind', 'In', KINDS)}
      {form.dayField('since')}
      {form.checkField(
        'airtight',
        'airtight',
        'A lid with a sound gasket, or a sealed can or foil bag. Seed must be dry before it is closed in.',
      )}
      {form.checkField('pestProof', 'insects and rodents cannot get in')}
    </CardForm>
  )
}

interface MoveLotsProps extends LotsFormProps {
  /** Where they stand now, as far as that is one place. */
  readonly from: number | null
}

const MOST_CAUTIONS = 5

/** Moves the lot to another place. */
export function MoveForm({ lot, ...kept }: ActionFormProps) {
  return <MoveLots lotIds={[lot.lotId]} from={lot.placeId} {...kept} />
}

/** Moves lots to another place; where they stood is kept. */
export function MoveLots({ lotIds, from, ...kept }: MoveLotsProps) {
  const form = useCardForm({ ...kept, empty: { placeId: from, on: '' }, writes: 'lot.move' })
  const { placeId } = form.typed
  const move = placeId === null ? null : { lotIds: [...lotIds], placeId }
  const cautions = useRead('lot.preview-move', placeId === from ? null : move).data?.cautions ?? []
  return (
    <CardForm
      title="Move"
      sendWord={lotIds.length === 1 ? 'Move it there' : `Move ${lotIds.length} lots there`}
      {...form.sending(move && { ...move, on: form.dayOf('on') })}
    >
      <PlaceField label="To" none="choose a place" {...form.choice('placeId')} />
      {form.dayField('on')}
      <div className="card-form-wide" role="status">
        {cautions.slice(0, MOST_CAUTIONS).map(({ lotId, lotNumber, sentence }) => (
          <p key={lotId} className="card-cautions">
            {lotNumber}: {sentence}
          </p>
        ))}
        {cautions.length > MOST_CAUTIONS && <p>and {cautions.length - MOST_CAUTIONS} lots more.</p>}
      </div>
    </CardForm>
  )
}

/** Keeps a lot from being handed out, or lets it go again once it was checked. */
export function QuarantineForm(props: ActionFormProps) {
  const { lot, ...kept } = props
  if (!lot.quarantined) return <KeepBackForm {...props} />
  return <ReleaseForm lotId={lot.lotId} reason={lot.quarantineReason} {...kept} />
}

function KeepBackForm({ lot: { lotId }, ...kept }: ActionFormProps) {
  const form = useCardForm({ ...kept, empty: { reason: '' }, writes: 'lot.quarantine' })
  return (
    <CardForm
      title="Quarantine"
      sendWord="Keep it back"
      {...form.sending({ lotId, reason: form.typed.reason })}
    >
      {form.textField('reason', 'What is to be checked', { hint: 'Until then nobody is handed any of it.' })}
    </CardForm>
  )
}
