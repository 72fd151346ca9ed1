import { type ReactNode, useEffect, useRef } from 'react'
import type { LinesAtWork } from './use-visit-lines.ts'

interface GatheredLinesProps<L extends { readonly id: string }> {
  readonly work: Pick<LinesAtWork<L, never>, 'lines' | 'step' | 'changeLine'>
  readonly nameOf: (line: L) => string
  /** What stands on the envelope beneath the name. */
  readonly inWords: (line: L) => ReactNode
  readonly whileEmpty: ReactNode
  /** The listed lines together; shown once there are any. */
  readonly total: (listed: readonly L[]) => string
}

/** What a visit has gathered, each on its envelope, and the total. It scrolls by itself and shows the newest. */
export function GatheredLines<L extends { readonly id: string }>(props: GatheredLinesProps<L>) {
  const { work, nameOf, inWords, whileEmpty, total } = props
  const { listed, changing, takenOff } = work.lines
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (listed.length > 0 && box.current) box.current.scrollTop = box.current.scrollHeight
  }, [listed.length])
  return (
    <>
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
                  <button type="button" className="word-button" onClick={() => work.changeLine(line.id)}>
                    change<span className="only-aloud"> {nameOf(line)}</span>
                  </button>
                )}
                <button
                  type="button"
                  className="word-button"
                  onClick={() => work.step({ kind: 'take-off', id: line.id })}
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
            <button type="button" className="word-button" onClick={() => work.step({ kind: 'put-back' })}>
              put it back
            </button>
          </p>
        )}
      </div>
      <p className="table-total" role="status">
        {listed.length === 0 ? '' : total(listed)}
      </p>
    </>
  )
}
