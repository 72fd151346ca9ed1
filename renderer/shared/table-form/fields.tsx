import {
  type ComponentProps,
  createContext,
  type KeyboardEvent,
  type ReactNode,
  useContext,
  useId,
  useState,
} from 'react'
import { addDays } from '../../../db/domain/dates/day-arithmetic.ts'
import { isIsoDate } from '../../../db/domain/dates/iso-date.ts'
import { useRead } from '../client/use-read.ts'
import { useFormat } from '../format/use-format.ts'
import { useTexts } from '../format/use-texts.ts'
import './table-form.css'
import { useSettled } from './use-settled.ts'

/** 'table' is read by a person standing beside it; 'record' is the size of an index card. */
export type FieldSize = 'table' | 'record'

/** The size of the fields of a form that say none themselves. */
export const SizeInForm = createContext<FieldSize>('record')

/** How long a text beneath a field must stand still before it is read aloud, so that typing is not talked over. */
const CALM_MS = 700

interface FieldFrameProps {
  readonly label: string
  readonly controlId: string
  readonly size?: FieldSize | undefined
  /** What the field says back: what was understood, or how to type it. */
  readonly words?: ReactNode
  /** Its plain text, read aloud once typing rests. */
  readonly spoken?: string
  readonly problem?: string | undefined
  /** Whether it needs a row of fields to itself. */
  readonly wide?: boolean
  readonly children: ReactNode
}

/** A label, its control, and beneath it what was understood or what is wrong. */
export function FieldFrame(props: FieldFrameProps) {
  const { label, controlId, size, words, spoken, problem, wide, children } = props
  const ofForm = useContext(SizeInForm)
  const calm = useSettled(problem ?? spoken ?? '', CALM_MS)
  return (
    <div className={`table-field table-field-${size ?? ofForm}`} data-step-group="" data-wide={wide}>
      <label className="table-field-label" htmlFor={controlId}>
        {label}
      </label>
      <div className="table-field-body">
        {children}
        <div className="table-field-beneath" id={beneathId(controlId)}>
          {problem !== undefined && <p className="table-field-problem">{problem}</p>}
          {words}
        </div>
        <p className="only-aloud" role="status">
          {calm}
        </p>
      </div>
    </div>
  )
}

/** The id of the text beneath a control, for its aria-describedby. */
export function beneathId(controlId: string): string {
  return `${controlId}-beneath`
}

interface TextFieldProps {
  readonly label: string
  /** Names the step in a StepForm; a field without is passed by Enter. */
  readonly step?: string | undefined
  readonly value: string
  readonly onChange: (value: string) => void
  readonly hint?: string
  /** What was understood, said beneath in place of the hint. */
  readonly words?: string
  readonly problem?: string | undefined
  readonly placeholder?: string
  readonly type?: 'text' | 'email'
  readonly onKeyDown?: (event: KeyboardEvent<HTMLInputElement>) => void
  readonly onBlur?: () => void
  /** Marks all that stands in it when it is entered, so that typing replaces it. */
  readonly selectsAll?: boolean
  /** More than one line: Enter still goes on, Shift with Enter begins a line. */
  readonly long?: boolean
  /** That of the form it stands in, unless it says another. */
  readonly size?: FieldSize | undefined
}

/** A line or a few lines of text at the table. */
export function TextField(props: TextFieldProps) {
  const { label, step, value, onChange, hint = '', words = '', problem, long = false, size } = props
  const id = useId()
  const control = {
    id,
    'data-step': step,
    className: 'table-input',
    value,
    placeholder: props.placeholder,
    'aria-describedby': beneathId(id),
    'aria-invalid': problem !== undefined,
  }
  return (
    <FieldFrame
      label={label}
      controlId={id}
      size={size}
      problem={problem}
      words={<Beneath hint={hint} words={words} />}
      spoken={words}
    >
      {long ? (
        <textarea {...control} rows={2} onChange={(event) => onChange(event.target.value)} />
      ) : (
        <input
          {...control}
          type={props.type ?? 'text'}
          autoComplete="off"
          onChange={(event) => onChange(event.target.value)}
          onKeyDown={props.onKeyDown}
          onBlur={props.onBlur}
          onFocus={props.selectsAll === true ? (event) => event.target.select() : undefined}
        />
      )}
    </FieldFrame>
  )
}

function Beneath({ hint, words }: { readonly hint: string; readonly words: string }) {
  if (words !== '') return <p>{words}</p>
  return hint === '' ? null : <p className="soft">{hint}</p>
}

type DateFieldProps = Omit<
  ComponentProps<typeof TextField>,
  'type' | 'words' | 'onBlur' | 'onKeyDown' | 'selectsAll'
> & {
  /** Today, where '' stands for it. */
  readonly today?: string
}

/** Days that an arrow key goes on. */
const STEPS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1 }

/**
 * A day, written as the library writes days and read as people type them. What cannot be read is handed on as it was
 * typed: nothing of it is lost, and saving says what is wrong.
 */
export function DateField({ value, onChange, today = '', ...rest }: DateFieldProps) {
  const format = useFormat()
  const { t } = useTexts()
  const now = useRead('collection.get', {}).data?.today ?? today
  const [typed, setTyped] = useState({ text: '', value: '', isOpen: false })
  const day = value || today
  // While it is being typed into, an emptied field stays empty, though '' stands for today.
  const isShown = typed.isOpen && (typed.value === value || typed.value === '')
  const take = (text: string, found: string, isOpen: boolean) => {
    const next = found === today ? '' : found
    setTyped({ text, value: next, isOpen })
    onChange(next)
  }
  const read = (text: string) => (isIsoDate(now) ? format.readDay(text, now) : null)
  const words = () => {
    if (value === '') return today === '' ? '' : t('table.today')
    return isIsoDate(value) ? format.day(value) : t('table.no-day', { example: { day: now || value } })
  }
  return (
    <TextField
      {...rest}
      value={isShown ? typed.text : format.day(day)}
      words={words()}
      onChange={(text) => take(text, read(text) ?? text.trim(), true)}
      selectsAll
      onBlur={() => setTyped((before) => ({ ...before, isOpen: false }))}
      onKeyDown={(event) => {
        const step = STEPS[event.key]
        if (step === undefined || !isIsoDate(day)) return
        event.preventDefault()
        take('', addDays(day, step), false)
      }}
    />
  )
}

/** What a choice in a narrow column shows of the text that is chosen. */
const MOST_LETTERS = 26

interface SelectFieldProps<V extends string> {
  readonly label: string
  readonly step?: string
  readonly value: V
  readonly options: readonly { readonly value: V; readonly label: string }[]
  readonly onChange: (value: V) => void
  /** That of the form it stands in, unless it says another. */
  readonly size?: FieldSize | undefined
  /** What the choice comes to, beneath it. */
  readonly words?: string
}

/** One of a few: arrows choose, Enter goes on. */
export function SelectField<V extends string>(props: SelectFieldProps<V>) {
  const { label, step, value, options, onChange, size, words = '' } = props
  const id = useId()
  return (
    <FieldFrame
      label={label}
      controlId={id}
      size={size}
      wide={options.some((option) => option.label.length > MOST_LETTERS)}
      words={words !== '' && <p className="soft">{words}</p>}
    >
      <select
        id={id}
        className="table-input"
        data-step={step}
        value={value}
        onChange={(event) => {
          const picked = options.find((option) => option.value === event.target.value)
          if (picked) onChange(picked.value)
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  )
}

interface CheckFieldProps {
  readonly label: string
  /** Names the step in a StepForm. */
  readonly step?: string
  readonly checked: boolean
  readonly onChange: (checked: boolean) => void
  /** What ticking it means, shown while it is ticked. */
  readonly meaning?: ReactNode
}

/** A box to tick with the space bar; Enter goes on. */
export function CheckField({ label, step, checked, onChange, meaning }: CheckFieldProps) {
  const id = useId()
  return (
    <div className="check-field" data-step-group="">
      <label className="check-field-label">
        <input
          type="checkbox"
          data-step={step}
          checked={checked}
          onChange={(event) => onChange(event.target.checked)}
          aria-describedby={checked && meaning !== undefined ? id : undefined}
        />
        <span>{label}</span>
      </label>
      {checked && meaning !== undefined && (
        <div className="check-field-meaning caution strong" id={id}>
          {meaning}
        </div>
      )}
    </div>
  )
}
