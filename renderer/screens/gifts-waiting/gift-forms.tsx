import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { WaitingStep } from '../../../db/contract/intake-operations.ts'
import { waitingCaution, waitingTold } from '../../../db/domain/intake/waiting.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { stepsOf } from './gift-words.ts'

/** What every form of a gift's card gets. */
export interface GiftFormProps {
  readonly gift: WaitingGift
  /** The name by which what is typed is kept. */
  readonly draftName: string
  readonly onClose: () => void
}

/** Takes a gift in: it gets its number. With steps still open it wants a reason. */
export function AcceptForm({ gift, draftName, onClose }: GiftFormProps) {
  const { t } = useTexts()
  const places = useRead('place.list', {}).data?.places ?? []
  const { variety, placeId } = gift.gift
  const offered = { amount: gift.amount, place: placeId === null ? '' : String(placeId) }
  const form = useCardForm({
    draftName,
    empty: { ...offered, on: '', reason: '' },
    writes: 'gift.accept',
    onClose,
  })
  const { amount, place, reason } = form.typed
  const isOpen = gift.waitsFor.length > 0
  const changed = amount !== offered.amount || place !== offered.place
  return (
    <CardForm
      title={t('gifts.accept')}
      sendWord={t('gifts.accept')}
      {...form.sending({
        giftId: gift.giftId,
        receivedOn: form.dayOf('on'),
        reason: isOpen ? reason : '',
        ...(changed ? { gift: { ...gift.gift, amount, placeId: place === '' ? null : Number(place) } } : {}),
      })}
      onChoose={form.choice('amount').onChange}
    >
      {isOpen && (
        <div className="card-form-wide">
          {form.textField('reason', t('gifts.accept-why'), {
            hint: t('gifts.accept-why-hint', { steps: stepsOf(gift) }),
          })}
        </div>
      )}
      <AmountField
        label={t('gifts.accept-amount')}
        {...form.field('amount', 'gift.amount')}
        cropId={
          'newVariety' in variety && 'cropId' in variety.newVariety ? variety.newVariety.cropId : undefined
        }
      />
      {form.selectField('place', t('gifts.accept-place'), [
        { value: '', label: t('gifts.accept-place-later') },
        ...places.map((each) => ({ value: String(each.placeId), label: each.path })),
      ])}
      <DayField {...form.day('on', 'receivedOn')} />
    </CardForm>
  )
}

const NO_STEP = { step: 'drying' as WaitingStep, due: '', note: '' }

/** One more thing that a gift has to wait for, with the day by which it should be done. */
export function WaitForm({ gift, draftName, onClose }: GiftFormProps) {
  const { t, say } = useTexts()
  const on = useToday()
  const steps = WaitingStep.options.map((value) => ({ value, label: say(waitingTold(value)) }))
  const form = useCardForm({ draftName, empty: NO_STEP, writes: 'gift.record-step', onClose })
  const { step, due } = form.typed
  const caution = waitingCaution(step)
  return (
    <CardForm
      title={t('gifts.wait-title')}
      sendWord={t('gifts.wait-send')}
      {...form.sending({ ...form.typed, giftId: gift.giftId, due: due === '' ? null : due, done: false, on })}
    >
      {form.selectField('step', t('gifts.wait-step'), steps)}
      {form.dateField('due', t('gifts.wait-due'), t('gifts.wait-due-hint'))}
      {form.textField('note', t('gifts.wait-note'), { placeholder: t('gifts.wait-note-placeholder') })}
      {caution !== null && <p className="caution card-form-wide">{say(caution)}</p>}
    </CardForm>
  )
}

/** Declines a gift; the reason stays in the book for the day when the donor asks. */
export function DeclineForm({ gift, draftName, onClose }: GiftFormProps) {
  const { t } = useTexts()
  const form = useCardForm({ draftName, empty: { reason: '' }, writes: 'gift.decline', onClose })
  return (
    <CardForm
      title={t('gifts.decline-title')}
      sendWord={t('gifts.decline-send')}
      {...form.sending({ giftId: gift.giftId, ...form.typed })}
    >
      {form.textField('reason', t('gifts.decline-why'), { hint: t('gifts.decline-why-hint') })}
    </CardForm>
  )
}
