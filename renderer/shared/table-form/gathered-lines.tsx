import { type ReactNode, useEffect, useRef } from 'react'
import { type Message, message } from '../../../db/messages/message.ts'
import { useTexts } from '../format/use-texts.ts'
import { saidBy } from './said.ts'
import type { LinesAtWork } from './use-visit-lines.ts'

interface GatheredLinesProps<L extends { readonly id: string }> {
  readonly work: Pick<LinesAtWork<L, never>, 'lines' | 'step' | 'changeLine'>
  readonly nameOf: (line: L) => string
  /** What stands on the envelope beneath the name. */
  readonly inWords: (line: L) => ReactNode
  readonly whileEmpty: ReactNode
  /** The listed lines together; shown once there are any. */
  readonly total: (listed: readonly L[]) => Message | string
}

/** What is only read aloud. */
const ALOUD = {
  aloud: (children: ReactNode[]) => (
    <span key="aloud" className="only-aloud">
      {children}
    </span>
  ),
}

/** What a visit has gathered, each on its envelope, and the total. It scrolls by itself and shows the newest. */
export function GatheredLines<L extends { readonly id: string }>(props: GatheredLinesProps<L>) {
  const { work, nameOf, inWords, whileEmpty, total } = props
  const { listed, changing, takenOff } = work.lines
  const texts = useTexts()
  const { t, pieces } = texts
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
                  <span className="soft">{t('table.being-changed')}</span>
                ) : (
                  <button type="button" className="word-button" onClick={() => work.changeLine(line.id)}>
                    {pieces(message('table.change', { name: nameOf(line) }), ALOUD)}
                  </button>
                )}
                <button
                  type="button"
                  className="word-button"
                  onClick={() => work.step({ kind: 'take-off', id: line.id })}
                >
                  {pieces(message('table.take-off', { name: nameOf(line) }), ALOUD)}
                </button>
              </p>
            </li>
          ))}
        </ol>
        {takenOff && (
          <p className="taken-off">
            {nameOf(takenOff.line) === ''
              ? t('table.one-taken-off')
              : t('table.taken-off', { name: nameOf(takenOff.line) })}{' '}
            <button type="button" className="word-button" onClick={() => work.step({ kind: 'put-back' })}>
              {t('table.put-back')}
            </button>
          </p>
        )}
      </div>
      <p className="table-total" role="status">
        {listed.length === 0 ? '' : saidBy(texts, total(listed))}
      </p>
    </>
  )
}
