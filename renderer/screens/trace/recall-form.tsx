import { useLocation } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import type { Kinship } from '../../../db/domain/trace/trace.ts'
import { recallAddress } from '../../shared/addresses.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { TickList } from '../../shared/parts/tick-list.tsx'

/** Kin that can go with the lot. The same seed does unless the keeper says otherwise; of the others nothing is known. */
const CHOSEN_FROM = ['same-seed', 'offspring', 'came-from'] as const satisfies readonly Kinship[]

/** The name under which a recall that is being typed is kept. */
export const recallDraft = (lotId: number) => `recall/${lotId}`

interface RecallFormProps {
  readonly trace: Value<'lot.trace'>
  readonly onClose: () => void
}

/** What was found, what is to be done, and which lots go with the one where it was found. */
export function RecallForm({ trace: { lotId, lotNumber, lots }, onClose }: RecallFormProps) {
  const { t } = useTexts()
  const [, go] = useLocation()
  const sameSeed = lots.filter(({ kin }) => kin === 'same-seed').map((lot) => lot.lotId)
  const form = useCardForm({
    draftName: recallDraft(lotId),
    empty: { reason: '', advice: '', on: '', lotIds: sameSeed as readonly number[] },
    writes: 'recall.record',
    onClose,
  })
  const { reason, advice, lotIds } = form.typed
  const chosen = { lotId, lotIds: [...lotIds] }
  const preview = useRead('recall.preview', chosen, { keepLast: true }).data
  return (
    <CardForm
      title={t('recall.title', { lot: lotNumber })}
      level={2}
      sendWord={t('recall.send', { lots: 1 + lotIds.length })}
      {...form.sending({ ...chosen, reason, advice, on: form.dayOf('on') }, ({ recallId }) =>
        go(recallAddress(recallId)),
      )}
    >
      <div className="card-form-wide">
        {form.textField('reason', t('recall.reason'), { hint: t('recall.reason-hint') })}
      </div>
      <div className="card-form-wide">
        {form.textField('advice', t('recall.advice'), { hint: t('recall.advice-hint'), long: true })}
      </div>
      {form.dayField('on')}
      {CHOSEN_FROM.map((kin) => {
        const items = lots
          .filter((lot) => lot.kin === kin)
          .map(({ lotId: id, lotNumber: lot, quantity, heldBy }) => ({
            id,
            words: t('recall.pick', { lot, amount: quantity.words, holder: heldBy || 'none' }),
          }))
        return (
          items.length > 0 && (
            <TickList
              key={kin}
              className="card-form-wide"
              legend={t(`recall.pick-${kin}`)}
              items={items}
              ticked={lotIds}
              onChange={(ticked) => form.change({ lotIds: ticked })}
            />
          )
        )
      })}
      <p className="card-form-wide" role="status">
        {preview !== undefined &&
          t('recall.would', {
            lots: preview.lots.length,
            toWrite: preview.toWrite,
            inPerson: preview.inPerson,
            nameless: preview.nameless.length,
          })}
      </p>
    </CardForm>
  )
}
