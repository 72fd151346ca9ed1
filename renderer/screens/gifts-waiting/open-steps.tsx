import { useState } from 'react'
import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useWrite, type WriteInput } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { datesInWords, type Wait } from './gift-words.ts'

/** What a gift waits for, the late ones marked: Enter on a step's button notes it done. */
export function OpenSteps({ gift }: { readonly gift: WaitingGift }) {
  if (gift.waitsFor.length === 0) return <p>Nothing is open. It can be taken in.</p>
  return (
    <ul className="stack-3">
      {gift.waitsFor.map((wait) => (
        <OpenStep key={wait.step} giftId={gift.giftId} wait={wait} />
      ))}
    </ul>
  )
}

function OpenStep({ giftId, wait }: { readonly giftId: number; readonly wait: Wait }) {
  const format = useFormat()
  const today = useToday()
  const write = useWrite('gift.record-step')
  const [telling, setTelling] = useState(false)
  const step = { giftId, step: wait.step, done: true }
  return (
    <li className="gift-step stack-1" data-late={wait.late}>
      <p className="row gift-step-words">
        <strong>{capital(wait.words)}</strong> <span className="soft">{datesInWords(wait, format.day)}</span>
        {wait.late && <strong className="late-mark">late</strong>}
      </p>
      {wait.note !== '' && <p>{wait.note}</p>}
      {wait.caution !== '' && <p className="caution">{wait.caution}</p>}
      <p className="buttons">
        <ActionButton
          className="quiet-button"
          data-next=""
          aria-label={`Done: ${wait.words}`}
          off={today === ''}
          // A key held down must not run through every step.
          onKeyDown={(event) => event.repeat && event.preventDefault()}
          onClick={() => !write.isPending && write.mutate({ ...step, on: today, note: '' })}
        >
          Done
        </ActionButton>
        {!telling && (
          <button type="button" className="word-button" onClick={() => setTelling(true)}>
            done, and more to say<span className="only-aloud"> about {wait.words}</span>
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
  const form = useCardForm({
    draftName: `gift/${step.giftId}/${step.step}`,
    empty: { note: '', on: '' },
    writes: 'gift.record-step',
    onClose,
  })
  return (
    <CardForm
      title={`Done: ${words}`}
      sendWord="Note it done"
      {...form.sending({ ...step, ...form.typed, on: form.dayOf('on') })}
    >
      {form.textField('note', 'What was found')}
      {form.dayField('on')}
    </CardForm>
  )
}
