import { type ReactNode, useEffect, useRef } from 'react'
import { noteAct, noteFocus, restoreFocus } from '../shared/focus/lost-focus.ts'
import { FootLine } from '../shared/foot-line/foot-line.tsx'
import { useTexts } from '../shared/format/use-texts.ts'
import { ConnectionStrip } from './connection-strip.tsx'
import { DemoStrip } from './demo-strip.tsx'
import { FindField } from './find-field.tsx'
import { Glossary } from './glossary.tsx'
import { Rail } from './rail.tsx'
import { goRound } from './regions.ts'
import { useScansToLots } from './use-scans-to-lots.ts'
import './frame.css'

/** What is always there: the rail, what the keeper must know of the collection, the screen, the foot line. */
export function Frame({ children }: { readonly children: ReactNode }) {
  const { t } = useTexts()
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
        {t('app.skip')}
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
      <FootLine>
        <Glossary />
      </FootLine>
    </div>
  )
}

/** Keeps the focus on the page when what had it goes, on every screen alike. */
function useKeptFocus(): void {
  useEffect(() => {
    const onFocus = ({ target }: FocusEvent) => target instanceof HTMLElement && noteFocus(target)
    const watch = new MutationObserver(restoreFocus)
    watch.observe(document.body, { childList: true, subtree: true })
    document.addEventListener('focusin', onFocus)
    document.addEventListener('keydown', noteAct, true)
    document.addEventListener('click', noteAct, true)
    return () => {
      watch.disconnect()
      document.removeEventListener('focusin', onFocus)
      document.removeEventListener('keydown', noteAct, true)
      document.removeEventListener('click', noteAct, true)
    }
  }, [])
}
