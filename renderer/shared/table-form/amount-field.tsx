import { type KeyboardEvent, type ReactNode, type RefObject, useId, useRef } from 'react'
import { flushSync } from 'react-dom'
import { message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { keysAlongLine, UP_AND_DOWN } from '../focus/focus-along.ts'
import { readTypedAmount } from '../format/manner.ts'
import { useTexts } from '../format/use-texts.ts'
import { beneathId, FieldFrame, type FieldSize } from './fields.tsx'
import { useSteps } from './step-form.tsx'
import { type AmountReading, useAmountReading } from './use-amount-reading.ts'
import { useHeldKeys } from './use-held-keys.ts'
import { useWhen } from './use-when.ts'

interface AmountFieldProps {
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  /** Names the step in a {@link StepForm}. */
  readonly step?: string
  readonly cropId?: string | undefined
  readonly lotId?: number | undefined
  /** A counted and weighed sample, '25 weigh 6.10 g', whose weight is used. */
  readonly sample?: string
  readonly problem?: string | undefined
  readonly size?: FieldSize
  readonly placeholder?: string
  /** Amounts that can be given instead, as a refused save offers them. */
  readonly offered?: readonly string[]
  /** What follows from the amount, such as what would remain. */
  readonly after?: ReactNode
  /** What is said where the text is not to be read as an amount, such as that nothing was found. */
  readonly instead?: string | undefined
}

const NONE: readonly string[] = []

/** A line kept free for the reading, so that no button moves away from a press as it appears. */
const ROOM = <p aria-hidden="true">{'\u00A0'}</p>

/** One field for an amount with its unit, read back in words; what can be meant two ways asks, and never guesses. */
export function AmountField(props: AmountFieldProps) {
  const { label, value, onChange, step, cropId, lotId, sample = '', problem, size = 'record' } = props
  const id = useId()
  const input = useRef<HTMLInputElement>(null)
  const firstChoice = useRef<HTMLButtonElement>(null)
  const steps = useSteps()
  const texts = useTexts()
  const { reading, fresh, failure } = useAmountReading({
    text: props.instead === undefined ? value : '',
    sample,
    cropId,
    lotId,
  })
  // Choices of a text that was typed on from are gone at once: Enter must not land on them.
  const asks = fresh && reading?.reading === 'ask'
  const choices = asks ? reading.choices : (props.offered ?? NONE)

  const held = useHeldKeys()
  const whenRead = useWhen(fresh)
  const onKeyDown = (event: KeyboardEvent) => {
    if (held.catches(event)) return
    const enter = event.key === 'Enter' && !event.ctrlKey && !event.metaKey && !event.shiftKey
    const mustChoose = enter && readTypedAmount(value).kind === 'ask'
    const wantsChoice = enter || event.key === 'ArrowDown'
    // What it can mean is still being asked: where the choices are, or that there are none, decides.
    if (!fresh && (mustChoose || event.key === 'ArrowDown')) return void held.holdKey(event, whenRead)
    if (!mustChoose && !(wantsChoice && choices.length > 0)) return
    event.preventDefault()
    firstChoice.current?.focus()
  }

  const wrong = problem ?? failure
  const said = [wrong, props.instead, reading?.words, reading?.weightNote, reading?.warning].filter(Boolean)
  // A weight is told of as well where it is known of what.
  const room = (cropId === undefined && lotId === undefined ? 1 : 2) - said.length

  const choose = (choice: string) => {
    flushSync(() => onChange(choice))
    input.current?.focus()
    if (input.current) steps.goToNext(input.current)
  }

  return (
    <FieldFrame
      label={label}
      controlId={id}
      size={size}
      problem={wrong}
      words={
        <>
          {props.instead !== undefined && <p>{props.instead}</p>}
          {reading && reading.words !== problem && <AmountWords reading={reading} />}
          {room > 0 && ROOM}
          {room > 1 && ROOM}
          <Choices
            choices={choices}
            meaning={texts.t(asks ? 'table.can-mean' : 'table.instead')}
            first={firstChoice}
            onChoose={choose}
            onBack={() => input.current?.focus()}
          />
          {props.after}
        </>
      }
      spoken={reading ? spokenReading(reading, texts) : (props.instead ?? '')}
    >
      <input
        ref={input}
        id={id}
        className="table-input"
        data-step={step}
        autoComplete="off"
        spellCheck={false}
        placeholder={props.placeholder}
        value={value}
        onChange={(event) => onChange(event.target.value)}
        onKeyDown={onKeyDown}
        aria-describedby={beneathId(id)}
        aria-invalid={problem !== undefined}
      />
    </FieldFrame>
  )
}

function AmountWords({ reading }: { readonly reading: AmountReading }) {
  return (
    <>
      {reading.words !== '' && (
        <p className={reading.reading === 'amount' ? '' : 'strong'}>{reading.words}</p>
      )}
      {reading.weightNote !== '' && <p className="soft">{reading.weightNote}</p>}
      {reading.warning !== null && <p className="table-field-warning">{reading.warning}</p>}
    </>
  )
}

interface ChoicesProps {
  readonly choices: readonly string[]
  readonly meaning: string
  readonly first: RefObject<HTMLButtonElement | null>
  readonly onChoose: (choice: string) => void
  readonly onBack: () => void
}

/** The ways an amount can be meant, as buttons: arrows move, Enter takes one, Escape goes back to the text. */
function Choices({ choices, meaning, first, onChoose, onBack }: ChoicesProps) {
  if (choices.length === 0) return null
  const onKeyDown = (event: KeyboardEvent<HTMLButtonElement>) => {
    const by = { ...UP_AND_DOWN, ...keysAlongLine() }[event.key]
    if (by === undefined && event.key !== 'Escape') return
    event.preventDefault()
    if (by === undefined) return onBack()
    const next = by > 0 ? event.currentTarget.nextElementSibling : event.currentTarget.previousElementSibling
    if (next instanceof HTMLElement) next.focus()
    else if (by < 0) onBack()
  }
  return (
    <fieldset className="table-choices">
      <legend>{meaning}</legend>
      {choices.map((choice, index) => (
        <button
          key={choice}
          ref={index === 0 ? first : undefined}
          type="button"
          className="table-choice"
          onClick={() => onChoose(choice)}
          onKeyDown={onKeyDown}
        >
          {choice}
        </button>
      ))}
    </fieldset>
  )
}

function spokenReading({ words, choices, weightNote, warning }: AmountReading, { say }: Texts): string {
  const spoken = message('table.spoken-choices', { choices: { list: choices, as: 'or' } })
  return [words, choices.length === 0 ? '' : say(spoken), weightNote, warning ?? '']
    .filter((part) => part !== '')
    .join('. ')
}
