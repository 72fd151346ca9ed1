import { type ReactNode, useEffect, useRef } from 'react'
import type { LineStep, VisitLines } from './visit-lines.ts'

interface GatheredLinesProps<L extends { readonly id: string }> {
  readonly lines: VisitLines<L>
  readonly nameOf: (line: L) => string
  /** What stands on the envelope beneath the name. */
  readonly inWords: (line: L) => ReactNode
  readonly whileEmpty: ReactNode
  readonly onChangeLine: (id: string) => void
  readonly onStep: (step: LineStep) => void
}

/** What a visit has gathered, each on its envelope. It scrolls by itself and shows the newest. */
export function GatheredLines<L extends { readonly id: string }>(props: GatheredLinesProps<L>) {
  const { lines, nameOf, inWords, whileEmpty, onChangeLine, onStep } = props
  const { listed, changing, takenOff } = lines
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (listed.length > 0 && box.current) box.current.scrollTop = box.current.scrollHeight
  }, [listed.length])
  return (
    <div ref={box} className="table-gathered stack-3">
      {listed.length === 0 && whileEmpty}
      <ol className="stack-3">
        {listed.map((line) => (
          <li key={line.id} className="envelope flap" data-changing={changing === line.id}>
            <p className="envelope-name">{nameOf(line)}</p>
            <div className="envelope-words">{inWords(line)}</div>
            <p className="envelope-doing">
              {changing === line.id ? (
                <span className="soft">being changed</span>
              ) : (
                <button type="button" className="word-button" onClick={() => onChangeLine(line.id)}>
                  change<span className="only-aloud"> {nameOf(line)}</span>
                </button>
              )}
              <button
                type="button"
                className="word-button"
                onClick={() => onStep({ kind: 'take-off', id: line.id })}
              >
                take off<span className="only-aloud"> {nameOf(line)}</span>
              </button>
            </p>
          </li>
        ))}
      </ol>
      {takenOff && (
        <p className="taken-off">
          {nameOf(takenOff.line) || 'One envelope'} was taken off.{' '}
          <button type="button" className="word-button" onClick={() => onStep({ kind: 'put-back' })}>
            put it back
          </button>
        </p>
      )}
    </div>
  )
}
