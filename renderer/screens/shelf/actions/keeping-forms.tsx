import { CONTAINER_KINDS, type ContainerKind } from '../../../../db/domain/shared/closed-sets.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { CheckReturnForm } from '../../../shared/card-form/check-return-form.tsx'
import { ReleaseForm } from '../../../shared/card-form/release-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import type { ActionFormProps } from './action-form-props.ts'
import { PlaceField } from './place-field.tsx'

interface LotsFormProps extends Omit<ActionFormProps, 'lot'> {
  readonly lotIds: readonly number[]
}

const ENVELOPE = {
  kind: 'envelope' as ContainerKind,
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
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: ENVELOPE, writes: 'lot.change-container' })
  return (
    <CardForm
      title={t('shelf.kept-in', { lots: lotIds.length })}
      sendWord={t('shelf.write-for', { lots: lotIds.length })}
      {...form.sending({ lotIds: [...lotIds], ...form.typed, since: form.dayOf('since') })}
    >
      {form.selectField(
        'kind',
        t('shelf.in'),
        CONTAINER_KINDS.map((value) => ({ value, label: t(`shelf.container-${value}`) })),
      )}
      {form.dayField('since')}
      {form.checkField('airtight', t('shelf.airtight'), t('shelf.airtight-hint'))}
      {form.checkField('pestProof', t('shelf.pest-proof'))}
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
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: { placeId: from, on: '' }, writes: 'lot.move' })
  const { placeId } = form.typed
  const move = placeId === null ? null : { lotIds: [...lotIds], placeId }
  const cautions = useRead('lot.preview-move', placeId === from ? null : move).data?.cautions ?? []
  return (
    <CardForm
      title={t('shelf.do-move')}
      sendWord={t('shelf.move-there', { lots: lotIds.length })}
      {...form.sending(move && { ...move, on: form.dayOf('on') })}
    >
      <PlaceField label={t('shelf.to')} none={t('shelf.choose-place')} {...form.choice('placeId')} />
      {form.dayField('on')}
      <div className="card-form-wide" role="status">
        {cautions.slice(0, MOST_CAUTIONS).map(({ lotId, lotNumber, sentence }) => (
          <p key={lotId} className="card-cautions">
            {lotNumber}: {sentence}
          </p>
        ))}
        {cautions.length > MOST_CAUTIONS && (
          <p>{t('shelf.lots-more', { lots: cautions.length - MOST_CAUTIONS })}</p>
        )}
      </div>
    </CardForm>
  )
}

/** Keeps a lot from being handed out, or lets it go again once it was checked. */
export function QuarantineForm(props: ActionFormProps) {
  const { lot, ...kept } = props
  if (!lot.quarantined) return <KeepBackForm {...props} />
  const { lotId, quarantineReason: reason, cameBack } = lot
  if (cameBack !== null) return <CheckReturnForm {...{ lotId, reason }} back={cameBack} {...kept} />
  return <ReleaseForm {...{ lotId, reason }} {...kept} />
}

function KeepBackForm({ lot: { lotId }, ...kept }: ActionFormProps) {
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: { reason: '' }, writes: 'lot.quarantine' })
  return (
    <CardForm
      title={t('shelf.do-quarantine')}
      sendWord={t('shelf.keep-it-back')}
      {...form.sending({ lotId, reason: form.typed.reason })}
    >
      {form.textField('reason', t('shelf.to-be-checked'), { hint: t('shelf.to-be-checked-hint') })}
    </CardForm>
  )
}
