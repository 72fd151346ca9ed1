import { type KeyPress, typedLetter } from './suggest-key.ts'

const TABBED_TO = 'a[href],button,input,select,textarea,summary,[tabindex]'

const WAYS_WITH_ENTER = 'button,a,summary'
const WAYS_WITH_SPACE = 'button,summary,input[type=checkbox],input[type=radio]'

/**
 * Presses keys again that were caught while an answer was on its way, each where the one before it led.
 *
 * A made key press does nothing of itself in a browser: what no field takes for itself is typed, deleted or clicked here.
 */
export async function pressAgain(presses: readonly KeyPress[]): Promise<void> {
  for (const press of presses) {
    pressOn(document.activeElement ?? document.body, press)
    // What the key changed must be on the page before the next one falls.
    await Promise.resolve()
  }
}

function pressOn(target: Element, press: KeyPress): void {
  const made = new KeyboardEvent('keydown', { ...press, bubbles: true, cancelable: true })
  if (!target.dispatchEvent(made) || !(target instanceof HTMLElement)) return
  const letter = typedLetter(press)
  if (press.key === 'Enter') {
    if (target.matches(WAYS_WITH_ENTER)) target.click()
    else if (target instanceof HTMLInputElement) target.form?.requestSubmit()
  } else if (letter === ' ' && target.matches(WAYS_WITH_SPACE)) target.click()
  else if (letter !== '') document.execCommand('insertText', false, letter)
  else if (press.key === 'Backspace') document.execCommand('delete')
  else if (press.key === 'Delete') document.execCommand('forwardDelete')
  else if (press.key === 'Tab') tabFrom(target, press.shiftKey ? -1 : 1)
  else if (press.key === 'a' && (press.ctrlKey || press.metaKey)) document.execCommand('selectAll')
}

function tabFrom(from: HTMLElement, by: 1 | -1): void {
  const tabbed = [...document.querySelectorAll<HTMLElement>(TABBED_TO)].filter(
    (each) => each.tabIndex >= 0 && !each.matches(':disabled') && each.getClientRects().length > 0,
  )
  const next = tabbed[tabbed.indexOf(from) + by]
  next?.focus()
  if (next instanceof HTMLInputElement) next.select()
}
