import { createContext, type ReactNode, useContext } from 'react'
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
  readonly children: ReactNode
}

/** A label, its control, and beneath it what was understood or what is wrong. */
export function FieldFrame({ label, controlId, size, words, spoken, problem, children }: FieldFrameProps) {
  const ofForm = useContext(SizeInForm)
  const calm = useSettled(problem ?? spoken ?? '', CALM_MS)
  return (
    <div className={`table-field table-field-${size ?? ofForm}`} data-step-group="">
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
