import { cautionName } from '../../../../db/domain/cautions/caution-text.ts'
import { CAUTION_KINDS, type CautionKind } from '../../../../db/domain/shared/closed-sets.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import type { ActionFormProps } from './action-form-props.ts'

/** Says what the seed of the lot has to be careful about. */
export function CautionForm({ lot: { lotId }, ...kept }: ActionFormProps) {
  const { t, say } = useTexts()
  const empty = { caution: 'pests-seen' as CautionKind, note: '', on: '' }
  const form = useCardForm({ ...kept, empty, writes: 'lot.set-caution' })
  return (
    <CardForm
      title={t('shelf.do-caution')}
      sendWord={t('shelf.caution-send')}
      {...form.sending({ lotIds: [lotId], ...form.typed, on: form.dayOf('on') })}
    >
      {form.selectField('caution', t('shelf.caution-which'), namesOf(CAUTION_KINDS, say))}
      {form.textField('note', t('shelf.caution-note'))}
      {form.dayField('on')}
    </CardForm>
  )
}

/** Ends a caution that the lot has. */
export function EndCautionForm({ lot: { lotId, cautions }, ...kept }: ActionFormProps) {
  const { t, say } = useTexts()
  const has = CAUTION_KINDS.filter((kind) => cautions.some(({ caution }) => caution === kind))
  const empty = { caution: has[0] ?? ('pests-seen' as CautionKind), reason: '', on: '' }
  const form = useCardForm({ ...kept, empty, writes: 'lot.end-caution' })
  return (
    <CardForm
      title={t('shelf.do-end-caution')}
      sendWord={t('shelf.caution-end')}
      {...form.sending({ lotIds: [lotId], ...form.typed, on: form.dayOf('on') })}
    >
      {form.selectField('caution', t('shelf.caution-which'), namesOf(has, say))}
      {form.textField('reason', t('shelf.caution-end-why'))}
      {form.dayField('on')}
    </CardForm>
  )
}

function namesOf(kinds: readonly CautionKind[], say: ReturnType<typeof useTexts>['say']) {
  return kinds.map((value) => ({ value, label: say(cautionName(value)) }))
}
