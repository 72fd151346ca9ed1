import { type ReactNode, useEffect, useRef } from 'react'
import { FootLine } from '../shared/foot-line/foot-line.tsx'
import { ConnectionStrip } from './connection-strip.tsx'
import { DemoStrip } from './demo-strip.tsx'
import { FindField } from './find-field.tsx'
import './frame.css'
import { Rail } from './rail.tsx'
import { goRound } from './regions.ts'
import { useKeptFocus } from './use-kept-focus.ts'
import { useScansToLots } from './use-scans-to-lots.ts'

/** What is always there: the rail, what the keeper must know of the collection, the screen, the foot line. */
export function Frame({ children }: { readonly children: ReactNode }) {
  const findField = useRef<HTMLDivElement>(null)
  const main = useRef<HTMLElement>(null)
  const scans = useScansToLots(findField)
  useKeptFocus()
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'F6' || event.ctrlKey || event.altKey || event.metaKey) return
      event.preventDefault()
      goRound(event.shiftKey ? -1 : 1)
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [])
  return (
    <div className="frame">
      <button type="button" className="skip" onClick={() => main.current?.focus()}>
        Skip to the work
      </button>
      <Rail>
        <FindField place={findField} note={scans.note} onTyped={scans.clearNote} />
      </Rail>
      <div>
        <DemoStrip />
        <ConnectionStrip />
      </div>
      <main ref={main} className="frame-screen" tabIndex={-1}>
        {children}
      </main>
      <FootLine />
    </div>
  )
}
