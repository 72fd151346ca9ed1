import type { ReactNode, SubmitEvent } from 'react'
import type { ProblemError } from '../client/problem-error.ts'
import { openForm } from '../focus/lost-focus.ts'
import { useTexts } from '../format/use-texts.ts'
import { ActionButton } from '../parts/action-button.tsx'
import { ProblemText } from '../parts/problem-text.tsx'
import './card-form.css'

interface CardFormProps {
  readonly title: string
  /** The level of its heading: 3 inside a card. */
  readonly level?: 2 | 3
  readonly sendWord: string
  readonly busy: boolean
  readonly error: ProblemError | null
  /** Input paths whose problem a field of this form shows by itself. */
  readonly shownAtField?: readonly string[]
  readonly onSend: () => void
  /** Steps back; what was typed is kept by whoever holds it. A form with a way back takes the focus as it opens. */
  readonly onClose?: () => void
  readonly onChoose?: (choice: string) => void
  readonly children: ReactNode
}

/** A form that opens in a card: Enter sends it, Escape steps back, and a problem says what to do. */
export function CardForm(props: CardFormProps) {
  const {
    title,
    level = 3,
    sendWord,
    busy,
    error,
    shownAtField = [],
    onSend,
    onClose,
    onChoose,
    children,
  } = props
  const { t } = useTexts()
  const Heading = `h${level}` as const
  const atField = error !== null && shownAtField.includes(error.problem.field ?? '')
  const onSubmit = (event: SubmitEvent) => {
    event.preventDefault()
    if (!busy) onSend()
  }
  return (
    <form
      className="card-form stack-3"
      aria-label={title}
      noValidate
      ref={onClose === undefined ? null : openForm}
      onSubmit={onSubmit}
      onKeyDown={(event) => {
        if (event.key === 'Escape' && !event.defaultPrevented) onClose?.()
      }}
    >
      <Heading>{title}</Heading>
      <div className="card-form-fields fields">{children}</div>
      {error !== null && (!atField || error.problem.choices.length > 0) && (
        <ProblemText problem={error.problem} {...(onChoose === undefined ? {} : { onChoose })} />
      )}
      <div className="buttons">
        <ActionButton type="submit" className="button" off={busy}>
          {sendWord}
        </ActionButton>
        {onClose !== undefined && (
          <button type="button" className="quiet-button" onClick={onClose}>
            {t('card-form.not-now')}
          </button>
        )}
      </div>
    </form>
  )
}

/** The sentence of a problem that concerns one input path, with what to do about it. */
export function problemAt(error: ProblemError | null, path: string): string | undefined {
  if (error === null || error.problem.field !== path) return undefined
  const { sentence, todo } = error.problem
  return todo === null ? sentence : `${sentence} ${todo}`
}
