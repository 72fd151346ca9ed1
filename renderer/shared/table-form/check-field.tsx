import { type ReactNode, useId } from 'react'

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
