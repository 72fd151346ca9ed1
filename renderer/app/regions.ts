/** The panes of a screen; a screen without any is one part by itself. */
const PANES = [
  '.table-column',
  '.table-visit',
  '.shelf-list',
  '.shelf-card',
  '.panes-list',
  '.panes-card',
].join()
const FIRST = [
  '[data-step]',
  'input',
  'select',
  'textarea',
  'button',
  'summary',
  'a[href]',
  '[tabindex="0"]',
].join()

const lastIn = new WeakMap<Element, HTMLElement>()

/** Goes to the next part of the window (1) or the one before (-1): the rail, each pane of the screen, the foot line. */
export function goRound(by: 1 | -1): void {
  const parts = partsOfWindow()
  const here = document.activeElement
  const at = parts.findIndex((part) => part.contains(here))
  const from = parts[at < 0 ? 1 : at]
  if (from && here instanceof HTMLElement && at > 0) lastIn.set(from, here)
  for (let step = 1; step <= parts.length; step++) {
    const next = parts.at(((at < 0 ? 1 : at) + by * step) % parts.length)
    if (next && focusIn(next)) return
  }
}

function partsOfWindow(): readonly Element[] {
  const main = document.querySelector('main')
  const panes = [...(main?.querySelectorAll(PANES) ?? [])]
  const parts = [document.querySelector('.rail'), ...(panes.length === 0 ? [main] : panes)]
  return [...parts, document.querySelector('.foot-line')].filter((part) => part !== null)
}

/** Focuses where the focus last was in a part, or its first place for it; the rail at the screen that is open. */
function focusIn(part: Element): boolean {
  const last = lastIn.get(part)
  const here = part.querySelector<HTMLElement>('.rail-word[aria-current=page]')
  const first = [...part.querySelectorAll<HTMLElement>(FIRST)].find(canTakeFocus)
  const target = here ?? (last?.isConnected ? last : first)
  target?.focus()
  return target !== undefined
}

function canTakeFocus(element: HTMLElement): boolean {
  return !element.hasAttribute('disabled') && element.getClientRects().length > 0
}
