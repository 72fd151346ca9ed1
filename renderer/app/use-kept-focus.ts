import { useEffect } from 'react'
import { noteAct, noteFocus, restoreFocus } from '../shared/focus/lost-focus.ts'

/** Keeps the focus on the page when what had it goes, on every screen alike. */
export function useKeptFocus(): void {
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
