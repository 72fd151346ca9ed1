import { useId } from 'react'
import { FieldFrame, type FieldSize } from './field-frame.tsx'

interface SelectFieldProps<V extends string> {
  readonly label: string
  readonly step?: string
  readonly value: V
  readonly options: readonly { readonly value: V; readonly label: string }[]
  readonly onChange: (value: V) => void
  readonly size?: FieldSize
  /** What the choice comes to, beneath it. */
  readonly words?: string
}

/** One of a few: arrows choose, Enter goes on. */
export function SelectField<V extends string>(props: SelectFieldProps<V>) {
  const { label, step, value, options, onChange, size = 'table', words } = props
  const id = useId()
  return (
    <FieldFrame
      label={label}
      controlId={id}
      size={size}
      words={words !== undefined && <p className="soft">{words}</p>}
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
