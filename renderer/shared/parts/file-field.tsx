import { type Ref, useId } from 'react'
import './file-field.css'

interface FileFieldProps {
  readonly label: string
  /** The kinds of file that are offered, as the accept attribute takes them. */
  readonly accept: string
  readonly onPick: (file: File) => void
  /** No file can be picked now; the field keeps the focus meanwhile. */
  readonly off?: boolean
  readonly ref?: Ref<HTMLInputElement>
}

/** Picks one file of the keeper's. */
export function FileField({ label, accept, onPick, off = false, ref }: FileFieldProps) {
  const id = useId()
  return (
    <div className="file-field stack-1">
      <label htmlFor={id}>{label}</label>
      <input
        ref={ref}
        id={id}
        type="file"
        accept={accept}
        aria-disabled={off}
        onClick={(event) => off && event.preventDefault()}
        onChange={(event) => {
          const picked = event.target.files?.[0]
          if (picked !== undefined) onPick(picked)
        }}
      />
    </div>
  )
}
