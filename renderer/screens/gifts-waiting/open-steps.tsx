import { useState } from 'react'
import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { message } from '../../../db/messages/message.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useWrite, type WriteInput } from '../../shared/client/use-write.ts'
import { ALOUD } from '../../shared/format/aloud.tsx'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { datesOf, type Wait } from './gift-words.ts'

/** What a gift waits for, the late ones marked: Enter on a step's button notes it done. */
export function OpenSteps({ gift }: { readonly gift: WaitingGift }) {
  const { t } = useTexts()
  if (gift.waitsFor.length === 0) return <p>{t('gifts.step.none')}</p>
  return (
    <ul className="stack-3">
      {gift.waitsFor.map((wait) => (
        <OpenStep key={wait.step} giftId={gift.giftId} wait={wait} />
      ))}
    </ul>
  )
}

function OpenStep({ giftId, wait }: { readonly giftId: number; readonly wait: Wait }) {
  const { t, say, pieces } = useTexts()
  const today = useToday()
  const write = useWrite('gift.record-step')
  const [telling, setTelling] = useState(false)
  const step = { giftId, step: wait.step, done: true }
  return (
    <li className="gift-step stack-1" data-late={wait.late}>
      <p className="row gift-step-words">
        <strong>{capital(wait.words)}</strong> <span className="soft">{say(datesOf(wait))}</span>
        {wait.late && <strong className="late-mark">{t('gifts.late')}</strong>}
      </p>
      {wait.note !== '' && <p>{wait.note}</p>}
      {wait.caution !== '' && <p className="caution">{wait.caution}</p>}
      <p className="buttons">
        <ActionButton
          className="quiet-button"
          data-next=""
          aria-label={t('gifts.step.done-of', { step: wait.words })}
          off={today === ''}
          // A key held down must not run through every step.
          onKeyDown={(event) => event.repeat && event.preventDefault()}
          onClick={() => !write.isPending && write.mutate({ ...step, on: today, note: '' })}
        >
          {t('gifts.step.done')}
        </ActionButton>
        {!telling && (
          <button type="button" className="word-button" onClick={() => setTelling(true)}>
            {pieces(message('gifts.step.about', { step: wait.words }), ALOUD)}
          </button>
        )}
      </p>
      {write.error && !telling && <ProblemText problem={write.error.problem} />}
      {telling && <TellForm step={step} words={wait.words} onClose={() => setTelling(false)} />}
    </li>
  )
}

interface TellFormProps {
  readonly step: Pick<WriteInput<'gift.record-step'>, 'giftId' | 'step' | 'done'>
  readonly words: string
  readonly onClose: () => void
}

/** A step that is done, with what was found and the day. */
function TellForm({ step, words, onClose }: TellFormProps) {
  const { t } = useTexts()
  const form = useCardForm({
    draftName: `gift/${step.giftId}/${step.step}`,
    empty: { note: '', on: '' },
    writes: 'gift.record-step',
    onClose,
  })
  return (
    <CardForm
      title={t('gifts.step.done-of', { step: words })}
      sendWord={t('gifts.step.note-done')}
      {...form.sending({ ...step, ...form.typed, on: form.dayOf('on') })}
    >
      {form.textField('note', t('gifts.step.found'))}
      {form.dayField('on')}
    </CardForm>
  )
}
