import { useId } from 'react'
import { beneathId, FieldFrame, type FieldSize } from './field-frame.tsx'

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
  readonly type?: 'text' | 'email' | 'date'
  /** More than one line: Enter still goes on, Shift with Enter begins a line. */
  readonly long?: boolean
  readonly size?: FieldSize
}

/** A line or a few lines of text at the table. */
export function TextField(props: TextFieldProps) {
  const { label, step, value, onChange, hint = '', words = '', problem, long = false, size = 'table' } = props
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
        />
      )}
    </FieldFrame>
  )
}

function Beneath({ hint, words }: { readonly hint: string; readonly words: string }) {
  if (words !== '') return <p>{words}</p>
  return hint === '' ? null : <p className="soft">{hint}</p>
}
