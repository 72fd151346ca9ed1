import type { CameBack } from '../../../db/contract/return-operations.ts'
import {
  CHECK_OUTCOMES,
  type CheckOutcome,
  COMPARED_WITH,
  type ComparedWith,
  YES_NO_NOT_KNOWN,
  type YesNoNotKnown,
} from '../../../db/domain/shared/closed-sets.ts'
import { useTexts } from '../format/use-texts.ts'
import { CardForm } from './card-form.tsx'
import { useCardForm } from './use-card-form.ts'

interface CheckReturnFormProps {
  readonly lotId: number
  /** Why it waits; may be empty. */
  readonly reason: string
  readonly back: CameBack
  readonly draftName: string
  readonly onClose: () => void
}

const NOT_LOOKED = {
  dry: 'not-known' as YesNoNotKnown,
  clean: 'not-known' as YesNoNotKnown,
  trueToType: 'not-known' as YesNoNotKnown,
  comparedWith: 'nothing' as ComparedWith,
  outcome: 'wait' as CheckOutcome,
  note: '',
  on: '',
}

/** How seed that came back was found, and what becomes of it. */
export function CheckReturnForm({ lotId, reason, back, ...kept }: CheckReturnFormProps) {
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: NOT_LOOKED, writes: 'return.check' })
  const looked = (of: 'dry' | 'clean' | 'true') =>
    YES_NO_NOT_KNOWN.map((value) => ({ value, label: t(`returns.${of}-${value}`) }))
  return (
    <CardForm
      title={t('returns.check-title')}
      sendWord={t('returns.check-send')}
      {...form.sending({ lotId, ...form.typed, on: form.dayOf('on') })}
    >
      <div className="card-form-wide">
        <WhatIsKnown reason={reason} back={back} />
      </div>
      {form.selectField('dry', t('returns.check-dry'), looked('dry'))}
      {form.selectField('clean', t('returns.check-clean'), looked('clean'))}
      {form.selectField('trueToType', t('returns.check-true'), looked('true'))}
      {form.selectField(
        'comparedWith',
        t('returns.check-compared'),
        COMPARED_WITH.map((value) => ({ value, label: t(`returns.compared-${value}`) })),
      )}
      {form.selectField(
        'outcome',
        t('returns.check-outcome'),
        CHECK_OUTCOMES.map((value) => ({ value, label: t(`returns.check-outcome-${value}`) })),
      )}
      {form.textField('note', t('returns.check-note'))}
      {form.dayField('on')}
    </CardForm>
  )
}

/** Why it waits, then softly what was answered at the table and found since. */
export function WhatIsKnown({ reason, back }: Pick<CheckReturnFormProps, 'reason' | 'back'>) {
  return (
    <>
      {reason !== '' && <p>{reason}</p>}
      {[...back.answers, ...back.checks].map((line) => (
        <p key={line} className="soft">
          {line}
        </p>
      ))}
    </>
  )
}
