import { wilsonInterval } from '../../../db/domain/germination/wilson.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { CardForm } from '../card-form/card-form.tsx'
import { useCardForm } from '../card-form/use-card-form.ts'
import { wholeNumber } from '../card-form/whole-number.ts'
import { useTexts } from '../format/use-texts.ts'

const EMPTY = { tested: '', sprouted: '', fromStock: true, note: '', on: '', startedOn: '' }

interface GerminationFormProps {
  readonly lot: { readonly lotId: number; readonly unit: { readonly one: string } }
  /** The name by which what is typed is kept. */
  readonly draftName: string
  readonly onClose: () => void
}

/** A test that is over, entered in one go: how many were laid out and how many sprouted. */
export function GerminationForm({ lot, ...kept }: GerminationFormProps) {
  const { say, t } = useTexts()
  const unit = lot.unit.one
  const form = useCardForm({ ...kept, empty: EMPTY, writes: 'germination.record' })
  const { fromStock, note } = form.typed
  const startedOn = form.typed.startedOn || null
  const [tested, sprouted] = [wholeNumber(form.typed.tested), wholeNumber(form.typed.sprouted)]
  const input =
    tested === null || sprouted === null
      ? null
      : { lotId: lot.lotId, on: form.dayOf('on'), startedOn, tested, sprouted, fromStock, note }
  const result = resultOf(tested, sprouted)
  return (
    <CardForm
      title={t('germination.enter')}
      sendWord={t('germination.write-result')}
      {...form.sending(input)}
    >
      {form.textField('tested', t('germination.laid-out-field', { unit }))}
      {form.textField('sprouted', t('germination.sprouted-field'), {
        words: result === null ? '' : say(result),
      })}
      {form.dayField('on')}
      {form.dateField('startedOn', t('germination.laid-out-day'), t('germination.laid-out-day-hint'))}
      {form.textField('note', t('germination.note'))}
      {form.checkField('fromStock', t('germination.came-out', { unit }))}
    </CardForm>
  )
}

/** What the typed numbers come to, or null. */
function resultOf(tested: number | null, sprouted: number | null): Message | null {
  if (tested === null || sprouted === null || tested < 1) return null
  if (sprouted > tested) return message('germination.more-sprouted')
  const [low, high] = wilsonInterval(sprouted, tested)
  return message('germination.may-be', {
    part: { part: sprouted / tested },
    low: { part: low },
    high: { part: high },
  })
}
