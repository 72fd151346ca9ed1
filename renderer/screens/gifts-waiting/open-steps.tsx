import { useState } from 'react'
import type { WaitingGift } from '../../../db/contract/waiting-operations.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useSavedForm } from '../../shared/card-form/use-saved-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
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
  const done = (note: string, on: string, then?: () => void) =>
    write.mutate(
      { giftId, step: wait.step, done: true, on, note },
      then === undefined ? {} : { onSuccess: then },
    )
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
          onClick={() => !write.isPending && done('', today)}
        >
          Done
        </ActionButton>
        {!telling && (
          <button type="button" className="word-button" onClick={() => setTelling(true)}>
            done, and more to say<span className="only-aloud"> about {wait.words}</span>
          </button>
        )}
      </p>
      {telling ? (
        <TellForm
          draftName={`gift/${giftId}/${wait.step}`}
          words={wait.words}
          write={write}
          onSend={done}
          onClose={() => setTelling(false)}
        />
      ) : (
        write.error && <ProblemText problem={write.error.problem} />
      )}
    </li>
  )
}

interface TellFormProps {
  readonly draftName: string
  readonly words: string
  readonly write: Pick<ReturnType<typeof useWrite<'gift.record-step'>>, 'isPending' | 'error'>
  readonly onSend: (note: string, on: string, then: () => void) => void
  readonly onClose: () => void
}

/** A step that is done, with what was found and the day. */
function TellForm({ draftName, words, write, onSend, onClose }: TellFormProps) {
  const today = useToday()
  const { typed, change, discard } = useSavedForm(draftName, { note: '', on: '' })
  return (
    <CardForm
      title={`Done: ${words}`}
      sendWord="Note it done"
      busy={write.isPending}
      error={write.error}
      shownAtField={['note', 'on']}
      onSend={() => onSend(typed.note, typed.on || today, discard)}
      onClose={onClose}
    >
      <TextField
        label="What was found"
        step="note"
        size="record"
        value={typed.note}
        onChange={(note) => change({ note })}
        problem={problemAt(write.error, 'note')}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
    </CardForm>
  )
}
